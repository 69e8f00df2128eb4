import type { Storage } from '../ports';

/*
 * Delays of input devices, kept on this device of the player's under the name of the input. A delay is good for one pair of input and
 * output rate; it expires when the rate changes, when the name is another, and after a month.
 */

/** The measured delay of one input. */
export interface Calibration {
  readonly device: string;
  readonly latencyMs: number;
  readonly spreadMs: number;
  /** Frames a second of the output it was measured with. */
  readonly rate: number;
  /** Milliseconds since 1970. */
  readonly measured: number;
}

const KEY = 'calibrations';
const VERSION = 1;
const MONTH_MS = 30 * 24 * 3600 * 1000;
/** Names kept; the oldest go. */
const MOST = 30;

/** Delays of devices by name. */
export interface Calibrations {
  /** The delay of `device` with an output of `rate`, or null when there is none or it has expired. */
  find(device: string, rate: number): Promise<Calibration | null>;
  /** False when this device refuses to keep it; it is good for this visit all the same. */
  keep(calibration: Calibration): Promise<boolean>;
}

/** Keeps delays through `storage`; `now` gives milliseconds since 1970. */
export function createCalibrations(storage: Storage, now: () => number): Calibrations {
  let loaded: Promise<Calibration[]> | null = null;
  const all = (): Promise<Calibration[]> => {
    loaded ??= storage.read(KEY).then((found) => (found.kind === 'found' ? calibrationsFrom(found.text) : []));
    return loaded;
  };
  return {
    async find(device, rate) {
      const found = (await all()).find((each) => each.device === device);
      return found && found.rate === rate && now() - found.measured < MONTH_MS ? found : null;
    },
    async keep(calibration) {
      const others = (await all()).filter(({ device }) => device !== calibration.device);
      const kept = [calibration, ...others].slice(0, MOST);
      loaded = Promise.resolve(kept);
      const write = await storage.write(KEY, JSON.stringify({ version: VERSION, calibrations: kept }));
      return write.kind === 'kept';
    },
  };
}

/** The good ones out of a kept record; of a record that cannot be read, none: a delay is measured again in ten seconds. */
export function calibrationsFrom(text: string): Calibration[] {
  let saved: unknown;
  try {
    saved = JSON.parse(text);
  } catch {
    return [];
  }
  const list = (saved as { calibrations?: unknown } | null)?.calibrations;
  if (!Array.isArray(list)) return [];
  return list.flatMap((each: Partial<Calibration> | null) => {
    const { device, latencyMs, spreadMs, rate, measured } = each ?? {};
    const numbers = [latencyMs, spreadMs, rate, measured];
    if (typeof device !== 'string' || !numbers.every((number) => typeof number === 'number' && Number.isFinite(number))) return [];
    return [{ device, latencyMs, spreadMs, rate, measured } as Calibration];
  });
}
