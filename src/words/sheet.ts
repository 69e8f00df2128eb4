import type { Key } from '../music/chart/chart';
import type { Clave, Level, Side } from '../vocabulary';
import { GRID_WORDS } from './grid';
import { SCREEN } from './screen';
import { printedNote } from './spoken';

/** Words of the staff view. */
export const STAFF_WORDS = {
  failed: 'The music fonts could not be loaded, so the staff cannot be drawn. Open this view again when there is a connection.',
  view: 'Staff',
  /** The switch to the Cuban habit. */
  sixteenths: 'In sixteenths, one bar a cycle',
  startAt: (bar: number, side: Side): string => `Start at ${GRID_WORDS.barName(bar + 1)}, ${GRID_WORDS.sideName(side)}`,
  /** What the band does in a bar, behind its side: `, hits`, `, stop`, and how often a repeated passage is played. */
  barNote: (silence: 'stop' | 'rest' | null, hits: boolean, times: number | null): string =>
    [hits ? ', band hits' : '', silence === 'stop' ? ', stop' : '', times !== null && times > 2 ? `, ${times} times` : ''].join(''),
  /** At the end of a form that goes round and has repeat signs inside. */
  daCapo: 'D.C.',
  system: (from: number, to: number, chords: readonly string[]): string => `${upperFirst(barsWords(from, to))}: ${chords.join(', ')}`,
} as const;

/** Pieces that the staff, the sheets and the files share. */
export const SHEET_PHRASES = {
  bars: (from: number, to: number): string => (to - from === 1 ? GRID_WORDS.barName(from + 1) : `bars ${from + 1}–${to}`),
  direction: (clave: Clave): string => `${clave.direction} ${clave.kind}`,
  key: (key: Key): string => `${printedNote(key.tonic)} ${key.mode}`,
  tempo: (halfNotes: number): string => `half note = ${halfNotes}, quarter note = ${Math.round(halfNotes * 2)}`,
  asBefore: (section: string, range: readonly [number, number], same: readonly [number, number]): string =>
    `${section}, ${barsWords(...range)}: as ${barsWords(...same)}`,
} as const;

/** Bars [from, to), counted from 0, as people name them: `bar 3`, `bars 9–16`. */
export const barsWords = (from: number, to: number): string => SHEET_PHRASES.bars(from, to);

const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A clave as it is printed in large type: `2-3 son`. */
export const directionWords = (clave: Clave): string => SHEET_PHRASES.direction(clave);

/** A key in words: `D major`, `B♭ minor`. */
export const keyInWords = (key: Key): string => SHEET_PHRASES.key(key);

/** A tempo in both units: `half note = 92, quarter note = 184`. */
export const tempoWords = (halfNotes: number): string => SHEET_PHRASES.tempo(halfNotes);

/** A reference to a section that stands on the sheet already: `A, bars 9–16: as bars 1–8`. */
export const asBeforeWords = (section: string, range: readonly [number, number], same: readonly [number, number]): string =>
  SHEET_PHRASES.asBefore(section, range, same);

/** Words of the lesson sheet. */
export const SHEET_WORDS = {
  name: 'Lesson sheet',
  print: 'Print / save as PDF',
  midi: 'MIDI file',
  paper: 'Paper',
  papers: { A4: 'A4', Letter: 'Letter' },
  claveName: 'clave',
  begins: (side: Side): string => `begins on the ${GRID_WORDS.sideName(side)}`,
  style: 'Style',
  key: 'Key',
  level: (level: Level): string => `Level ${level}, ${SCREEN.levels[level]}`,
  now: 'Now',
  goal: 'Goal',
  firstPass: 'A note in brackets is played the first time only.',
  ringsOn: 'Half a tie rings into the next pass.',
  octaveClef: 'The bass sounds an octave lower than it is written.',
  /** What stands over a part of the sheet: its name, and a hint behind it. */
  headings: {
    rhythm: ['The rhythm', 'Clap it first: foot on the beats, hands on the line.'],
    right: ['Right hand alone', ''],
    left: ['Left hand alone', ''],
    together: ['Hands together', ''],
    variation: ['One variation', 'Another figure for the same bars.'],
    blank: ['Write the montuno', 'Clave, rhythm and chords are given. Mind the strokes that take the next chord.'],
    missing: ['Write the missing notes', 'Every box is a stroke that takes the chord to come, an eighth early.'],
    crossed: ['Find the crossed bars', 'In every line two bars of the rhythm have changed places. Ring them.'],
    answers: ['Answers', ''],
    'no task': ['No crossed bars to find', 'This figure does not say which side is which. Choose another level or a tune in 4/4.'],
  },
  otherHeading: (clave: Clave): readonly [string, string] => [
    `The other direction: ${directionWords(clave)} clave`,
    'The same chords; the two bars of the rhythm change places.',
  ],
  levelHeading: (level: Level): readonly [string, string] => [`Level ${level}, ${SCREEN.levels[level]}`, ''],
  /** Answers of the crossed bars: line and bars, all from 1. */
  crossedAnswer: (line: number, bar: number): string => `Line ${line}: bars ${bar} and ${bar + 1}.`,
  ladder: 'Tempo, half notes a minute',
  keys: 'Keys',
  fingering: 'Octaves 1–5, or 1–4 with a black key on top; thirds and fourths 2–4; sixths 1–4.',
  teacher: "Teacher's note",
  caution:
    'Montunos are heavy work for hand and arm. Keep the wrist loose, rest between passes, and stop when it hurts: then see a teacher or a clinician.',
  page: (page: number, pages: number): string => `page ${page} of ${pages}`,
} as const;
