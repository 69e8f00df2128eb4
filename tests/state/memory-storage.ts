import type { Storage } from '../../src/state/ports';

/** The storage of a device with one tab, as a map that begins with `first`. */
export function memoryStorage(first: Readonly<Record<string, string>> = {}): {
  readonly kept: Map<string, string>;
  readonly storage: Storage;
} {
  const kept = new Map(Object.entries(first));
  const storage: Storage = {
    read: async (key) => {
      const text = kept.get(key);
      return text === undefined ? { kind: 'nothing' } : { kind: 'found', text };
    },
    write: async (key, text) => {
      kept.set(key, text);
      return { kind: 'kept' };
    },
    onOtherTab: () => () => undefined,
    tellCleared: () => undefined,
    onCleared: () => () => undefined,
    onNewer: () => () => undefined,
  };
  return { kept, storage };
}
