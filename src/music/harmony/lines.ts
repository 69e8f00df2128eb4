// long because it is one table of lines
import type { Degree, LineName } from '../../vocabulary';
import type { ChordFamily } from '../chord/chord';

/**
 * Moving lines: what the octaves (or an inner note) do over a held chord, a cadence or a dance loop. Adding a line is adding a row.
 * All rows are common practice; the minor and major lines are described in lessons on line clichés, the ii–V–I ones in M. Levine,
 * The Jazz Theory Book (1995).
 */
export interface LineRow {
  readonly name: string;
  readonly line: LineName;
  /** `always`, or only at levels with moving lines. */
  readonly at: 'always' | 'moving levels';
  readonly place: 'octave' | 'inside';
  readonly when:
    | {
        readonly kind: 'held';
        readonly families: readonly ChordFamily[];
        readonly without?: readonly Degree[];
        readonly leadsUpFourth?: boolean;
        readonly fourBars?: boolean;
        readonly dorianOnly?: boolean;
        /** Every note of the line must be a chord tone or in the key. */
        readonly inKey?: boolean;
        /** Only on the tonic of a minor key, or its relative in a major one. */
        readonly onTonic?: boolean;
      }
    | {
        readonly kind: 'to dominant';
        readonly families: readonly ChordFamily[];
        readonly without?: readonly Degree[];
        readonly holds?: Degree;
      }
    | { readonly kind: 'two a bar by fifths' }
    /** The line is printed as chords over one root; `degrees` are the tones that make it. */
    | { readonly kind: 'written over one root' }
    | {
        readonly kind: 'loop';
        readonly chords: readonly { readonly aboveTonic: number; readonly families: readonly ChordFamily[] }[];
        /** Only where the first chord comes back at once: a vamp. */
        readonly returns?: boolean;
      };
  /** Held: one note per half bar (per bar when it lasts four bars). To dominant: over the first chord. Loop: one for each chord. */
  readonly degrees: readonly Degree[];
}

const MAJOR: readonly ChordFamily[] = ['major'];
const MINOR: readonly ChordFamily[] = ['minor'];
const DOMINANT: readonly ChordFamily[] = ['dominant', 'augmented'];
const ANY_MAJOR: readonly ChordFamily[] = ['major', 'dominant'];

/** Where the line over ii falls to: the third of its dominant. */
export const THIRD_OF_V: LineRow = {
  name: 'third of V',
  line: 'guide',
  at: 'moving levels',
  place: 'octave',
  degrees: ['3'],
  when: { kind: 'to dominant', families: [] },
};

/** The lines, in the order in which they are tried. */
export const LINES: readonly LineRow[] = [
  {
    name: 'i–♭VII–♭VI–V7',
    line: 'guide',
    at: 'always',
    place: 'octave',
    degrees: ['b3', '3', '3', '3'],
    when: {
      kind: 'loop',
      chords: [
        { aboveTonic: 0, families: MINOR },
        { aboveTonic: 10, families: ANY_MAJOR },
        { aboveTonic: 8, families: ANY_MAJOR },
        { aboveTonic: 7, families: DOMINANT },
      ],
    },
  },
  {
    name: 'I–IV–V–IV',
    line: 'guide',
    at: 'always',
    place: 'octave',
    degrees: ['1', '5', '3', '5'],
    when: {
      kind: 'loop',
      chords: [
        { aboveTonic: 0, families: MAJOR },
        { aboveTonic: 5, families: MAJOR },
        { aboveTonic: 7, families: ANY_MAJOR },
        { aboveTonic: 5, families: MAJOR },
      ],
    },
  },
  {
    name: 'i–iv–V7',
    line: 'guide',
    at: 'always',
    place: 'octave',
    degrees: ['1', '5', '3'],
    when: {
      kind: 'loop',
      chords: [
        { aboveTonic: 0, families: MINOR },
        { aboveTonic: 5, families: MINOR },
        { aboveTonic: 7, families: DOMINANT },
      ],
    },
  },
  {
    name: '♭VI–V7',
    line: 'guide',
    at: 'always',
    place: 'octave',
    degrees: ['3', '3'],
    when: {
      kind: 'loop',
      chords: [
        { aboveTonic: 8, families: ANY_MAJOR },
        { aboveTonic: 7, families: DOMINANT },
      ],
    },
  },
  {
    name: 'i–V7',
    line: 'guide',
    at: 'always',
    place: 'octave',
    degrees: ['1', '3'],
    when: {
      kind: 'loop',
      chords: [
        { aboveTonic: 0, families: MINOR },
        { aboveTonic: 7, families: DOMINANT },
      ],
    },
  },
  {
    name: 'I–V7',
    line: 'guide',
    at: 'always',
    place: 'octave',
    degrees: ['1', '3'],
    when: {
      kind: 'loop',
      chords: [
        { aboveTonic: 0, families: MAJOR },
        { aboveTonic: 7, families: DOMINANT },
      ],
    },
  },
  {
    name: 'I7–IV7',
    line: 'guide',
    at: 'always',
    place: 'octave',
    degrees: ['b7', '3'],
    when: {
      kind: 'loop',
      chords: [
        { aboveTonic: 0, families: ['dominant'] },
        { aboveTonic: 5, families: ['dominant'] },
      ],
    },
  },
  {
    name: 'i7–IV7 vamp',
    line: 'guide',
    at: 'always',
    place: 'octave',
    degrees: ['b7', '3'],
    when: {
      kind: 'loop',
      returns: true,
      chords: [
        { aboveTonic: 0, families: MINOR },
        { aboveTonic: 5, families: DOMINANT },
      ],
    },
  },
  {
    name: 'ii7–V7 vamp',
    line: 'guide',
    at: 'always',
    place: 'octave',
    degrees: ['b7', '3'],
    when: {
      kind: 'loop',
      returns: true,
      chords: [
        { aboveTonic: 2, families: MINOR },
        { aboveTonic: 7, families: DOMINANT },
      ],
    },
  },
  // Only the seventh is asked for: the third that it falls to is what the search does by itself.
  { name: 'two a bar by 7→3', line: 'guide', at: 'always', place: 'octave', degrees: ['b7'], when: { kind: 'two a bar by fifths' } },
  {
    name: 'written 1–7–♭7–6',
    line: 'minor',
    at: 'always',
    place: 'octave',
    degrees: ['1', '7', 'b7', '6'],
    when: { kind: 'written over one root' },
  },
  {
    name: 'written 5–♯5–6–♭7',
    line: 'major',
    at: 'always',
    place: 'octave',
    degrees: ['5', '#5', '6', 'b7'],
    when: { kind: 'written over one root' },
  },
  {
    name: 'ii–V with the minor line',
    line: 'minor',
    at: 'moving levels',
    place: 'octave',
    degrees: ['1', '7', 'b7', 'b7'],
    when: { kind: 'to dominant', families: MINOR, without: ['6', 'b7'] },
  },
  {
    // The major seventh would pass over a chord that is written with its minor seventh.
    name: 'ii7–V with 1 falling to ♭7',
    line: 'minor',
    at: 'moving levels',
    place: 'octave',
    degrees: ['1', '1', 'b7', 'b7'],
    when: { kind: 'to dominant', families: MINOR, without: ['6'], holds: 'b7' },
  },
  {
    name: 'held minor 1–7–♭7–6',
    line: 'minor',
    at: 'moving levels',
    place: 'octave',
    degrees: ['1', '7', 'b7', '6'],
    when: { kind: 'held', families: MINOR, without: ['b7'] },
  },
  {
    name: 'held minor seventh ♭7–6',
    line: 'minor',
    at: 'moving levels',
    place: 'octave',
    degrees: ['b7', '6', 'b7', '6'],
    when: { kind: 'held', families: MINOR, inKey: true },
  },
  {
    name: 'held minor 5–♭6–6–♭6',
    line: 'minor',
    at: 'moving levels',
    place: 'octave',
    degrees: ['5', 'b6', '6', 'b6'],
    when: { kind: 'held', families: MINOR, onTonic: true },
  },
  {
    name: 'held minor 1–7–♭7–6 inside',
    line: 'minor',
    at: 'moving levels',
    place: 'inside',
    degrees: ['1', '7', 'b7', '6'],
    when: { kind: 'held', families: MINOR, without: ['b7'] },
  },
  {
    name: 'held major 5–♯5–6–♭7',
    line: 'major',
    at: 'moving levels',
    place: 'octave',
    degrees: ['5', '#5', '6', 'b7'],
    when: { kind: 'held', families: MAJOR, without: ['7'], leadsUpFourth: true },
  },
  {
    name: '6/9 vamp 5–6',
    line: 'vamp',
    at: 'moving levels',
    place: 'octave',
    degrees: ['5', '6', '5', '6'],
    when: { kind: 'held', families: MAJOR, inKey: true },
  },
  {
    name: '6/9 vamp, four bars',
    line: 'vamp',
    at: 'moving levels',
    place: 'octave',
    degrees: ['5', '6', '5', '6', '6', '5', '3', '5'],
    when: { kind: 'held', families: MAJOR, fourBars: true, inKey: true },
  },
  {
    name: 'minor vamp 1–2–♭3–2',
    line: 'vamp',
    at: 'moving levels',
    place: 'octave',
    degrees: ['1', '2', 'b3', '2'],
    when: { kind: 'held', families: MINOR, dorianOnly: true, inKey: true },
  },
  {
    name: 'held major 1–7–6–7',
    line: 'major',
    at: 'moving levels',
    place: 'octave',
    degrees: ['1', '7', '6', '7'],
    when: { kind: 'held', families: MAJOR, inKey: true },
  },
  {
    name: 'dominant vamp 5–6–♭7–6',
    line: 'vamp',
    at: 'moving levels',
    place: 'octave',
    degrees: ['5', '6', 'b7', '6'],
    when: { kind: 'held', families: ['dominant'], without: ['b9', '#9', 'b13', '#5', 'b5'], inKey: true },
  },
];
