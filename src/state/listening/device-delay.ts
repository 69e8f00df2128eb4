import type { StoreApi } from 'zustand/vanilla';
import type { ClockMap } from '../../performance/clock-map';
import type { Performance } from '../../performance/performance';
import type { Storage } from '../ports';
import { type CalibrationOutcome, createCalibrating } from './calibrating';
import { type Calibration, createCalibrations } from './calibrations';
import type { ListeningState } from './listening-state';
import type { Played, SoundingMusic } from './ports';

/** The delay of the device that is listened to: found among those kept, or measured with a round of clicks. */
export interface DeviceDelay {
  /** The name of the device, or null when none is there. */
  deviceName(): string | null;
  /** Looks for a kept delay of the device that is there now. */
  find(): void;
  /** Tells the rate of the output; a delay holds for one rate. */
  outputRate(rate: number): void;
  hear(played: Played): void;
  meet(music: SoundingMusic): void;
  /** Begins a round; gives its clicks to be played. */
  clicks(): Performance;
  /** The clicks are over: shows what came of them, and keeps it when it is good. */
  finish(clocks: ClockMap | null): void;
}

/** Nothing found and nothing measured; `now` gives milliseconds since 1970. */
export function createDeviceDelay(store: StoreApi<ListeningState>, storage: Storage, now: () => number): DeviceDelay {
  const { getState: state, setState: set } = store;
  const kept = createCalibrations(storage, now);
  const round = createCalibrating();
  let rate = 0;

  const deviceName = (): string | null => {
    const { device, source } = state();
    return device.kind === 'listening' || device.kind === 'held' ? (device.devices[0]?.name ?? source) : null;
  };
  const find = async (): Promise<void> => {
    const device = deviceName();
    const found = device === null || rate === 0 ? null : await kept.find(device, rate);
    if (deviceName() === device) set({ calibration: found });
  };

  return {
    deviceName,
    find: () => void find(),
    outputRate(next) {
      if (next === rate) return;
      rate = next;
      void find();
    },
    hear: round.hear,
    meet: round.meet,
    clicks: () => round.start(state().source === 'microphone' ? 'loudspeaker' : 'tapping'),
    finish(clocks) {
      const outcome: CalibrationOutcome = clocks ? round.result(clocks) : { ok: false, why: 'too few' };
      if (!outcome.ok) {
        set({ calibrating: { kind: 'failed', why: outcome.why } });
        return;
      }
      const { latencyMs, spreadMs } = outcome;
      const calibration: Calibration = { device: deviceName() ?? 'unnamed', latencyMs, spreadMs, rate, measured: now() };
      set({ calibrating: { kind: 'off' }, calibration });
      void kept.keep(calibration);
    },
  };
}
