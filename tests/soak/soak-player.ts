import { AHEAD_SECONDS, TICK_MS } from '../../src/audio/look-ahead';
import { createRecorderPlayer } from '../../src/audio/recorder-player';
import { CLICK_MODES, FULL_BAND } from '../../src/performance/ensemble';
import { seeded } from '../../src/practice/seeded';
import { halfNotesPerMinute } from '../../src/vocabulary';
import { everyStep, request } from '../audio/player-bench';
import { SON_2_3, SON_3_2 } from '../performance/hand-made';

/** What a soak run saw. `expected` counts the steps that the tempi of the run come to; the last one may lie on either side of the end. */
export interface SoakReport {
  readonly songMinutes: number;
  readonly changes: number;
  readonly expected: number;
  readonly onsets: number;
  readonly twice: number;
  readonly late: number;
  /** Onsets further from the one before than a step of the slowest tempo, or nearer than one of the fastest. */
  readonly misplaced: number;
}

const TICK = TICK_MS / 1000;
const SLOWEST = 25;
const FASTEST = 140;
/** Seconds that arithmetic alone may move an onset. */
const CLOSE = 1e-6;
/** Music with a stroke on every eighth, so that whatever it changes to, one stroke is due each step: four to the half note. */
const STEPS_A_HALF = 4;

/** Plays `minutes` of simulated time while tempo, loop length, direction and the clicks change at random moments, twice a second on average. */
export function soakPlayer(minutes: number, seed: number): SoakReport {
  const random = seeded(seed);
  const below = (limit: number): number => Math.floor(random() * limit);
  const player = createRecorderPlayer();
  let now = 0;
  let tempo = 90;
  let expected = 0;
  let changes = 0;
  let onsets = 0;
  let twice = 0;
  let late = 0;
  let misplaced = 0;
  let last: number | null = null;
  const recent = new Set<string>();
  player.onSound(({ at, key }) => {
    onsets += 1;
    if (recent.has(key)) twice += 1;
    recent.add(key);
    if (at < now - CLOSE) late += 1;
    const gap = last === null ? null : at - last;
    const step = (of: number) => 60 / of / STEPS_A_HALF;
    if (gap !== null && (gap < step(FASTEST) - CLOSE || gap > step(SLOWEST) + CLOSE)) misplaced += 1;
    last = at;
  });
  player.play(request(everyStep(4), { tempo: halfNotesPerMinute(tempo) }));
  const total = Math.round((minutes * 60) / TICK);
  // The first handing over happens when Play is pressed.
  expected += (AHEAD_SECONDS * tempo * STEPS_A_HALF) / 60;
  for (let count = 1; count <= total; count += 1) {
    if (random() < 2 * TICK) {
      changes += 1;
      const way = below(3);
      if (way === 0) {
        tempo = SLOWEST + below(FASTEST - SLOWEST + 1);
        player.setTempo(halfNotesPerMinute(tempo));
      } else if (way === 1) {
        player.change(everyStep([2, 4, 8, 16][below(4)] ?? 2, { clave: random() < 0.5 ? SON_2_3 : SON_3_2, fromBar: 2 * below(4) }));
      } else
        player.setEnsemble({ ...FULL_BAND, click: CLICK_MODES[below(CLICK_MODES.length)] ?? 'as set', percussionRests: random() < 0.5 });
    }
    now = count * TICK;
    player.pass(TICK);
    expected += (TICK * tempo * STEPS_A_HALF) / 60;
  }
  return { songMinutes: minutes, changes, expected: Math.round(expected), onsets, twice, late, misplaced };
}
