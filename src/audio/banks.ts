import type { InstrumentName } from '../performance/sounds/sample-set';
import { INSTRUMENTS } from '../performance/sounds/sample-set';
import type { BankSound } from '../performance/sounds/sound-bank';
import { loadBank, makeBank } from './load-samples';

/** The sounds of every instrument: made by rule at first, recordings as soon as they are decoded. */
export interface Banks {
  bank(instrument: InstrumentName): readonly BankSound<AudioBuffer>[];
  state(): { readonly samples: 'loading' | 'ready' } | { readonly samples: 'synthesised'; readonly missing: string };
  /** Loads what has not been loaded; asks again for what failed. */
  load(): void;
}

/** Recordings are decoded to this rate, whatever the device's, before there is a device to ask. */
const DECODING_RATE = 48_000;

/** Banks whose recordings lie below `folder`. `onChange` is called when an instrument's sounds or the state change. */
export function createBanks(folder: string, onChange: () => void): Banks {
  const banks = new Map<InstrumentName, readonly BankSound<AudioBuffer>[]>();
  const failures = new Map<InstrumentName, string>();
  const loading = new Set<InstrumentName>();
  const loaded = new Set<InstrumentName>();
  // A browser without sound is reported by the device; here it only means that there is nothing to load.
  const decoder = typeof OfflineAudioContext === 'undefined' ? null : new OfflineAudioContext(1, 1, DECODING_RATE);

  const load = async (instrument: InstrumentName): Promise<void> => {
    if (decoder === null) return;
    loading.add(instrument);
    const result = await loadBank(instrument, folder, (bytes) => decoder.decodeAudioData(bytes));
    loading.delete(instrument);
    if (result.kind === 'loaded') {
      banks.set(instrument, result.bank);
      loaded.add(instrument);
      failures.delete(instrument);
    } else failures.set(instrument, `${result.file}: ${result.why}`);
    onChange();
  };

  return {
    bank(instrument) {
      const known = banks.get(instrument);
      if (known !== undefined) return known;
      const made = makeBank(instrument);
      banks.set(instrument, made);
      return made;
    },
    state() {
      if (loaded.size === INSTRUMENTS.length) return { samples: 'ready' };
      const [missing] = failures.values();
      return loading.size === 0 && missing !== undefined ? { samples: 'synthesised', missing } : { samples: 'loading' };
    },
    load() {
      for (const instrument of INSTRUMENTS) if (!loading.has(instrument) && !loaded.has(instrument)) void load(instrument);
    },
  };
}
