import { describe, expect, it } from 'vitest';
import type { ChartFault } from '../../../src/music/chart/chart';
import { readChart } from '../../../src/music/chart/read';
import { placeInText } from '../../../src/state/chart-text';

/** The chart with one correction written in, as one touch writes it. */
function mended(text: string, fault: ChartFault): string {
  const from = placeInText(text, fault.line, fault.column);
  return text.slice(0, from) + fault.nearest + text.slice(from + fault.text.length);
}
const faultsOf = (text: string): readonly ChartFault[] => {
  const read = readChart(text);
  return read.ok ? [] : read.faults;
};

/** What people write by hand on a part: slips of the finger, words of a bandleader, other ways to spell a chord. Invented. */
const WRITTEN = [
  'H7',
  'Gm7b5 / C7b9 hits',
  'Gm7b5/C7b9',
  'Em7 A7 D6 G7 C',
  'C7 (hits)',
  'C7 hits',
  'C4',
  'c7',
  'Cmaj 7',
  'C 7',
  'Bbb7',
  'Db7sharp11',
  'G-7',
  'GΔ',
  'Gø',
  'G7alt.',
  'Am7(b5)',
  'N.C.',
  'C7 {1 2&',
  'C7 {9}',
  'C7 {1 1}',
  '{1}',
  'stop!',
  'STOP',
  'rest 4',
  'rest 99',
  'C / / /',
  'C . . .',
  'C//',
  '% %',
  'x2',
  'C x2',
  'montuno',
  'montuno 2-3',
  'coro',
  'tag 3 bars',
  '//',
  'C > G',
  '> >C',
  'Cm7 F7 |: Bb',
  'E7#9#9',
  'F6/',
  '/F',
  'H',
  'Z',
  '♭7',
  '7',
  'ii V I',
];
const HEADS = [
  'tempo: 92',
  'tempo: half = 0',
  'tempo: half=9999',
  'tempo: fast',
  'tempo: quarter = 1000',
  'key: H',
  'key: D dorian',
  'key: d moll',
  'clave: 2/3',
  'clave: son',
  'clave: 23 son',
  'clave: 2-3 guaguanco',
  'meter: 3/4',
  'meter: 6/4',
  'style: salsaa',
  'style: reggae',
  'form: A, Z',
  'form: AABA',
  'form:',
  'feel: swung',
  'Clave 2-3',
  'montuno 2-3',
  'hits: bar 3',
  'title',
];

const CHARTS = [
  ...WRITTEN.map((bar) => `key: D\n\n[A]\n| Em7 | ${bar} | D6 | B7b9 |\n`),
  ...HEADS.map((head) => `${head}\n\n[A]\n| Em7 | A7 | D6 | B7b9 |\n`),
  '[A\n| C | G7 |\n',
  '[A]\n| C :| G7 |: C |\n',
  '[A]\n| C | G7\n',
  '[A, role: chorus]\n| C | G7 |\n',
  '[A, on queue]\n| C | G7 |\n',
  '[A]\n| C | G7 |\n[A]\n| F | C |\n',
];

describe('A correction that is offered', () => {
  it.each(CHARTS)('mends what it is offered for: %j', (text) => {
    for (const fault of faultsOf(text)) {
      if (fault.nearest === null) continue;
      const after = mended(text, fault);
      const still = faultsOf(after).filter(({ line, column }) => line === fault.line && column === fault.column);
      expect(still, `“${fault.nearest}” for “${fault.text}” (${fault.code})`).toEqual([]);
      expect(faultsOf(after).length, `“${fault.nearest}” for “${fault.text}” brings no new fault`).toBeLessThan(faultsOf(text).length);
    }
  });

  it('is offered for a good part of them', () => {
    const faults = CHARTS.flatMap(faultsOf);
    expect(faults.filter(({ nearest }) => nearest !== null).length / faults.length).toBeGreaterThan(0.25);
  });
});
