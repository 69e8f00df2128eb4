import type { Performance } from '../../src/performance/performance';
import type { SoundOnItsWay } from '../../src/state/listening/ports';
import type { Player, PlayRequest } from '../../src/state/ports';
import { assert, halfNotesPerMinute } from '../../src/vocabulary';
import { events, performanceOf } from '../performance/hand-made';

/** A player under test and what the suite needs to see of it. */
export interface PlayerHarness {
  readonly player: Player;
  /** Lets time pass. */
  wait(seconds: number): Promise<void>;
  /** Everything that was handed to the sound so far. */
  sounds(): readonly SoundOnItsWay[];
}

/** One thing a player must do; throws when it does not. */
export interface PlayerClause {
  readonly title: string;
  check(harness: PlayerHarness): Promise<void>;
}

/** Half notes a minute. */
export const TEMPO = 140;
/** Seconds of a bar of 4/4 at the tempo of the suite: two half notes. */
export const BAR = (2 * 60) / TEMPO;
/** Looked at on the audio clock, two onsets that should be a distance apart may differ by arithmetic alone. */
const CLOSE = 1e-6;

/** A stroke on every step of whole bars. */
export const everyStep = (bars: number, options: Parameters<typeof performanceOf>[2] = {}): Performance =>
  performanceOf(
    bars,
    events(...Array.from({ length: bars * 8 }, (_, step) => ({ tick: (options.fromBar ?? 0) * 1920 + step * 240 }))),
    options,
  );
/** Plays from the start, without a count-in. */
export const request = (performance: Performance, more: Partial<PlayRequest> = {}): PlayRequest => ({
  performance,
  fromTick: performance.fromTick,
  tempo: halfNotesPerMinute(TEMPO),
  countInBars: 0,
  ...more,
});
/** What sounds after the count-in. */
export const music = (sounds: readonly SoundOnItsWay[]) => sounds.filter(({ countIn }) => !countIn);

/** Onsets must be one step apart, from the first to the last: none lost, none doubled, none moved. */
export function assertUnbroken(sounds: readonly SoundOnItsWay[], step = BAR / 8): void {
  assert(new Set(sounds.map(({ key }) => key)).size === sounds.length, 'a sound came twice');
  sounds.forEach(({ at }, index) => {
    const before = sounds[index - 1];
    if (before !== undefined)
      assert(Math.abs(at - before.at - step) < CLOSE, `onset ${index} comes ${at - before.at} s after the last, expected ${step}`);
  });
}

/** Waits until the music is heard. */
export async function startedBy(harness: PlayerHarness): Promise<void> {
  for (let waited = 0; harness.player.heard() === null && waited < 3; waited += 0.02) await harness.wait(0.02);
  assert(harness.player.heard() !== null, 'the music must start');
}
