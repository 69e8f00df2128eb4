import { describe, expect, it } from 'vitest';
import { readQuickLine } from '../../../src/music/chart/quick-line';
import { chartOf } from './chart-of';

/** Key and rows of the chart a line gives. */
function heard(line: string): string {
  const read = readQuickLine(line);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  chartOf(read.value);
  const lines = read.value.trim().split('\n');
  return `${lines.find((text) => text.startsWith('key:'))?.slice(5)}: ${lines.at(-1)}`;
}

describe('the quick line', () => {
  it.each([
    ['Em7 A7 D6 B7b9', 'D: | Em7 | A7 | D6 | B7b9 |'],
    ['  Em7,A7 ,  D6, B7b9 ', 'D: | Em7 | A7 | D6 | B7b9 |'],
    ['Gm7 C7 | F', 'F: | Gm7 C7 | F |'],
    ['| Gm7 C7 | F |', 'F: | Gm7 C7 | F |'],
    ['|: Gm7 C7 | F :|', 'F: |: Gm7 C7 | F :|'],
    ['Am Dm E7 Am', 'Am: | Am | Dm | E7 | Am |'],
    ['Dm7', 'Dm: | Dm7 | % |'],
    ['C % F', 'C: | C | % | F | % |'],
    ['Fm Db7 C7 Fm', 'Fm: | Fm | Db7 | C7 | Fm |'],
    ['Bb Eb F7 Eb', 'Bb: | Bb | Eb | F7 | Eb |'],
    ['Gm7 C7 in F', 'F: | Gm7 | C7 |'],
    ['Gm7 C7 in Gm', 'Gm: | Gm7 | C7 |'],
    ['Gm7 C7 | F in F', 'F: | Gm7 C7 | F |'],
  ])('takes chords: %s', (line, expected) => {
    expect(heard(line)).toBe(expected);
  });

  it.each([
    ['1 4 5 4 in D', 'D: | D | G | A7 | G |'],
    ['1-4-5-4 in Bb', 'Bb: | Bb | Eb | F7 | Eb |'],
    ['ii V I in Eb', 'Eb: | Fm7 | Bb7 | Eb | % |'],
    ['i V7 V7 i in Gm', 'Gm: | Gm | D7 | D7 | Gm |'],
    ['i V7 V7 i in G', 'Gm: | Gm | D7 | D7 | Gm |'],
    ['I V7 V7 I in F', 'F: | F | C7 | C7 | F |'],
    ['i bVII bVI V7 in Cm', 'Cm: | Cm | Bb | Ab | G7 |'],
    ['i VII VI V in Am', 'Am: | Am | G | F | E7 |'],
    ['i iv V7 in Em', 'Em: | Em | Am | B7 | % |'],
    ['I7 IV7 in G', 'G: | G7 | C7 |'],
    ['bVI V7 in Fm', 'Fm: | Db | C7 |'],
    ['I vi ii V in A', 'A: | A | F#m7 | Bm7 | E7 |'],
    ['iiø V7b9 i6 in Cm', 'Cm: | Dø | G7b9 | Cm6 | % |'],
    ['I IV | V IV in A', 'A: | A D | E7 D |'],
    ['1 4 5 4 in D minor', 'Dm: | Dm | Gm | A7 | Gm |'],
  ])('takes a loop and a key: %s', (line, expected) => {
    expect(heard(line)).toBe(expected);
  });

  it.each([
    ['', 'no bars', 1, '', null],
    ['Em7 hm7 A7', 'unknown chord', 5, 'hm7', 'Bm7'],
    ['1 4 5 4', 'unknown key', 1, '1 4 5 4', '1 4 5 4 in C'],
    ['i iv V in', 'unknown key', 1, 'i iv V in', 'i iv V in Cm'],
    ['ii V I in H', 'unknown key', 11, 'H', 'B'],
    ['1 9 in C', 'unknown chord', 3, '9', null],
    ['| C F G | C', 'chord count', 3, 'C F G', 'C / F G'],
    ['[A] | C |', 'unknown chord', 1, '[A] | C |', null],
    ['% C', 'unknown chord', 1, '%', null],
    // Words of the chart, not a key.
    ['Gm7 C7 in bar 7, 3-bar tag', 'unknown chord', 8, 'in bar 7, 3-bar tag', null],
    ['Gm7 C7 | F in H', 'unknown chord', 12, 'in H', null],
  ])('says what is wrong with %j', (line, code, column, text, nearest) => {
    const read = readQuickLine(line);
    expect(read.ok ? [] : read.faults.map((fault) => ({ ...fault, expected: '' }))).toEqual([
      { code, line: 1, column, text, expected: '', nearest },
    ]);
  });

  it.each([
    ['Gm7 C7 montuno 2-3', '2-3 son', 'F: | Gm7 | C7 |'],
    ['montuno 3-2, Gm7 C7', '3-2 son', 'F: | Gm7 | C7 |'],
    ['3-2 rumba Gm7 C7', '3-2 rumba', 'F: | Gm7 | C7 |'],
    ['ii V I in Eb 3-2', '3-2 son', 'Eb: | Fm7 | Bb7 | Eb | % |'],
    ['Montuno: 2-3 1 4 in D', '2-3 son', 'D: | D | G |'],
  ])('takes the direction in %s, as a chart has it', (line, clave, music) => {
    const read = readQuickLine(line);
    expect(read.ok && /^clave: (.*)$/m.exec(read.value)?.[1]).toBe(clave);
    expect(heard(line)).toBe(music);
  });

  it('leaves a loop of degrees alone that reads like a direction', () => {
    expect(heard('2-3 in D')).toBe('D: | Em7 | F#m7 |');
  });

  it('asks for the chords when the direction stands alone, once', () => {
    const read = readQuickLine('montuno 2-3');
    expect(read).toMatchObject({ ok: false, faults: [{ code: 'no bars', text: 'montuno 2-3', column: 1 }] });
    expect(!read.ok && read.faults).toHaveLength(1);
  });

  it('has the typed line as its title', () => {
    const read = readQuickLine('ii V I in Eb');
    expect(read.ok && chartOf(read.value).title).toBe('ii V I in Eb');
  });

  it.each([
    '\u0000',
    ';;;',
    'x'.repeat(500),
    '|',
    '||',
    '|:',
    'in',
    'in in in',
    ' in D',
    '- in D',
    'C\nD',
    '<script>alert(1)</script>',
    'form: A',
    '| stop |',
    '| / |',
  ])('never throws: %j', (line) => {
    const read = readQuickLine(line);
    if (read.ok) chartOf(read.value);
    else expect(read.faults.length).toBeGreaterThan(0);
  });
});
