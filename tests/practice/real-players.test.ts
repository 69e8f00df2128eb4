import { describe, expect, test } from 'vitest';
import { assess } from '../../src/practice/assess';
import { matchTake } from '../../src/practice/match';
import type { Take } from '../../src/practice/take';
import { SON_2_3, SON_3_2 } from '../performance/hand-made';
import { loopOf, readSong, runsOf, takeOfRun, usualSteps } from './son-timing';

/** Folder of the onset times (source in son-timing.ts); they are not part of the project. */
const folder = process.env.SON_TIMING_DATA;
if (!folder) console.log('real players: skipped, set SON_TIMING_DATA to the folder of song-1.csv to song-3.csv to run them');

/** The direction of each song by the strokes of its own clave (the corpus). */
const CLAVE = { 1: SON_2_3, 2: SON_3_2, 3: [0, 3, 7, 10, 12] } as const;

describe.skipIf(!folder)('professionals of a son group', () => {
  test('tres and bass are found on the right step, and are in time', () => {
    const sum = { right: 0, of: 0 };
    for (const song of [1, 2, 3] as const)
      for (const instrument of ['tres', 'bass'] as const) {
        const rows = readSong(folder ?? '', song);
        const steps = usualSteps(rows, instrument);
        for (const run of runsOf(rows)) {
          const take = takeOfRun(run, instrument, loopOf(steps, 'piano right', CLAVE[song]), ['piano right']);
          const { right, of } = rightSteps(take, steps, new Map(run.map(({ onsets, step }) => [onsets[instrument] ?? -1, step])));
          const matched = matchTake(take);
          const { timing, all } = assess(take, matched);
          console.log(
            `song ${song}, ${instrument} (${steps.join(' ')}): ${((100 * right) / of).toFixed(2)} % of ${of} onsets on the right step, spread ${matched.spreadMs?.toFixed(1)} ms, verdict ${timing}`,
          );
          expect(timing, JSON.stringify(all)).toBe('in time');
          expect(all.filter(({ facts }) => ['crossed', 'displaced', 'uneven', 'swung', 'step off'].includes(facts.kind))).toEqual([]);
          sum.right += right;
          sum.of += of;
        }
      }
    console.log(`real players: ${((100 * sum.right) / sum.of).toFixed(2)} % of ${sum.of} onsets on the right step`);
    expect(sum.right / sum.of).toBeGreaterThanOrEqual(0.98);
  });

  test.each([1, 2] as const)('the direction of song %i is recognised from the clave alone within two cycles', (song) => {
    let judged = 0;
    for (const run of runsOf(readSong(folder ?? '', song))) {
      const cycles = run.length / 16;
      for (let first = 0; first + 2 <= cycles; first += 2) {
        const two = run.slice(first * 16, first * 16 + 32);
        if (two.filter(({ onsets }) => onsets.clave != null).length < 6) continue;
        judged += 1;
        for (const asked of [1, 2] as const) {
          const { stretches, claveHeard } = matchTake(takeOfRun(two, 'clave', loopOf(CLAVE[asked], 'clave', CLAVE[asked]), ['clave']));
          expect(stretches.map(({ displacedSteps }) => displacedSteps)).toEqual([asked === song ? 0 : 8]);
          expect(claveHeard).not.toBe('rumba');
        }
      }
    }
    console.log(`song ${song}: direction right in ${judged} of ${judged} pairs of cycles`);
    expect(judged).toBeGreaterThan(4);
  });
});

/** Onsets of the usual steps that are matched to their own step, and others called extra. */
function rightSteps(take: Take, usual: readonly number[], stepOf: ReadonlyMap<number, number>) {
  let right = 0;
  let of = 0;
  for (const { expected, played, otherEnding } of matchTake(take).strokes)
    for (const note of played?.notes ?? []) {
      of += 1;
      const step = stepOf.get(note.at) ?? -1;
      const found = expected && (otherEnding ? ((expected.otherEnding ?? 0) / 240) % 16 : expected.cycleStep);
      if (found === null ? !usual.includes(step) : found === step) right += 1;
    }
  return { right, of };
}
