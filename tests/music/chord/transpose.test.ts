import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Chord } from '../../../src/music/chord/chord';
import { readChord } from '../../../src/music/chord/read';
import { transposeSymbol } from '../../../src/music/chord/transpose';
import { customaryKey, type Key, readKey, transposeKey } from '../../../src/music/pitch/key';
import { PUBLISHED_SYMBOLS } from './published-symbols';

const chordOf = (symbol: string): Chord => {
  const reading = readChord(symbol);
  if (!reading.ok) throw new Error(symbol);
  return reading.value;
};
const keyOf = (text: string): Key => {
  const reading = readKey(text);
  if (!reading.ok) throw new Error(text);
  return reading.value;
};
const move = (symbol: string, semitones: number, key: Key): string => transposeSymbol(chordOf(symbol), semitones, key);
/** A line of chords, all moved into another key. */
const line = (symbols: string, semitones: number, toKey: string): string =>
  symbols
    .split(' ')
    .map((symbol) => move(symbol, semitones, keyOf(toKey)))
    .join(' ');

const mod12 = (value: number): number => ((value % 12) + 12) % 12;

describe('transposing chord symbols', () => {
  // Functions keep their spelling. Common practice, no source.
  test.each([
    ['Em7 A7 D6 B7b9', 3, 'F', 'Gm7 C7 F6 D7b9'],
    ['Em7 A7 D6 B7b9', -1, 'Db', 'Ebm7 Ab7 Db6 Bb7b9'],
    ['Em7 A7 D6 B7b9', 9, 'B', 'C#m7 F#7 B6 G#7b9'],
    ['C C#dim7 Dm7 G7', 2, 'D', 'D D#dim7 Em7 A7'],
    ['C C#dim7 Dm7 G7', 5, 'F', 'F F#dim7 Gm7 C7'],
    ['Cm7 Ab7 Dm7b5 G7', 1, 'C#m', 'C#m7 A7 D#m7b5 G#7'],
    ['Cm7 Ab7 Dm7b5 G7', 10, 'Bbm', 'Bbm7 Gb7 Cm7b5 F7'],
    ['F F#dim7 C/G', 2, 'D', 'G G#dim7 D/A'],
  ])('%s moved by %i into %s is %s', (symbols, semitones, toKey, expected) => {
    expect(line(symbols, semitones, toKey)).toBe(expected);
  });

  test('the twelve keys of a ii–V with its sharpened approach are spelled for each key', () => {
    const keys = Array.from({ length: 12 }, (_, semitones) => transposeKey(keyOf('C'), semitones));
    expect(keys.map((key, semitones) => move('F#dim7', semitones, key)).join(' ')).toBe(
      'F#dim7 Gdim7 G#dim7 Adim7 A#dim7 Bdim7 Cdim7 C#dim7 Ddim7 D#dim7 Edim7 Fdim7',
    );
    expect(keys.map((key, semitones) => move('Bb7', semitones, key)).join(' ')).toBe('Bb7 B7 C7 Db7 D7 Eb7 E7 F7 Gb7 G7 Ab7 A7');
  });

  test('names with an accidental that nobody reads give way, unless they are in the scale', () => {
    expect(move('F', 6, keyOf('Gb'))).toBe('Cb');
    expect(move('Db7', 10, keyOf('Bb'))).toBe('B7');
  });

  test('a bass keeps its letter distance from the root', () => {
    expect(move('A7/C#', -2, keyOf('C'))).toBe('G7/B');
    expect(move('G7/B', 1, keyOf('Db'))).toBe('Ab7/C');
    expect(move('C/Bb', 4, keyOf('E'))).toBe('E/D');
    expect(move('Gm7/C', 3, keyOf('Eb'))).toBe('Bbm7/Eb');
  });

  test('the suffix stays exactly as typed, whatever signs it was typed with', () => {
    expect(move('B♭−7(♭5)', 2, keyOf('Bb'))).toBe('C−7(♭5)');
    expect(move('CΔ7', 7, keyOf('G'))).toBe('GΔ7');
    expect(move('D6/9', -2, keyOf('C'))).toBe('C6/9');
  });

  test('an altered fifth typed right behind an accidental does not join the new root', () => {
    expect(move('F#b5', -6, keyOf('C'))).toBe('C(b5)');
    expect(move('F♯♭5', -6, keyOf('C'))).toBe('C(♭5)');
  });

  test('moved by whole octaves a symbol is what was typed', () => {
    expect(move('B♭7', 0, keyOf('Eb'))).toBe('B♭7');
    expect(move('Cb7', -12, keyOf('Bb'))).toBe('Cb7');
  });

  const anyKey = fc
    .tuple(fc.integer({ min: 0, max: 11 }), fc.constantFrom('major' as const, 'minor' as const))
    .map(([pc, mode]) => customaryKey(pc, mode));
  const readable = PUBLISHED_SYMBOLS.map((row) => row.symbol).filter((symbol) => readChord(symbol).ok);

  test('every transposed symbol can be read, has the same degrees and suffix, and every pitch moved alike', () => {
    fc.assert(
      fc.property(fc.constantFrom(...readable), anyKey, fc.integer({ min: -24, max: 24 }), (symbol, key, semitones) => {
        const before = chordOf(symbol);
        const after = chordOf(move(symbol, semitones, transposeKey(key, semitones)));
        expect(after.suffix).toBe(before.suffix);
        expect(after.tones.map((tone) => tone.degree)).toEqual(before.tones.map((tone) => tone.degree));
        expect(after.tones.map((tone) => tone.pc)).toEqual(before.tones.map((tone) => mod12(tone.pc + semitones)));
        expect(after.bassPc).toBe(mod12(before.bassPc + semitones));
        if (mod12(semitones) !== 0) expect(after.root).toMatch(/^[A-G][b#]?$/);
      }),
      { numRuns: 2000 },
    );
  });

  test('transposing commutes: two moves sound like the one that is their sum', () => {
    const move24 = fc.integer({ min: -24, max: 24 });
    fc.assert(
      fc.property(fc.constantFrom(...readable), anyKey, move24, move24, (symbol, key, a, b) => {
        const twice = chordOf(move(move(symbol, a, transposeKey(key, a)), b, transposeKey(key, a + b)));
        const once = chordOf(move(symbol, a + b, transposeKey(key, a + b)));
        expect([twice.rootPc, twice.bassPc, twice.suffix]).toEqual([once.rootPc, once.bassPc, once.suffix]);
      }),
      { numRuns: 1000 },
    );
  });

  test('a diatonic chord is spelled from the scale of its new key', () => {
    const scale = ['C', 'Dm7', 'Em7', 'F', 'G7', 'Am7', 'Bm7b5'];
    for (let semitones = 1; semitones < 12; semitones += 1) {
      const letters = scale.map((symbol) => move(symbol, semitones, transposeKey(keyOf('C'), semitones)).charAt(0));
      expect(new Set(letters).size).toBe(7);
    }
  });
});
