import { createStore, type StoreApi } from 'zustand/vanilla';
import type { OfflineCopy, OfflineState, Storage } from '../ports';
import { decode, encode } from '../records';
import { fieldsOf } from '../saved-fields';

/** What the room asks of the world. */
export interface OfflineParts {
  readonly copy: OfflineCopy;
  readonly storage: Storage;
  readonly flush: () => Promise<void>;
}

/** The copy of the page on this device: whether it is there, a new version of it, and the switch. */
export interface OfflineRoom {
  readonly store: StoreApi<{ readonly copy: OfflineState }>;
  /** Lets the new version take over and loads the page anew; everything typed is written first. Only ever a player's own doing. */
  readonly takeUpdate: () => Promise<void>;
  readonly switchOn: () => Promise<void>;
  /** Clears the copy away and keeps it away. */
  readonly switchOff: () => Promise<void>;
}

const KEY = 'offline';

/** Makes the copy unless the player switched it off. */
export async function createOfflineRoom({ copy, storage, flush }: OfflineParts): Promise<OfflineRoom> {
  const store = createStore<{ readonly copy: OfflineState }>(() => ({ copy: 'preparing' }));
  copy.onChange((state) => store.setState({ copy: state }));
  const remember = async (off: boolean): Promise<void> => void (await storage.write(KEY, encode('offline', { off })));
  const found = await storage.read(KEY);
  const decoded = decode('offline', found.kind === 'found' ? found.text : '');
  if (decoded.kind === 'good' && fieldsOf(decoded.body).off === true) store.setState({ copy: 'off' });
  else void copy.make();
  return {
    store,
    takeUpdate: async () => {
      await flush();
      copy.takeUpdate();
    },
    switchOn: async () => {
      await remember(false);
      await copy.make();
    },
    switchOff: async () => {
      await remember(true);
      await copy.clear();
    },
  };
}
