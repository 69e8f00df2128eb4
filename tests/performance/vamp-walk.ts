import type { Performance } from '../../src/performance/performance';
import { type ProgrammeSound, soundsIn, startProgramme } from '../../src/performance/programme';
import { type Decided, decideUntil, NO_WISHES } from '../../src/performance/vamps';
import { deepFreeze, events, performanceOf } from './hand-made';

/** A stroke on every step, marked by what it belongs to; `offset` is the feel of every step in turn. */
export function everyStep(name: string, fromBar: number, bars: number, offsets: readonly number[] = [0], closed = true): Performance {
  const strokes = Array.from({ length: bars * 8 }, (_, step) => ({
    tick: fromBar * 1920 + step * 240,
    drum: name,
    midi: null,
    offsetTicks: offsets[step % offsets.length] ?? 0,
  }));
  return performanceOf(bars, events(...strokes), { fromBar, closed });
}

/** Eight bars with open vamps on bars 2–3 and 4–7, each with its round. */
export function withVamps(
  name: string,
  { offsets = [0], closed = true }: { offsets?: readonly number[]; closed?: boolean } = {},
): Performance {
  const vamp = (fromBar: number, toBar: number) => ({
    fromTick: fromBar * 1920,
    toTick: toBar * 1920,
    turns: [(toBar - 1) * 1920, toBar * 1920 - 480] as const,
    round: everyStep(`round of ${name}`, fromBar, toBar - fromBar, offsets),
  });
  return deepFreeze({ ...everyStep(name, 0, 8, offsets, closed), vamps: [vamp(2, 4), vamp(4, 8)] });
}

/** A programme from its first tick, nothing asked for. */
export const begin = (performance: Performance, tick = 0): Decided => ({
  programme: startProgramme(performance, tick, 0),
  wishes: NO_WISHES,
});

/** Walks through a programme in windows of `window` ticks; what is heard lags behind what is handed over by `lag` ticks. */
export function walk(
  start: Decided,
  ticks: number,
  { window = 60, lag = 400, each = (decided: Decided, _heard: number, _handed: number) => decided } = {},
): { readonly sounds: readonly ProgrammeSound[]; readonly decided: Decided } {
  let decided = start;
  const sounds: ProgrammeSound[] = [];
  for (let handed = 0; handed < ticks; handed += window) {
    decided = each(decided, handed - lag, handed);
    decided = decideUntil(decided, handed, handed + window);
    sounds.push(...soundsIn(decided.programme, handed, handed + window));
  }
  return { sounds, decided };
}
/** The same with the vamp cued. */
export const cue = (decided: Decided): Decided => ({ ...decided, wishes: { ...decided.wishes, cued: true } });
/** What sounds as runs: name, first and last step of the form. */
export function runs(sounds: readonly ProgrammeSound[]): string[] {
  const found: { name: string; from: number; to: number }[] = [];
  for (const { event } of sounds) {
    const step = event.tick / 240;
    const last = found.at(-1);
    if (last && last.name === event.drum && last.to + 1 === step) last.to = step;
    else found.push({ name: String(event.drum), from: step, to: step });
  }
  return found.map(({ name, from, to }) => `${name} ${from}–${to}`);
}
