import { describe, expect, test } from 'vitest';
import type { Chord } from '../../../src/music/chord/chord';
import { tone } from '../../../src/music/chord/members';
import { readChord } from '../../../src/music/chord/read';

/**
 * Tertian spelling: chord members take alternate letter names above the root (e.g. S. Kostka & D. Payne, Tonal Harmony, chapters on
 * triads and seventh chords). Flag: published, from memory.
 */
const TERTIAN: readonly (readonly [string, string])[] = [
  ['Bb7', 'Bb D F Ab'],
  ['Eb7', 'Eb G Bb Db'],
  ['Ab7', 'Ab C Eb Gb'],
  ['Db7', 'Db F Ab Cb'],
  ['Cb7', 'Cb Eb Gb Bbb'],
  ['F7', 'F A C Eb'],
  ['C7', 'C E G Bb'],
  ['G7', 'G B D F'],
  ['D7', 'D F# A C'],
  ['A7', 'A C# E G'],
  ['E7', 'E G# B D'],
  ['F#7', 'F# A# C# E'],
  ['G#7', 'G# B# D# F#'],
  ['Cm7', 'C Eb G Bb'],
  ['Bbm7', 'Bb Db F Ab'],
  ['Abm7', 'Ab Cb Eb Gb'],
  ['Gm7', 'G Bb D F'],
  ['Dm7', 'D F A C'],
  ['Am7', 'A C E G'],
  ['Bm7', 'B D F# A'],
  ['F#m7', 'F# A C# E'],
  ['G#m7', 'G# B D# F#'],
  ['Cm7b5', 'C Eb Gb Bb'],
  ['Dm7b5', 'D F Ab C'],
  ['Em7b5', 'E G Bb D'],
  ['F#m7b5', 'F# A C E'],
  ['Bbm7b5', 'Bb Db Fb Ab'],
  ['F#dim7', 'F# A C Eb'],
  ['Edim7', 'E G Bb Db'],
  ['Dbmaj7', 'Db F Ab C'],
  ['Bmaj7', 'B D# F# A#'],
  ['F#maj7', 'F# A# C# E#'],
  ['Ebmaj7', 'Eb G Bb D'],
  ['Bbmaj7', 'Bb D F A'],
  ['Emaj7', 'E G# B D#'],
  ['Gaug', 'G B D#'],
  ['Fm6', 'F Ab C D'],
  ['Gm6', 'G Bb D E'],
];

/** Further spellings that charts get wrong most; the same rule. */
const FURTHER: readonly (readonly [string, string])[] = [
  ['D9', 'D F# A C E'],
  ['C+', 'C E G#'],
  ['G7#5', 'G B D# F'],
  ['Cdim7', 'C Eb Gb Bbb'],
  ['E#7', 'E# G## B# D#'],
];

/** Lecture text on guide tones in the blues (Coursera, "The Blues", guide tones). Flag: published. */
const GUIDE_TONES: readonly (readonly [string, string, string])[] = [
  ['Eb7', 'G', 'Db'],
  ['Cm7', 'Eb', 'Bb'],
];

const chordOf = (symbol: string): Chord => {
  const reading = readChord(symbol);
  if (!reading.ok) throw new Error(`${symbol}: ${JSON.stringify(reading.faults)}`);
  return reading.value;
};

describe('E10: the spelling of every tone follows its chord', () => {
  test.each([...TERTIAN, ...FURTHER])('%s is %s', (symbol, tones) => {
    expect(
      chordOf(symbol)
        .tones.map(({ name }) => name)
        .join(' '),
    ).toBe(tones);
  });

  test.each(GUIDE_TONES)('%s has the guide tones %s and %s', (symbol, third, seventh) => {
    expect(tone(chordOf(symbol), 'third')?.name).toBe(third);
    expect(tone(chordOf(symbol), 'seventh')?.name).toBe(seventh);
  });
});
