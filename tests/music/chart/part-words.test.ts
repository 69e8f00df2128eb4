import { describe, expect, it } from 'vitest';
import { readChart } from '../../../src/music/chart/read';

/** Words as they stand on a dance band's parts. Common practice, no source. */
describe('A line that a part says in words', () => {
  it.each([
    ['montuno 2-3', 'clave: 2-3 son'],
    ['Clave 3-2', 'clave: 3-2 son'],
    ['2-3 rumba', 'clave: 2-3 rumba'],
    ['3-2 clave', 'clave: 3-2 son'],
    ['Montuno: 2-3', 'clave: 2-3 son'],
    ['Tempo 92', 'tempo: half = 92'],
    ['tempo 184', 'tempo: quarter = 184'],
    ['Key Bb', 'key: Bb'],
    ['Coro', '[Coro]'],
    ['mambo 2', '[mambo 2]'],
    ['Coro:', '[Coro]'],
    ['C:', '[C]'],
  ])('is one fault, with the line as a chart writes it: %s', (line, written) => {
    const text = `${line}\n| Gm7 | C7 | Fmaj7 | D7 |\n`;
    const read = readChart(text);
    expect(read.ok ? [] : read.faults.map(({ column, text: found, nearest }) => [column, found, nearest])).toEqual([[1, line, written]]);
    expect(readChart(text.replace(line, written)).ok).toBe(true);
  });

  it('leaves bars without bar signs alone, and a chord that stands alone', () => {
    expect(readChart('C\n').ok).toBe(true);
    expect(readChart('[A]\nGm7 C7\nFmaj7\n').ok).toBe(true);
  });
});
