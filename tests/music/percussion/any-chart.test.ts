import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PATTERN_IDS } from '../../../src/music/percussion/patterns';
import { percussionParts } from '../../../src/music/percussion/percussion';
import { formOf } from '../chart/chart-of';
import { inBar, type Parts, parts, styleOf } from './sounding';

/** Charts of one section: bars of all kinds, in an even number. */
const bar = fc.constantFrom('C', 'G', 'Dm7 G7', 'N.C.', 'stop', 'G {1 2& 4}', 'F', '%');
const section = fc.array(fc.tuple(bar, bar), { minLength: 1, maxLength: 6 }).map((cycles) => `| C | G |\n| ${cycles.flat().join(' | ')} |`);
const style = fc.constantFrom('salsa', 'son', 'cha-cha-cha', 'bolero', 'guajira', 'songo', 'latin jazz', 'rumba', 'swing');
const role = fc.constantFrom('verse', 'coro', 'mambo', 'piano solo', 'percussion solo');

describe('whatever the chart', () => {
  it('percussion of the other direction is the same with the bars of each cycle exchanged, in groove bars', () => {
    fc.assert(
      fc.property(section, style, role, fc.constantFrom('son', 'rumba'), (bars, name, part, kind) => {
        const text = `clave: 2-3 ${kind}\nstyle: ${name}\n[A, role: ${part}]\n${bars}`;
        const [one, other] = [parts(text), parts(text, { direction: '3-2' })];
        expect(Object.keys(other.percussion)).toEqual(Object.keys(one.percussion));
        one.bars.forEach((here, index) => {
          const partner = index % 2 === 0 ? index + 1 : index - 1;
          if (here.kind !== 'groove' || one.bars[partner]?.kind !== 'groove') return;
          for (const instrument of Object.keys(one.percussion))
            expect(inBar(other.percussion[instrument], other.bars[partner])).toEqual(inBar(one.percussion[instrument], here));
        });
      }),
      { numRuns: 150 },
    );
  });

  it('every onset lies inside a bar that sounds, once, in order, and the bars are left alone', () => {
    const anyBar = fc.oneof(bar, fc.constantFrom('(2/4) C', '>C', 'rest 2', 'C >F'));
    const sections = fc.array(fc.tuple(fc.array(anyBar, { minLength: 1, maxLength: 7 }), role, style), { minLength: 1, maxLength: 4 });
    const choice = fc.oneof(fc.constant('by style' as const), fc.subarray([...PATTERN_IDS]));
    fc.assert(
      fc.property(sections, choice, fc.boolean(), (list, chosen, closed) => {
        const text = list
          .map(
            ([bars, part, name], index) =>
              `[S${index}, role: ${part}, style: ${name}]\n| C | ${bars.map((b) => (b === '%' ? 'C' : b)).join(' | ')} |`,
          )
          .join('\n');
        const form = formOf(`clave: 3-2 son\n${text}`);
        const frozen = form.bars.map((one) => Object.freeze(one));
        const percussion: Parts = percussionParts(Object.freeze(frozen), 'son', { styleOf, choice: chosen, closed });
        const open = new Set(
          form.bars
            .filter(({ playing }) => playing !== 'nobody')
            .flatMap(({ tick, ticks }) => Array.from({ length: ticks / 240 }, (_, step) => tick + step * 240)),
        );
        for (const [instrument, strokes] of Object.entries(percussion)) {
          const ticks = strokes.map(({ tick }) => tick);
          expect(ticks.length, instrument).toBeGreaterThan(0);
          expect(ticks.filter((tick, index) => !open.has(tick) || tick <= (ticks[index - 1] ?? -1))).toEqual([]);
        }
      }),
      { numRuns: 100 },
    );
  });
});
