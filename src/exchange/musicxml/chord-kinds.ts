import { degreeNumber, degreeSemitones } from '../../music/pitch/spell';
import type { Degree } from '../../vocabulary';

/**
 * Chords as MusicXML says them: a `kind`, and `degree` elements for what the kind does not hold.
 * Source: MusicXML 4.0 (W3C Music Notation Community Group, 2021), documentation of `kind-value`, `degree-alter` and `degree-type`.
 */

/** The degrees of a kind. `optional` ones are stacked by the standard but left out by many players, so a chord without them is still of that kind. */
interface Kind {
  readonly name: string;
  readonly degrees: readonly Degree[];
  readonly optional?: readonly Degree[];
}

/**
 * Kinds that are written, those to be preferred first. That an eleventh goes without its third and a thirteenth without its eleventh is
 * common practice, no source; everything else is as the standard's documentation says.
 */
export const KINDS: readonly Kind[] = [
  { name: 'dominant', degrees: ['1', '3', '5', 'b7'] },
  { name: 'major-seventh', degrees: ['1', '3', '5', '7'] },
  { name: 'minor-seventh', degrees: ['1', 'b3', '5', 'b7'] },
  { name: 'diminished-seventh', degrees: ['1', 'b3', 'b5', 'bb7'] },
  { name: 'augmented-seventh', degrees: ['1', '3', '#5', 'b7'] },
  { name: 'half-diminished', degrees: ['1', 'b3', 'b5', 'b7'] },
  { name: 'major-minor', degrees: ['1', 'b3', '5', '7'] },
  { name: 'major', degrees: ['1', '3', '5'] },
  { name: 'minor', degrees: ['1', 'b3', '5'] },
  { name: 'augmented', degrees: ['1', '3', '#5'] },
  { name: 'diminished', degrees: ['1', 'b3', 'b5'] },
  { name: 'suspended-second', degrees: ['1', '2', '5'] },
  { name: 'suspended-fourth', degrees: ['1', '4', '5'] },
  { name: 'power', degrees: ['1', '5'] },
  { name: 'major-sixth', degrees: ['1', '3', '5', '6'] },
  { name: 'minor-sixth', degrees: ['1', 'b3', '5', '6'] },
  { name: 'dominant-ninth', degrees: ['1', '3', '5', 'b7', '9'] },
  { name: 'major-ninth', degrees: ['1', '3', '5', '7', '9'] },
  { name: 'minor-ninth', degrees: ['1', 'b3', '5', 'b7', '9'] },
  { name: 'dominant-11th', degrees: ['1', '3', '5', 'b7', '9', '11'], optional: ['3'] },
  { name: 'major-11th', degrees: ['1', '3', '5', '7', '9', '11'] },
  { name: 'minor-11th', degrees: ['1', 'b3', '5', 'b7', '9', '11'] },
  { name: 'dominant-13th', degrees: ['1', '3', '5', 'b7', '9', '11', '13'], optional: ['11'] },
  { name: 'major-13th', degrees: ['1', '3', '5', '7', '9', '11', '13'], optional: ['11'] },
  { name: 'minor-13th', degrees: ['1', 'b3', '5', 'b7', '9', '11', '13'], optional: ['11'] },
];

/** One `degree` element: which degree, how many semitones it is off, and what is done with it. */
export interface DegreeChange {
  readonly value: number;
  /** Semitones: for `add` off the degree of a dominant chord, else off the degree of the kind. */
  readonly alter: number;
  readonly type: 'add' | 'alter' | 'subtract';
}

/** A chord as a kind and its changes. */
export interface KindReading {
  readonly kind: string;
  readonly changes: readonly DegreeChange[];
}

/** Semitones of each degree of a dominant chord, from which added degrees are counted. */
const DOMINANT: Readonly<Record<number, number>> = {
  1: 0,
  2: 2,
  3: 4,
  4: 5,
  5: 7,
  6: 9,
  7: 10,
  8: 12,
  9: 14,
  10: 16,
  11: 17,
  12: 19,
  13: 21,
};

/** Semitones above the root, not folded into an octave: the ninth is 14. */
const unfolded = (degree: Degree): number => degreeSemitones[degree] + (degreeNumber(degree) > 7 ? 12 : 0);

/** The kind that needs the fewest changes to hold exactly these degrees; the earlier of two in `KINDS`. */
export function kindOf(degrees: readonly Degree[]): KindReading {
  const readings = KINDS.map((kind): KindReading => ({ kind: kind.name, changes: changesFrom(kind, asFifth(degrees)) }));
  return readings.reduce((best, reading) => (reading.changes.length < best.changes.length ? reading : best));
}

/** An altered chord has a flat thirteenth in place of its fifth; as a raised fifth it is one change and not two. */
const asFifth = (degrees: readonly Degree[]): readonly Degree[] =>
  degrees.includes('b13') && !degrees.some((degree) => degreeNumber(degree) === 5)
    ? degrees.map((degree) => (degree === 'b13' ? '#5' : degree))
    : degrees;

function changesFrom(kind: Kind, degrees: readonly Degree[]): DegreeChange[] {
  const numbers = [...new Set([...kind.degrees, ...degrees].map(degreeNumber))].sort((a, b) => a - b);
  return numbers.flatMap((value): DegreeChange[] => {
    const held = kind.degrees.find((degree) => degreeNumber(degree) === value);
    const wanted = degrees.filter((degree) => degreeNumber(degree) === value);
    const add = (degree: Degree): DegreeChange => ({ value, alter: unfolded(degree) - (DOMINANT[value] ?? 0), type: 'add' });
    if (held === undefined) return wanted.map(add);
    const [first, ...rest] = wanted.includes(held) ? [held, ...wanted.filter((degree) => degree !== held)] : wanted;
    if (first === undefined) return kind.optional?.includes(held) ? [] : [{ value, alter: 0, type: 'subtract' }];
    const moved = unfolded(first) - unfolded(held);
    return [...(moved === 0 ? [] : [{ value, alter: moved, type: 'alter' as const }]), ...rest.map(add)];
  });
}

/**
 * Pitch classes above the root, ascending, of a kind with its changes, or null for a kind that says no chord tones (`other`, `Neapolitan` …).
 * A raised degree of a kind counts from the kind's own. Optional degrees are those that players leave out; they are not listed.
 */
export function pcsOfKind({ kind, changes }: KindReading): readonly number[] | null {
  const row = KINDS.find(({ name }) => name === kind);
  if (!row) return null;
  const sounding = new Map<string, number>();
  for (const degree of row.degrees) {
    const touched = changes.some(({ value, type }) => value === degreeNumber(degree) && type !== 'add');
    if (touched || !row.optional?.includes(degree)) sounding.set(String(degreeNumber(degree)), unfolded(degree));
  }
  changes.forEach(({ value, alter, type }, index) => {
    const place = String(value);
    if (type === 'subtract') sounding.delete(place);
    else if (type === 'alter') sounding.set(place, (sounding.get(place) ?? DOMINANT[value] ?? 0) + alter);
    else sounding.set(`${place}+${index}`, (DOMINANT[value] ?? 0) + alter);
  });
  return [...new Set([...sounding.values()].map((semitones) => ((semitones % 12) + 12) % 12))].sort((a, b) => a - b);
}
