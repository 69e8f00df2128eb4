import { describe, expect, test } from 'vitest';
import type { Chord } from '../../../src/music/chord/chord';
import { describeChord, type Member, tone } from '../../../src/music/chord/members';
import { readChord } from '../../../src/music/chord/read';

const chordOf = (symbol: string): Chord => {
  const reading = readChord(symbol);
  if (!reading.ok) throw new Error(symbol);
  return reading.value;
};

// Chord-member arithmetic, no source.
const MEMBERS: readonly (readonly [string, Record<Member, string | null>])[] = [
  ['Bb7', { root: 'Bb', third: 'D', fifth: 'F', sixth: null, seventh: 'Ab' }],
  ['Cdim7', { root: 'C', third: 'Eb', fifth: 'Gb', sixth: null, seventh: 'Bbb' }],
  ['Am6', { root: 'A', third: 'C', fifth: 'E', sixth: 'F#', seventh: null }],
  ['G13', { root: 'G', third: 'B', fifth: 'D', sixth: null, seventh: 'F' }],
  ['E7alt', { root: 'E', third: 'G#', fifth: null, sixth: null, seventh: 'D' }],
  ['Dsus4', { root: 'D', third: null, fifth: 'A', sixth: null, seventh: null }],
  ['F5', { root: 'F', third: null, fifth: 'C', sixth: null, seventh: null }],
  ['C-Δ', { root: 'C', third: 'Eb', fifth: 'G', sixth: null, seventh: 'B' }],
];

describe('chord members', () => {
  test.each(MEMBERS)('%s has just the members it names', (symbol, members) => {
    for (const [member, name] of Object.entries(members))
      expect([member, tone(chordOf(symbol), member as Member)?.name ?? null]).toEqual([member, name]);
  });

  test('a chord is described with parallel degrees and tones, and pitch classes that are sorted, single and include the bass', () => {
    expect(describeChord(chordOf('Gm7/C'))).toEqual({
      symbol: 'Gm7/C',
      root: 'G',
      bass: 'C',
      degrees: ['1', 'b3', '5', 'b7'],
      tones: ['G', 'Bb', 'D', 'F'],
      pcs: [0, 2, 5, 7, 10],
    });
    expect(describeChord(chordOf('D6'))).toEqual({
      symbol: 'D6',
      root: 'D',
      bass: null,
      degrees: ['1', '3', '5', '6'],
      tones: ['D', 'F#', 'A', 'B'],
      pcs: [2, 6, 9, 11],
    });
    expect(describeChord(chordOf('C/E')).pcs).toEqual([0, 4, 7]);
  });
});
