import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  customaryKey,
  diatonicPcs,
  type Key,
  keyName,
  nameInKey,
  readKey,
  scaleOf,
  signature,
  transposeKey,
} from '../../../src/music/pitch/key';
import { pcOf } from '../../../src/music/pitch/spell';

/** Circle of fifths; sign as in MusicXML 4.0 `fifths` (negative flats, positive sharps). Flag: published; counts agree with an independent library. */
const SIGNATURES: readonly (readonly [string, Key['mode'], number, string])[] = [
  ['C', 'major', 0, 'C D E F G A B'],
  ['G', 'major', 1, 'G A B C D E F#'],
  ['D', 'major', 2, 'D E F# G A B C#'],
  ['E', 'major', 4, 'E F# G# A B C# D#'],
  ['B', 'major', 5, 'B C# D# E F# G# A#'],
  ['C#', 'major', 7, 'C# D# E# F# G# A# B#'],
  ['Bb', 'major', -2, 'Bb C D Eb F G A'],
  ['Ab', 'major', -4, 'Ab Bb C Db Eb F G'],
  ['Gb', 'major', -6, 'Gb Ab Bb Cb Db Eb F'],
  ['Cb', 'major', -7, 'Cb Db Eb Fb Gb Ab Bb'],
  ['A', 'minor', 0, 'A B C D E F G'],
  ['E', 'minor', 1, 'E F# G A B C D'],
  ['B', 'minor', 2, 'B C# D E F# G A'],
  ['D#', 'minor', 6, 'D# E# F# G# A# B C#'],
  ['A#', 'minor', 7, 'A# B# C# D# E# F# G#'],
  ['D', 'minor', -1, 'D E F G A Bb C'],
  ['C', 'minor', -3, 'C D Eb F G Ab Bb'],
  ['F', 'minor', -4, 'F G Ab Bb C Db Eb'],
  ['Bb', 'minor', -5, 'Bb C Db Eb F Gb Ab'],
  ['Ab', 'minor', -7, 'Ab Bb Cb Db Eb Fb Gb'],
];

const keyOf = (text: string): Key => {
  const reading = readKey(text);
  if (!reading.ok) throw new Error(`${text}: ${JSON.stringify(reading.faults)}`);
  return reading.value;
};
const anyKey = fc
  .tuple(fc.integer({ min: 0, max: 11 }), fc.constantFrom('major' as const, 'minor' as const))
  .map(([pc, mode]) => customaryKey(pc, mode));

describe('keys', () => {
  test.each(SIGNATURES)('%s %s has %i in its signature and the scale %s', (tonic, mode, fifths, scale) => {
    const key = keyOf(mode === 'minor' ? `${tonic}m` : tonic);
    expect(key).toEqual({ tonic, mode });
    expect(signature(key)).toBe(fifths);
    expect(scaleOf(key).join(' ')).toBe(scale);
    expect([...diatonicPcs(key)]).toEqual(scale.split(' ').map(pcOf));
  });

  test('a key is read in each way of typing it', () => {
    for (const text of ['D', 'D major', 'Dmaj', 'D Major', ' D ', 'DM']) expect(keyOf(text)).toEqual({ tonic: 'D', mode: 'major' });
    for (const text of ['F#m', 'F♯m', 'F# minor', 'F#min', 'F#-', 'F♯ Minor']) expect(keyOf(text)).toEqual({ tonic: 'F#', mode: 'minor' });
    expect(keyOf('E♭')).toEqual({ tonic: 'Eb', mode: 'major' });
  });

  test.each([
    ['d', 'lower-case key', 'D'],
    ['bbm', 'lower-case key', 'Bbm'],
    ['H', 'unknown key', 'B'],
    ['hm', 'unknown key', 'Bm'],
    ['D dorian', 'unknown key', 'Dm'],
    ['C7', 'unknown key', 'C'],
    ['G#', 'too many accidentals', 'Ab'],
    ['Fb', 'too many accidentals', 'E'],
    ['D#', 'too many accidentals', 'Eb'],
    ['Gbm', 'too many accidentals', 'F#m'],
    ['', 'empty key', null],
    ['?', 'unknown key', null],
  ])('"%s" is a fault: %s, nearest %s', (text, code, nearest) => {
    expect(readKey(text)).toMatchObject({ ok: false, faults: [{ code, text, nearest }] });
  });

  test('reading never throws, and what it offers can be read', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[A-Ha-h][b#♭♯]?[ mMajinor-]{0,6}$/)), (text) => {
        const reading = readKey(text);
        if (reading.ok) return keyName(reading.value) === keyName(keyOf(keyName(reading.value)));
        return reading.faults.every((fault) => fault.text === text && (fault.nearest === null || readKey(fault.nearest).ok));
      }),
      { numRuns: 1000 },
    );
  });

  // Common practice, no source: fewer accidentals, and Gb and Ebm of the two with six.
  test('of two enharmonic keys the customary one is chosen', () => {
    const twelve = (text: string): string =>
      Array.from({ length: 12 }, (_, semitones) => keyName(transposeKey(keyOf(text), semitones))).join(' ');
    expect(twelve('C')).toBe('C Db D Eb E F Gb G Ab A Bb B');
    expect(twelve('Cm')).toBe('Cm C#m Dm Ebm Em Fm F#m Gm G#m Am Bbm Bm');
    for (const mode of ['major', 'minor'] as const)
      for (let pc = 0; pc < 12; pc += 1) expect(Math.abs(signature(customaryKey(pc, mode)))).toBeLessThanOrEqual(6);
  });

  test('whole octaves leave a key as it is, even one that is not customary', () => {
    expect(transposeKey(keyOf('F#'), 12)).toEqual(keyOf('F#'));
    expect(transposeKey(keyOf('Abm'), 0)).toEqual(keyOf('Abm'));
  });

  test('transposing commutes and keeps mode and pitch', () => {
    fc.assert(
      fc.property(anyKey, fc.integer({ min: -30, max: 30 }), fc.integer({ min: -30, max: 30 }), (key, a, b) => {
        expect(transposeKey(transposeKey(key, a), b)).toEqual(transposeKey(key, a + b));
        expect(pcOf(transposeKey(key, a).tonic)).toBe((((pcOf(key.tonic) + a) % 12) + 12) % 12);
      }),
    );
  });

  test('a note in a key is spelled as in its scale, other notes with the accidental of the signature', () => {
    expect([3, 6, 8, 10, 1].map((pc) => nameInKey(pc, keyOf('Ab')))).toEqual(['Eb', 'Gb', 'Ab', 'Bb', 'Db']);
    expect([3, 6, 8, 10, 1].map((pc) => nameInKey(pc, keyOf('E')))).toEqual(['D#', 'F#', 'G#', 'A#', 'C#']);
    expect(nameInKey(11, keyOf('Gb'))).toBe('Cb');
    expect(nameInKey(10, keyOf('C'))).toBe('Bb');
  });
});
