import { describe, expect, it } from 'vitest';
import { type PatternId, percussionPattern, strokeOnStep } from '../../../src/music/percussion/patterns';
import { percussionParts } from '../../../src/music/percussion/percussion';
import type { Direction } from '../../../src/vocabulary';
import { formOf } from '../chart/chart-of';

/** Timbales pattern sheet ("Basic Patterns": paila/cáscara, mambo bell, abanico, cha-cha-chá, 6/8), public engraving source. */
const SHEET = 'published: timbales pattern sheet';
/** Wikipedia, "Conga" and "Tumbao". */
const CONGA = 'published: Wikipedia "Conga", "Tumbao"';

type Letters = Readonly<Record<string, string>>;
const X: Letters = { accent: 'x', plain: 'x' };
const DRUM: Letters = { muffled: 'm', open: 'o' };
const HANDS: Letters = { heel: 'H', toe: 'T', slap: 'S', open: 'O', 'open low': 'U' };

/** Typed from the sources, apart from the application's table, in both directions. */
const GRIDS: readonly (readonly [
  id: PatternId,
  instrument: string,
  twoThree: string,
  threeTwo: string,
  letters: Letters,
  source: string,
])[] = [
  ['cascara', 'cascara', 'x.x.xx.x x.xx.x.x', 'x.xx.x.x x.x.xx.x', X, SHEET],
  ['timbales low drum', 'timbales', '..m...o. ..m...o.', '..m...o. ..m...o.', DRUM, SHEET],
  ['mambo bell', 'mambo bell', 'x.x.xxxx .xxxx.xx', '.xxxx.xx x.x.xxxx', X, SHEET],
  ['bongo bell', 'bongo bell', 'X.xxX.xx X.xxX.xx', 'X.xxX.xx X.xxX.xx', { mouth: 'X', neck: 'x' }, 'common practice, no source'],
  ['cha-cha bell', 'cha-cha bell', 'x.x.x.x. x.x.x.x.', 'x.x.x.x. x.x.x.x.', X, SHEET],
  ['cha-cha left hand', 'timbales', '..mm..om ..mm..om', '..mm..om ..mm..om', DRUM, SHEET],
  ['conga one drum', 'conga', 'HTSTHTOO HTSTHTOO', 'HTSTHTOO HTSTHTOO', HANDS, CONGA],
  ['conga clave-aligned', 'conga', 'HTSTHTOO HTSTHTOT', 'HTSTHTOT HTSTHTOO', HANDS, `${CONGA} in words; grid computed`],
  ['conga two drums', 'conga', 'HTSTHTOO HTSUUTOO', 'HTSUUTOO HTSTHTOO', HANDS, `${CONGA}, reconstructed from the row of hands`],
  [
    'conga soft',
    'conga',
    'HTSTHTOO HTSTHTOO',
    'HTSTHTOO HTSTHTOO',
    { ...HANDS, 'soft slap': 'S', 'soft open': 'O' },
    `${CONGA}; touch: common practice, no source`,
  ],
  [
    'martillo',
    'bongo',
    'MtftMtHf MtftMtHf',
    'MtftMtHf MtftMtHf',
    { accent: 'M', thumb: 't', fingers: 'f', low: 'H' },
    'published: bongomania.com; mycongaplace.com; finger letters from memory',
  ],
  ['maracas', 'maracas', 'xxxxxxxx xxxxxxxx', 'xxxxxxxx xxxxxxxx', X, 'from memory'],
  ['guiro', 'guiro', 'L.ssL.ss L.ssL.ss', 'L.ssL.ss L.ssL.ss', { 'long scrape': 'L', 'short scrape': 's' }, 'from memory'],
  ['maracas on the beats', 'maracas', 'x.x.x.x. x.x.x.x.', 'x.x.x.x. x.x.x.x.', X, 'common practice, no source'],
];

/** 6/8: the 2-side first is the 3-side first turned by six. */
const SIX_EIGHT: readonly (readonly [
  id: PatternId,
  instrument: string,
  twoThree: string,
  threeTwo: string,
  letters: Letters,
  source: string,
])[] = [
  ['6/8 bell', 'bell', '.x.x.x x.x.xx', 'x.x.xx .x.x.x', X, SHEET],
  ['6/8 low drum', 'timbales', 'o..m.. o..m..', 'o..m.. o..m..', DRUM, SHEET],
];

/** Two bars as they sound, letter by letter, sides apart. */
function sounding(id: PatternId, instrument: string, direction: Direction, meter: '4/4' | '6/8', letters: Letters): string {
  const { bars } = formOf(`meter: ${meter}\nclave: ${direction} ${meter === '6/8' ? 'bembe' : 'son'}\n| C | G |`);
  const parts = percussionParts(bars, meter === '6/8' ? 'bembe' : 'son', { styleOf: (bar) => bar.style, choice: [id] });
  expect(Object.keys(parts)).toEqual([instrument]);
  const steps = meter === '6/8' ? 12 : 16;
  const at = new Map((parts[instrument] ?? []).map(({ tick, stroke }) => [tick / 240, letters[stroke] ?? '?']));
  const text = Array.from({ length: steps }, (_, step) => at.get(step) ?? '.').join('');
  return `${text.slice(0, steps / 2)} ${text.slice(steps / 2)}`;
}

describe('every percussion grid sounds as its source prints it, in both directions', () => {
  it.each(GRIDS)('%s on %s: 2-3 %s, 3-2 %s', (id, instrument, twoThree, threeTwo, letters, source) => {
    expect(source).not.toBe('');
    expect(sounding(id, instrument, '2-3', '4/4', letters)).toBe(twoThree);
    expect(sounding(id, instrument, '3-2', '4/4', letters)).toBe(threeTwo);
  });

  it.each(SIX_EIGHT)('%s on %s: 2-3 %s, 3-2 %s', (id, instrument, twoThree, threeTwo, letters, source) => {
    expect(source).not.toBe('');
    expect(sounding(id, instrument, '2-3', '6/8', letters)).toBe(twoThree);
    expect(sounding(id, instrument, '3-2', '6/8', letters)).toBe(threeTwo);
  });
});

const steps = (grid: string): Set<number> => new Set([...grid.replace(' ', '')].flatMap((letter, step) => (letter === '.' ? [] : [step])));
const shared = (one: string, other: string): number => [...steps(one)].filter((step) => steps(other).has(step)).length;
/** Steps from the 3-side with this stroke, as the application's table has them. */
const stepsWith = (id: PatternId, ...strokes: readonly string[]): number[] =>
  Array.from({ length: percussionPattern(id).cycle }, (_, step) => step).filter((step) =>
    strokes.includes(strokeOnStep(percussionPattern(id), step) ?? ''),
  );
const sounds = (id: PatternId, direction: Direction, meter: '4/4' | '6/8' = '4/4'): string => {
  const row = [...GRIDS, ...SIX_EIGHT].find(([name]) => name === id);
  if (!row) throw new Error(id);
  return sounding(id, row[1], direction, meter, row[4]);
};

/** Santos 2009; Toussaint 2011 and 2013. */
const SON_23 = '..x.x... x..x..x.';
const SON_32 = 'x..x..x. ..x.x...';
const RUMBA_23 = '..x.x... x..x...x';
const RUMBA_32 = 'x..x...x ..x.x...';

describe('what is known of the grids holds in what sounds', () => {
  it('cáscara has 10 strokes, with accents on 0 2 5 of the 2-side and 0 3 5 of the 3-side (timbales pattern sheet)', () => {
    expect(steps(sounds('cascara', '2-3')).size).toBe(10);
    expect(stepsWith('cascara', 'accent')).toEqual([0, 3, 5, 8, 10, 13]);
  });

  it('cáscara holds 4 of 5 son strokes and all 5 rumba strokes, crossed only 2 and 3 (computed on the grids)', () => {
    const cascara = sounds('cascara', '2-3');
    expect([shared(cascara, SON_23), shared(cascara, RUMBA_23)]).toEqual([4, 5]);
    expect([shared(cascara, SON_32), shared(cascara, RUMBA_32)]).toEqual([2, 3]);
  });

  it('mambo bell has 12 strokes, accents on 0 2 7 of the 2-side and 4 of the 3-side, and misses beat 1 of the 3-side', () => {
    expect(steps(sounds('mambo bell', '2-3')).size).toBe(12);
    expect(stepsWith('mambo bell', 'accent')).toEqual([4, 8, 10, 15]);
    expect(strokeOnStep(percussionPattern('mambo bell'), 0)).toBeNull();
  });

  it('mambo bell and bongo bell meet 10 times a cycle in either direction (mycongaplace.com forum post)', () => {
    for (const direction of ['2-3', '3-2'] as const)
      expect(shared(sounds('mambo bell', direction), sounds('bongo bell', direction))).toBe(10);
  });

  it('the low drum is muffled on step 2 and open on step 6 of each bar (timbales pattern sheet)', () => {
    expect(stepsWith('timbales low drum', 'muffled')).toEqual([2, 10]);
    expect(stepsWith('timbales low drum', 'open')).toEqual([6, 14]);
  });

  it('one conga slaps on step 2 and is open on steps 6 and 7 of each bar (Wikipedia "Conga")', () => {
    expect(stepsWith('conga one drum', 'slap')).toEqual([2, 10]);
    expect(stepsWith('conga one drum', 'open')).toEqual([6, 7, 14, 15]);
  });

  it('the second conga sounds on steps 3 and 4 of the 3-side only (Wikipedia "Conga", reconstructed)', () => {
    expect(stepsWith('conga two drums', 'open low')).toEqual([3, 4]);
  });

  it('the conga with the clave has one open tone on beat 4 of the 3-side and two that lead into it (Wikipedia "Conga")', () => {
    expect(stepsWith('conga clave-aligned', 'open')).toEqual([6, 14, 15]);
  });

  it('martillo strikes all 8 steps of a bar, the low drum on step 6 (bongomania.com; mycongaplace.com)', () => {
    expect(steps(sounds('martillo', '2-3')).size).toBe(16);
    expect(stepsWith('martillo', 'low')).toEqual([6, 14]);
  });

  it("the abanico's first stroke is a clave stroke on either side (computed; son clave from Santos 2009)", () => {
    const first = { three: stepsWith('abanico', 'rimshot')[0], two: stepsWith('abanico', 'rimshot')[1] };
    expect(first).toEqual({ three: 3, two: 12 });
    expect([3, 12].every((step) => steps(SON_32).has(step) && steps(RUMBA_32).has(step))).toBe(true);
  });
});
