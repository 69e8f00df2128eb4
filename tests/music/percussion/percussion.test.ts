import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SoundingBar } from '../../../src/music/chart/chart';
import { PATTERN_IDS } from '../../../src/music/percussion/patterns';
import { type PercussionChoice, percussionParts } from '../../../src/music/percussion/percussion';
import type { Direction, DrumStroke } from '../../../src/vocabulary';
import { formOf } from '../chart/chart-of';

type Parts = Record<string, DrumStroke[]>;
const styleOf = (bar: SoundingBar): string => bar.style;

function parts(text: string, options: { direction?: Direction; choice?: PercussionChoice; closed?: boolean; pickup?: boolean } = {}) {
  const { direction, choice, closed, pickup } = options;
  const form = formOf(text, { ...(direction ? { direction } : {}), pickup: pickup ?? false });
  const percussion: Parts = percussionParts(form.bars, form.clave.kind, {
    styleOf,
    ...(choice ? { choice } : {}),
    closed: closed ?? false,
  });
  return { bars: form.bars, percussion };
}

/** Strokes of a part in a bar, as `step stroke`. */
const inBar = (part: readonly DrumStroke[] | undefined, bar: SoundingBar | undefined): string[] =>
  bar === undefined
    ? []
    : (part ?? [])
        .filter(({ tick }) => tick >= bar.tick && tick < bar.tick + bar.ticks)
        .map(({ tick, stroke }) => `${(tick - bar.tick) / 240} ${stroke}`);
/** Steps of a bar struck by a part. */
const stepsIn = (part: readonly DrumStroke[] | undefined, bar: SoundingBar | undefined): string =>
  inBar(part, bar)
    .map((text) => text.split(' ')[0])
    .join(' ');

const VERSE_CORO = (direction: Direction, last = '| G |') =>
  `clave: ${direction} son\n[A, role: verse]\n| C | G | C ${last}\n[Coro, role: coro]\n| C | G | C | G |`;

describe('percussion over sounding bars', () => {
  it('plays the kit of the section: shells, martillo and one conga, then bells and two congas', () => {
    const { bars, percussion } = parts(VERSE_CORO('2-3'));
    const sounding = (bar: SoundingBar | undefined) => Object.keys(percussion).filter((name) => inBar(percussion[name], bar).length > 0);
    expect(sounding(bars[0])).toEqual(['cascara', 'timbales', 'bongo', 'conga']);
    expect(sounding(bars[5])).toEqual(['mambo bell', 'timbales', 'bongo bell', 'conga']);
    expect(stepsIn(percussion.cascara, bars[0])).toBe('0 2 4 5 7');
    expect(inBar(percussion.conga, bars[5])).toEqual([
      '0 heel',
      '1 toe',
      '2 slap',
      '3 open low',
      '4 open low',
      '5 toe',
      '6 open',
      '7 open',
    ]);
  });

  it('keeps the unbroken clave through a section of seven bars: the next one begins on the other side', () => {
    const { bars, percussion } = parts('clave: 2-3 son\n[A]\n| C | C | C | C | C | C | C |\n[B]\n| G | G |');
    expect(bars[7]?.side).toBe(3);
    // Timbales pattern sheet: the 3-side of cáscara is x.xx.x.x, the 2-side x.x.xx.x.
    expect(stepsIn(percussion.cascara, bars[7])).toBe('0 2 3 5 7');
    expect(stepsIn(percussion.cascara, bars[8])).toBe('0 2 4 5 7');
  });

  it('crosses a bar with the clave after a bar of 2/4', () => {
    const { bars, percussion } = parts('clave: 2-3 son\n| C | G | (2/4) C | F | G |', { choice: ['cascara'] });
    // After half a 2-side (x.x.) the next bar holds its rest (xx.x) and the first half of the 3-side (x.xx).
    expect(stepsIn(percussion.cascara, bars[2])).toBe('0 2');
    expect(stepsIn(percussion.cascara, bars[3])).toBe('0 1 3 4 6 7');
    expect(stepsIn(percussion.cascara, bars[4])).toBe('1 3 4 6');
  });

  it('crosses a bar with the bell after a bar of 3/8 in 6/8', () => {
    const { bars, percussion } = parts('meter: 6/8\nclave: 3-2 bembe\nstyle: bembe\n| C | G | (3/8) C | F |', { choice: ['6/8 bell'] });
    // x.x.xx .x.x.x: half of the 3-side, then its other half and half of the 2-side.
    expect(stepsIn(percussion.bell, bars[2])).toBe('0 2');
    expect(stepsIn(percussion.bell, bars[3])).toBe('1 2 4');
  });

  it('turns with a restart of the clave', () => {
    const { bars, percussion } = parts('clave: 2-3 son\n[A]\n| C | C | C |\n[B, clave restart 2-3]\n| G | G |', { choice: ['mambo bell'] });
    expect(bars[3]?.side).toBe(2);
    expect(stepsIn(percussion['mambo bell'], bars[3])).toBe('0 2 4 5 6 7');
    expect(stepsIn(percussion['mambo bell'], bars[4])).toBe('1 2 3 4 6 7');
  });

  it('plays on through N.C. and rests, and is silent in a stop', () => {
    const { bars, percussion } = parts('clave: 2-3 son\n| C | N.C. | rest 1 | stop | C | G |');
    expect(bars.map(({ playing }) => playing)).toEqual(['band', 'rhythm', 'rhythm', 'nobody', 'band', 'band']);
    const counts = bars.map((bar) => inBar(percussion.cascara, bar).length);
    expect(counts).toEqual([5, 5, 5, 0, 5, 5]);
    for (const part of Object.values(percussion)) expect(inBar(part, bars[3])).toEqual([]);
  });

  it('strikes the hits of the band instead of the groove, on timbales, conga and bongo', () => {
    const { bars, percussion } = parts('clave: 2-3 son\n| C | G {1 2& 4&~} | C | G |');
    expect(inBar(percussion.timbales, bars[1])).toEqual(['0 accent', '3 accent', '7 accent']);
    expect(inBar(percussion.conga, bars[1])).toEqual(['0 accent', '3 accent', '7 accent']);
    expect(inBar(percussion.bongo, bars[1])).toEqual(['0 accent', '3 accent', '7 accent']);
    expect(inBar(percussion.cascara, bars[1])).toEqual([]);
  });

  it('strikes hits on the bongo bell while the bongo player holds it, and on what there is where no drum plays', () => {
    const coro = parts('clave: 2-3 son\n[Coro, role: coro]\n| C | G {1} |');
    expect(inBar(coro.percussion['bongo bell'], coro.bars[1])).toEqual(['0 mouth']);
    const swing = parts('clave: 2-3 son\nstyle: swing\n| C | G {1 3} |');
    expect(inBar(swing.percussion.maracas, swing.bars[1])).toEqual(['0 accent', '4 accent']);
  });

  it('strikes a written push an eighth before its chord and keeps the groove', () => {
    const { bars, percussion } = parts('clave: 2-3 son\n| C | >G | C | G |');
    expect(inBar(percussion.timbales, bars[0])).toEqual(['2 muffled', '6 open', '7 accent']);
    expect(inBar(percussion.conga, bars[0]).at(-1)).toBe('7 accent');
    expect(stepsIn(percussion.cascara, bars[1])).toBe('0 2 3 5 7');
  });

  it('takes a push on the first chord round to the end of a closed loop, and leaves it out of an open form', () => {
    const closed = parts('clave: 2-3 son\n| >C | G |', { closed: true });
    expect(inBar(closed.percussion.timbales, closed.bars[1]).at(-1)).toBe('7 accent');
    const open = parts('clave: 2-3 son\n| >C | G |');
    expect(inBar(open.percussion.timbales, open.bars[1]).at(-1)).toBe('6 open');
  });

  it('is silent in a pickup but for its hits', () => {
    const text = 'clave: 2-3 son\n| (pickup) C | G | C |';
    const { bars, percussion } = parts(text, { pickup: true });
    expect(bars[0]?.kind).toBe('pickup');
    expect(Object.values(percussion).flatMap((part) => inBar(part, bars[0]))).toEqual([]);
    expect(stepsIn(percussion.cascara, bars[1])).toBe('0 2 4 5 7');
  });

  it('plays nothing when told so, and the patterns it is told, in the meter they belong to', () => {
    expect(parts('| C | G |', { choice: 'none' }).percussion).toEqual({});
    expect(Object.keys(parts(VERSE_CORO('2-3'), { choice: ['guiro', 'maracas', '6/8 bell'] }).percussion)).toEqual(['guiro', 'maracas']);
    expect(parts('| C | G |', { choice: [] }).percussion).toEqual({});
  });

  it('follows the style of each section', () => {
    const { bars, percussion } = parts(
      'style: salsa\nclave: 2-3 son\n[A]\n| C | G |\n[B, style: cha-cha-chá]\n| C | G |\n[C, style: bossa]\n| C | G |',
    );
    expect(inBar(percussion.cascara, bars[2])).toEqual([]);
    expect(inBar(percussion.guiro, bars[2])).toEqual([
      '0 long scrape',
      '2 short scrape',
      '3 short scrape',
      '4 long scrape',
      '6 short scrape',
      '7 short scrape',
    ]);
    expect(Object.keys(percussion).filter((name) => inBar(percussion[name], bars[4]).length > 0)).toEqual(['maracas']);
  });
});

describe('the abanico', () => {
  // Timbales pattern sheet: into a 3-2 section `....R.r.` fills the 2-side, into a 2-3 section `...R..r.` the 3-side; then the next 1.
  it.each([
    ['2-3', ['3 rimshot', '6 roll']],
    ['3-2', ['4 rimshot', '6 roll']],
  ] as const)('leads into a %s coro with %j and an accent on its first beat', (direction, roll) => {
    const { bars, percussion } = parts(VERSE_CORO(direction));
    expect(inBar(percussion.timbales, bars[3])).toEqual(roll);
    expect(inBar(percussion.timbales, bars[4])[0]).toBe('0 accent');
    expect(bars[4]?.side).toBe(direction === '2-3' ? 2 : 3);
    expect(inBar(percussion.cascara, bars[3])).toEqual([]);
    expect(inBar(percussion.conga, bars[3]).length).toBe(8);
  });

  it('begins on a clave stroke of the bar it fills also when seven bars lead into the coro', () => {
    const { bars, percussion } = parts('clave: 2-3 son\n[A, role: verse]\n| C | C | C | C | C | C | C |\n[Coro, role: coro]\n| C | G |');
    expect(bars[6]?.side).toBe(2);
    expect(inBar(percussion.timbales, bars[6])).toEqual(['4 rimshot', '6 roll']);
  });

  it('comes once, not on every pass of the coro, and again into the mambo', () => {
    const { bars, percussion } = parts(
      'clave: 2-3 son\n[A, role: verse]\n| C | G |\n[Coro, role: coro, x3]\n| C | G |\n[Moña, role: mambo]\n| C | G |\n[Out, role: verse]\n| C | G |',
    );
    const filled = bars.filter((bar) => inBar(percussion.timbales, bar).some((text) => text.endsWith('roll')));
    expect(filled.map(({ index }) => index)).toEqual([1, 7]);
  });

  it.each([
    ['a stop', '| stop |'],
    ['a bar with hits', '| G {1 2&} |'],
    ['a half bar', '| (2/4) G |'],
  ])('does not fill %s', (_, last) => {
    const { percussion } = parts(VERSE_CORO('2-3', last));
    expect((percussion.timbales ?? []).filter(({ stroke }) => stroke === 'roll' || stroke === 'rimshot')).toEqual([]);
  });

  it('leaves out its accent where the section begins early, with hits or in silence', () => {
    for (const first of ['>C', 'C {2}', 'stop']) {
      const { bars, percussion } = parts(`clave: 2-3 son\n[A, role: verse]\n| C | G |\n[Coro, role: coro]\n| ${first} | G |`);
      expect(inBar(percussion.timbales, bars[1])).toContain('6 roll');
      expect(stepsIn(percussion.timbales, bars[2]).split(' '), first).not.toContain('0');
    }
  });

  it('stays away from styles without timbales', () => {
    const { percussion } = parts(`style: bolero\n${VERSE_CORO('2-3')}`);
    expect(percussion.timbales).toBeUndefined();
  });
});

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
