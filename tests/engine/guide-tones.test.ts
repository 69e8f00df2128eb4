import { describe, expect, it } from 'vitest';
import { arrange } from '../../src/music/score';
import { chartOf } from './progressions';

/**
 * Published guide-tone lines of ii–V–I: the seventh of each chord falls by step to the third of the next, the third is held as the
 * seventh (worked example in C in a published ii–V–I study; M. Levine, The Jazz Theory Book, 1995). C was read; the other keys are
 * transpositions with conventional spelling (computed). Minor: the same rule in standard harmony texts, from memory.
 */
const MAJOR = [
  ['C', 'Dm7', 'G7', 'Cmaj7', 'C B B', 'F F E'],
  ['F', 'Gm7', 'C7', 'Fmaj7', 'F E E', 'Bb Bb A'],
  ['Bb', 'Cm7', 'F7', 'Bbmaj7', 'Bb A A', 'Eb Eb D'],
  ['Eb', 'Fm7', 'Bb7', 'Ebmaj7', 'Eb D D', 'Ab Ab G'],
  ['Ab', 'Bbm7', 'Eb7', 'Abmaj7', 'Ab G G', 'Db Db C'],
  ['Db', 'Ebm7', 'Ab7', 'Dbmaj7', 'Db C C', 'Gb Gb F'],
  ['Gb', 'Abm7', 'Db7', 'Gbmaj7', 'Gb F F', 'Cb Cb Bb'],
  ['B', 'C#m7', 'F#7', 'Bmaj7', 'B A# A#', 'E E D#'],
  ['E', 'F#m7', 'B7', 'Emaj7', 'E D# D#', 'A A G#'],
  ['A', 'Bm7', 'E7', 'Amaj7', 'A G# G#', 'D D C#'],
  ['D', 'Em7', 'A7', 'Dmaj7', 'D C# C#', 'G G F#'],
  ['G', 'Am7', 'D7', 'Gmaj7', 'G F# F#', 'C C B'],
] as const;

const MINOR = [
  ['Cm', 'Dm7b5', 'G7b9', 'Cm6', 'C B', 'F F Eb'],
  ['Bbm', 'Cm7b5', 'F7b9', 'Bbm6', 'Bb A', 'Eb Eb Db'],
  ['G#m', 'A#m7b5', 'D#7b9', 'G#m6', 'G# F##', 'C# C# B'],
  ['C#m', 'D#m7b5', 'G#7b9', 'C#m6', 'C# B#', 'F# F# E'],
  ['F#m', 'G#m7b5', 'C#7b9', 'F#m6', 'F# E#', 'B B A'],
  ['Bm', 'C#m7b5', 'F#7b9', 'Bm6', 'B A#', 'E E D'],
  ['Em', 'F#m7b5', 'B7b9', 'Em6', 'E D#', 'A A G'],
  ['Dm', 'Em7b5', 'A7b9', 'Dm6', 'D C#', 'G G F'],
  ['Am', 'Bm7b5', 'E7b9', 'Am6', 'A G#', 'D D C'],
  ['Gm', 'Am7b5', 'D7b9', 'Gm6', 'G F#', 'C C Bb'],
  ['Fm', 'Gm7b5', 'C7b9', 'Fm6', 'F E', 'Bb Bb Ab'],
  ['Ebm', 'Fm7b5', 'Bb7b9', 'Ebm6', 'Eb D', 'Ab Ab Gb'],
] as const;

/** The octave notes of the first strokes on each chord, one line for every figure that “another one” offers. */
function linesOffered(key: string, chords: readonly string[]): string[] {
  const chart = chartOf(`key: ${key}\n| ${chords.join(' | ')} | % |`);
  return Array.from({ length: 8 }, (_, seed) => {
    const { rightHand } = arrange(chart, { colour: 'jazz', seed }).parts;
    return chords
      .map((chord) => rightHand.find((stroke) => stroke.chord === chord && stroke.role === 'octave')?.names[0]?.replace(/\d/, ''))
      .join(' ');
  });
}

describe('E6: the published guide-tone lines are among the lines offered', () => {
  it.each(MAJOR)('ii–V–I in %s', (key, ii, V, I, fromSeventh, fromThird) => {
    const offered = linesOffered(key, [ii, V, I]);
    expect(offered).toContain(fromSeventh);
    expect(offered).toContain(fromThird);
  });
  it.each(MINOR)('iiø–V–i in %s', (key, ii, V, i, fromSeventh, fromThird) => {
    const offered = linesOffered(key, [ii, V, i]);
    expect(
      offered.some((line) => line.startsWith(fromSeventh)),
      offered.join(' | '),
    ).toBe(true);
    expect(offered).toContain(fromThird);
  });
});
