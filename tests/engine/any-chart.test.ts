import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scoreJson } from '../../src/exchange/score-json';
import { readChart } from '../../src/music/chart/read';
import { arrange } from '../../src/music/score';
import type { Stroke } from '../../src/vocabulary';
import { chartText } from '../music/chart/chart-arbitrary';

describe('any chart that can be read can be arranged', () => {
  it('without an error, in time order, inside the form, with whole ticks and pitches of the piano', () => {
    fc.assert(
      fc.property(
        chartText,
        fc.constantFrom(1, 2, 3, 4, 5, 6),
        fc.constantFrom('double', 'wide', 'tenths', 'contrary', 'tumbao', 'right', 'left'),
        fc.boolean(),
        fc.integer({ min: 0, max: 3 }),
        (text, level, hands, closed, seed) => {
          const read = readChart(text);
          if (!read.ok) return;
          const score = arrange(read.value, { level: level as 1, hands: hands as 'double', closed, seed });
          expect(
            [score.parts.rightHand, score.parts.leftHand, score.parts.bass].flatMap((part) => faultsOf(part, score.fromTick, score.toTick)),
          ).toEqual([]);
          expect(JSON.stringify(scoreJson(score)).length).toBeGreaterThan(0);
        },
      ),
      { numRuns: 150, seed: 20261125 },
    );
  });
});

function faultsOf(part: readonly Stroke[], fromTick: number, toTick: number): string[] {
  return part.flatMap((stroke, index) => {
    const { tick, durationTicks, soundingTicks, midi, names, degrees } = stroke;
    const sound =
      Number.isInteger(tick) &&
      tick >= fromTick &&
      tick < toTick &&
      tick > (part[index - 1]?.tick ?? -1) &&
      durationTicks > 0 &&
      soundingTicks <= durationTicks &&
      midi.length > 0 &&
      midi.length === names.length &&
      midi.length === degrees.length &&
      midi.every((note) => note >= 21 && note <= 108);
    return sound ? [] : [JSON.stringify(stroke)];
  });
}
