import { assert, type Degree } from '../../vocabulary';

/**
 * Note names as letters and accidentals, ASCII (`Ab`, `F#`, `Bbb`, `G##`).
 *
 * Method: a name is a place on the line of fifths (… Bb F C G D …, C = 0). Seven places up is one sharp more,
 * twelve places is the same key of the piano, so transposing and respelling are additions.
 */

const LETTERS = 'CDEFGAB';
const LETTER_SEMITONES = [0, 2, 4, 5, 7, 9, 11] as const;
/** Letters in the order of fifths, from F (place -1). */
const FIFTHS_LETTERS = 'FCGDAEB';

/** Semitones above the root of every degree (compound degrees folded into 0 to 11). Chord-member arithmetic, no source. */
export const degreeSemitones: Readonly<Record<Degree, number>> = {
  '1': 0,
  b2: 1,
  '2': 2,
  b3: 3,
  '3': 4,
  '4': 5,
  '#4': 6,
  b5: 6,
  '5': 7,
  '#5': 8,
  b6: 8,
  '6': 9,
  bb7: 9,
  b7: 10,
  '7': 11,
  b9: 1,
  '9': 2,
  '#9': 3,
  '11': 5,
  '#11': 6,
  b13: 8,
  '13': 9,
};

/** The number in a degree: `b7` gives 7, `#11` gives 11. */
export const degreeNumber = (degree: Degree): number => Number(degree.replace(/^[b#]+/, ''));

/** Remainder of a division by 12, never negative. */
export const mod12 = (value: number): number => ((value % 12) + 12) % 12;

interface Letter {
  /** 0 = C to 6 = B. */
  readonly index: number;
  /** Semitones the accidentals add: `bb` is -2. */
  readonly alteration: number;
}

function letterOf(name: string): Letter {
  const match = /^([A-G])(#{0,3}|b{0,3})$/.exec(name);
  assert(match, `a note name is a letter A to G with # or b, got "${name}"`);
  const accidentals = match[2] ?? '';
  return { index: LETTERS.indexOf(match[1] ?? ''), alteration: accidentals.startsWith('b') ? -accidentals.length : accidentals.length };
}

const spelled = (letterIndex: number, alteration: number): string =>
  LETTERS.charAt(letterIndex) + (alteration < 0 ? 'b'.repeat(-alteration) : '#'.repeat(alteration));

/** Semitones of a name above the C that its octave number counts from: -1 for `Cb`, 12 for `B#`. */
function semitonesAboveC(name: string): number {
  const { index, alteration } = letterOf(name);
  return (LETTER_SEMITONES[index] ?? 0) + alteration;
}

/** Pitch class of a spelled note, C = 0: `Cb` gives 11. Throws on anything that is not a note name. */
export const pcOf = (name: string): number => mod12(semitonesAboveC(name));

/**
 * Puts the octave on a note name so that it sounds `midi`: `spellMidi(68, 'Ab')` is `Ab4`, `spellMidi(71, 'Cb')` is `Cb5`, `spellMidi(60, 'B#')` is `B#3`.
 * C4 = 60. Throws when the name is of another pitch class.
 */
export function spellMidi(midi: number, name: string): string {
  assert(Number.isInteger(midi) && midi >= 0 && midi <= 127, `a MIDI note is a whole number from 0 to 127, got ${midi}`);
  const octaves = (midi - semitonesAboveC(name)) / 12;
  assert(Number.isInteger(octaves), `MIDI note ${midi} is no ${name}`);
  return `${name}${octaves - 1}`;
}

/** MIDI note of a scientific name, C4 = 60: `midiOf('Cb5')` is 71. Throws on anything else. */
export function midiOf(scientific: string): number {
  const match = /^([A-G][#b]*)(-?\d+)$/.exec(scientific);
  assert(match, `a note with its octave looks like Eb4, got "${scientific}"`);
  return semitonesAboveC(match[1] ?? '') + 12 * (Number(match[2]) + 1);
}

/**
 * Spells a degree above a root: chord members take alternate letter names (tertian spelling), so the seventh of `Bb7` is `Ab` and of `Cdim7` `Bbb`.
 * Where that would need three accidentals the simplest name of the same pitch is given.
 */
export function degreeName(rootName: string, degree: Degree): { readonly name: string; readonly pc: number } {
  const root = letterOf(rootName);
  const steps = root.index + ((degreeNumber(degree) - 1) % 7);
  const index = steps % 7;
  const pc = mod12(pcOf(rootName) + degreeSemitones[degree]);
  // The smallest alteration of that letter which reaches the pitch: -5 to 6.
  const alteration = mod12(pc - (LETTER_SEMITONES[index] ?? 0) + 5) - 5;
  if (Math.abs(alteration) > 2) return { name: simplestName(pc, alteration < 0 ? 'flat' : 'sharp'), pc };
  return { name: spelled(index, alteration), pc };
}

/** A natural, or the single flat or sharp, of a pitch class: `simplestName(8, 'flat')` is `Ab`. */
export function simplestName(pc: number, accidental: 'flat' | 'sharp'): string {
  const natural = LETTER_SEMITONES.indexOf(mod12(pc) as (typeof LETTER_SEMITONES)[number]);
  if (natural >= 0) return spelled(natural, 0);
  const alteration = accidental === 'flat' ? -1 : 1;
  return spelled(LETTER_SEMITONES.indexOf(mod12(pc - alteration) as (typeof LETTER_SEMITONES)[number]), alteration);
}

/** Place of a name on the line of fifths: C 0, G 1, F -1, Bb -2, F# 6, Cb -7. */
export function fifthsOf(name: string): number {
  const { index, alteration } = letterOf(name);
  return FIFTHS_LETTERS.indexOf(LETTERS.charAt(index)) - 1 + 7 * alteration;
}

/** The name at a place on the line of fifths; the inverse of `fifthsOf`. */
export function nameAtFifths(place: number): string {
  assert(Number.isInteger(place), `a place on the line of fifths is a whole number, got ${place}`);
  const alteration = Math.floor((place + 1) / 7);
  const letter = FIFTHS_LETTERS.charAt(place + 1 - 7 * alteration);
  return spelled(LETTERS.indexOf(letter), alteration);
}
