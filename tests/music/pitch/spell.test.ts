import fc from 'fast-check';
import { Note } from 'tonal';
import { describe, expect, test } from 'vitest';
import {
  degreeName,
  degreeNumber,
  degreeSemitones,
  fifthsOf,
  midiOf,
  nameAtFifths,
  pcOf,
  simplestName,
  spellMidi,
} from '../../../src/music/pitch/spell';
import { hertzOf } from '../../../src/music/pitch/tuning';
import type { Degree } from '../../../src/vocabulary';

/**
 * MIDI notes, their names and frequencies. MIDI 1.0: note 69 is A4; ISO 16:1975: A4 = 440 Hz; twelve-tone equal temperament.
 * Flag: published (60, 69 and the ends), computed by the formula (the rest). Tolerance 0.001 Hz.
 */
const NAMED: readonly (readonly [number, string, number])[] = [
  [21, 'A0', 27.5],
  [23, 'B0', 30.8677],
  [24, 'C1', 32.7032],
  [25, 'C#1', 34.6478],
  [27, 'D#1', 38.8909],
  [28, 'E1', 41.2034],
  [31, 'G1', 48.9994],
  [32, 'G#1', 51.9131],
  [33, 'A1', 55.0],
  [35, 'B1', 61.7354],
  [36, 'C2', 65.4064],
  [37, 'C#2', 69.2957],
  [39, 'D#2', 77.7817],
  [41, 'F2', 87.3071],
  [42, 'F#2', 92.4986],
  [43, 'G2', 97.9989],
  [44, 'G#2', 103.8262],
  [47, 'B2', 123.4708],
  [48, 'C3', 130.8128],
  [49, 'C#3', 138.5913],
  [50, 'D3', 146.8324],
  [52, 'E3', 164.8138],
  [53, 'F3', 174.6141],
  [56, 'G#3', 207.6523],
  [58, 'A#3', 233.0819],
  [59, 'B3', 246.9417],
  [60, 'C4', 261.6256],
  [61, 'C#4', 277.1826],
  [62, 'D4', 293.6648],
  [66, 'F#4', 369.9944],
  [67, 'G4', 391.9954],
  [68, 'G#4', 415.3047],
  [69, 'A4', 440.0],
  [70, 'A#4', 466.1638],
  [72, 'C5', 523.2511],
  [73, 'C#5', 554.3653],
  [74, 'D5', 587.3295],
  [77, 'F5', 698.4565],
  [78, 'F#5', 739.9888],
  [79, 'G5', 783.9909],
  [81, 'A5', 880.0],
  [82, 'A#5', 932.3275],
  [84, 'C6', 1046.5023],
  [86, 'D6', 1174.6591],
  [87, 'D#6', 1244.5079],
  [91, 'G6', 1567.9817],
  [92, 'G#6', 1661.2188],
  [93, 'A6', 1760.0],
  [94, 'A#6', 1864.655],
  [95, 'B6', 1975.5332],
  [96, 'C7', 2093.0045],
  [97, 'C#7', 2217.461],
  [98, 'D7', 2349.3181],
  [100, 'E7', 2637.0205],
  [102, 'F#7', 2959.9554],
  [103, 'G7', 3135.9635],
  [104, 'G#7', 3322.4376],
  [105, 'A7', 3520.0],
  [108, 'C8', 4186.009],
];

/** CRC Handbook of Chemistry and Physics, section 14, musical scales, table 1 (equal tempered, A4 = 440 Hz). Flag: published. As printed, so half a unit of the last place. */
const HANDBOOK: readonly (readonly [string, number, number])[] = [
  ['C2', 65.406, 0.001],
  ['D2', 73.416, 0.001],
  ['D#2', 77.782, 0.001],
  ['E2', 82.407, 0.001],
  ['F2', 87.307, 0.001],
  ['C4', 261.63, 0.01],
  ['D#4', 311.13, 0.01],
  ['E4', 329.63, 0.01],
  ['F4', 349.23, 0.01],
  ['C#6', 1108.73, 0.01],
  ['D6', 1174.66, 0.01],
  ['F6', 1396.91, 0.01],
];

/** OEIS A329207 and neighbours (A329208 to A329217). Flag: published. */
const PRECISE: readonly (readonly [string, number])[] = [
  ['C4', 261.6255653005],
  ['D4', 293.6647679174],
  ['E4', 329.6275569128],
  ['F#4', 369.9944227116],
  ['G4', 391.9954359817],
  ['G#4', 415.3046975799],
  ['A#4', 466.163761518],
];

const DEGREES = Object.keys(degreeSemitones) as Degree[];
/** The same degrees as intervals of another library, so that spelling is checked against code that is not ours. */
const INTERVALS: Readonly<Record<Degree, string>> = {
  '1': '1P',
  b2: '2m',
  '2': '2M',
  b3: '3m',
  '3': '3M',
  '4': '4P',
  '#4': '4A',
  b5: '5d',
  '5': '5P',
  '#5': '5A',
  b6: '6m',
  '6': '6M',
  bb7: '7d',
  b7: '7m',
  '7': '7M',
  b9: '2m',
  '9': '2M',
  '#9': '2A',
  '11': '4P',
  '#11': '4A',
  b13: '6m',
  '13': '6M',
};
const name = fc
  .tuple(fc.constantFrom(...'ABCDEFG'), fc.constantFrom('', 'b', '#', 'bb', '##'))
  .map(([letter, accidental]) => letter + accidental);

describe('spelling', () => {
  test.each(NAMED)('MIDI note %i is %s at %f Hz', (midi, scientific, hertz) => {
    expect(spellMidi(midi, scientific.replace(/\d$/, ''))).toBe(scientific);
    expect(midiOf(scientific)).toBe(midi);
    expect(Math.abs(hertzOf(midi) - hertz)).toBeLessThanOrEqual(0.001);
  });

  test.each(HANDBOOK)('%s is printed with %f Hz', (scientific, hertz, tolerance) => {
    expect(Math.abs(hertzOf(midiOf(scientific)) - hertz)).toBeLessThanOrEqual(tolerance);
  });

  test.each(PRECISE)('%s is %f Hz to eight places', (scientific, hertz) => {
    expect(Math.abs(hertzOf(midiOf(scientific)) - hertz)).toBeLessThanOrEqual(1e-8);
  });

  // The octave number changes between B and C, whatever the accidental (scientific pitch notation). Common practice, no source.
  test.each([
    [68, 'Ab', 'Ab4'],
    [71, 'Cb', 'Cb5'],
    [60, 'B#', 'B#3'],
    [58, 'Cbb', 'Cbb4'],
    [61, 'B##', 'B##3'],
    [64, 'Fb', 'Fb4'],
    [65, 'E#', 'E#4'],
    [0, 'C', 'C-1'],
    [127, 'G', 'G9'],
    [0, 'B#', 'B#-2'],
  ])('%i spelled as %s is %s', (midi, letter, scientific) => {
    expect(spellMidi(midi, letter)).toBe(scientific);
    expect(midiOf(scientific)).toBe(midi);
  });

  test('a name of another pitch, a name that is none and a note outside MIDI are our own mistakes and throw', () => {
    expect(() => spellMidi(60, 'D')).toThrow('MIDI note 60 is no D');
    expect(() => spellMidi(128, 'Ab')).toThrow('128');
    expect(() => spellMidi(60.5, 'C')).toThrow('60.5');
    expect(() => pcOf('H')).toThrow('"H"');
    expect(() => midiOf('Eb')).toThrow('"Eb"');
  });

  test('every degree above every root has the pitch and the name that an independent library gives, up to two accidentals', () => {
    fc.assert(
      fc.property(name, fc.constantFrom(...DEGREES), (root, degree) => {
        const spelled = degreeName(root, degree);
        const other = Note.transpose(root, INTERVALS[degree]);
        expect(spelled.pc).toBe(Note.chroma(other));
        expect(spelled.pc).toBe(pcOf(spelled.name));
        if (/bbb|###/.test(other)) expect(spelled.name).toMatch(/^[A-G][b#]?$/);
        else expect(spelled.name).toBe(other);
      }),
      { numRuns: 1000 },
    );
  });

  test('no root up to one accidental is spelled with more than two', () => {
    for (const root of ['Cb', 'Fb', 'E#', 'B#', 'Gb', 'A#', 'C'])
      for (const degree of DEGREES) expect(degreeName(root, degree).name).toMatch(/^[A-G](b{0,2}|#{0,2})$/);
  });

  test('degrees carry the semitones of their interval and their own number', () => {
    for (const degree of DEGREES) expect(degreeSemitones[degree]).toBe(Note.chroma(Note.transpose('C', INTERVALS[degree])));
    expect(degreeNumber('bb7')).toBe(7);
    expect(degreeNumber('#11')).toBe(11);
  });

  test('names and places on the line of fifths turn into each other', () => {
    expect(['F', 'C', 'G', 'F#', 'Cb', 'Bb'].map(fifthsOf)).toEqual([-1, 0, 1, 6, -7, -2]);
    fc.assert(fc.property(name, (written) => nameAtFifths(fifthsOf(written)) === written));
    fc.assert(fc.property(fc.integer({ min: -20, max: 20 }), (place) => pcOf(nameAtFifths(place)) === (((place * 7) % 12) + 12) % 12));
  });

  test('the simplest name is natural or takes the one accidental asked for', () => {
    expect([0, 1, 3, 6, 8, 10, 11].map((pc) => simplestName(pc, 'flat'))).toEqual(['C', 'Db', 'Eb', 'Gb', 'Ab', 'Bb', 'B']);
    expect([0, 1, 3, 6, 8, 10, 11].map((pc) => simplestName(pc, 'sharp'))).toEqual(['C', 'C#', 'D#', 'F#', 'G#', 'A#', 'B']);
  });

  test('a pitch put into any octave under any of its names sounds the same', () => {
    fc.assert(
      fc.property(name, fc.integer({ min: 1, max: 9 }), (written, octave) => {
        const midi = pcOf(written) + 12 * octave;
        return midiOf(spellMidi(midi, written)) === midi;
      }),
    );
  });
});
