import type { Device, Side } from '../vocabulary';
import { noteLetter, printedChord, printedNote, SPOKEN } from './spoken';

/** What one cell of the grid holds, for its name in words. Names are ASCII scientific (`Eb4`). */
export interface CellFacts {
  /** Bar as people count it, from 1. */
  readonly bar: number;
  readonly side: Side;
  /** As drawn in the count lane: `2`, `&`. */
  readonly count: string;
  /** The count on or before this cell: `2` for the & of 2. */
  readonly beat: string;
  /** Chord drawn in this cell, and whether it is struck before its written place. */
  readonly chord: { readonly symbol: string; readonly early: boolean } | null;
  readonly clave: boolean;
  readonly hit: boolean;
  readonly right: readonly string[];
  readonly left: readonly string[];
  readonly bass: readonly string[];
  /** Instruments by their names in the score, and the kind of stroke. */
  readonly percussion: readonly { readonly instrument: string; readonly stroke: string }[];
  /** Strokes later within the step: the second of two sixteenths. */
  readonly later?: readonly { readonly hand: 'right' | 'left'; readonly names: readonly string[] }[];
  /** Devices that made the piano strokes. */
  readonly marks?: readonly Device[];
}

/** Instruments whose names for people differ from their names in a score. */
const INSTRUMENT_NAMES: Readonly<Record<string, string>> = { cascara: 'cáscara', guiro: 'güiro', bell: '6/8 bell' };

/** An instrument of the percussion by its name for people: `guiro` gives `güiro`. */
const instrumentName = (instrument: string): string => INSTRUMENT_NAMES[instrument] ?? instrument;

/** What a device did, in two or three words, for the name of a cell. */
const DEVICE_MARKS: Readonly<Record<Device, string>> = {
  'octave-up': 'an octave up',
  'octaves-only': 'octaves only',
  'one-bar-neutral': 'neutral bar',
  'extra-note': 'extra note',
  'double-notes': 'double notes',
  'half-step-out': 'a half step out',
};

/** A note name as it is said: `Eb4` gives `E flat 4`. */
const spokenNote = (name: string): string =>
  name
    .replace(
      /^([A-G])(b*)(#*)/,
      (_, letter: string, flats: string, sharps: string) => noteLetter(letter) + said(flats.length, 'flat') + said(sharps.length, 'sharp'),
    )
    .replace(/(-?\d+)$/, ' $1');

const said = (times: number, word: string): string => (times === 0 ? '' : times === 2 ? ` double ${word}` : ` ${word}`);

/** Notes as they are said, octaves named once: `Eb4 Eb5` gives `E flat 4 and 5`. */
function spokenNotes(names: readonly string[]): string {
  const spoken = names.map((name, at) => {
    const before = names[at - 1];
    return before !== undefined && printedNote(before) === printedNote(name) ? (/-?\d+$/.exec(name)?.[0] ?? '') : spokenNote(name);
  });
  return list(spoken);
}

const { list } = SPOKEN;

/** A side by its name. */
const sideName = (side: Side): string => `${side}-side`;

/** A bar by its number, counted from 1. */
const barName = (number: number): string => `bar ${number}`;

/** A cell in words: `bar 3, 2-side, beat 2 and, clave stroke, right hand E flat 4 and 5`. */
function cellSentence(cell: CellFacts): string {
  const parts = [barName(cell.bar), sideName(cell.side), cell.count === '&' ? `beat ${cell.beat} and` : `beat ${cell.beat}`];
  if (cell.chord) parts.push(cell.chord.early ? `${printedChord(cell.chord.symbol)} taken early` : printedChord(cell.chord.symbol));
  if (cell.clave) parts.push('clave stroke');
  if (cell.hit) parts.push('band hit');
  const shared = cell.left.length > 0 && cell.left.join(' ') === cell.bass.join(' ');
  if (cell.right.length > 0) parts.push(`right hand ${spokenNotes(cell.right)}`);
  if (cell.left.length > 0) parts.push(`left hand ${shared ? 'and bass ' : ''}${spokenNotes(cell.left)}`);
  if (cell.bass.length > 0 && !shared) parts.push(`bass ${spokenNotes(cell.bass)}`);
  for (const { hand, names } of cell.later ?? []) parts.push(`a sixteenth later ${hand} hand ${spokenNotes(names)}`);
  for (const mark of cell.marks ?? []) parts.push(DEVICE_MARKS[mark]);
  if (cell.percussion.length > 0) parts.push(list(cell.percussion.map(spokenStroke)));
  return parts.join(', ');
}

/** A stroke of the percussion as it is said; a plain one by its instrument alone. */
const spokenStroke = ({ instrument, stroke }: CellFacts['percussion'][number]): string =>
  stroke === 'plain' ? instrumentName(instrument) : `${instrumentName(instrument)} ${stroke}`;

/** Everything that the grid shows and says. */
export const GRID_WORDS = {
  sideName,
  /** The half of a beat, in the count. */
  and: '&',
  barName,
  cell: cellSentence,
  instrumentName,
  spokenNote,
  spokenNotes,
  keys: 'Arrow keys go from step to step and bar to bar, Page Up and Page Down from card to card. Enter says why a stroke is played, Shift and Enter start at the bar.',
  firstTime: '1st time',
  fromSide: (side: Side) => `from the ${sideName(side)}`,
  byHand: 'changed by hand',
  noChord: 'N.C.',
  noChordMeans: 'clave and percussion go on',
  stop: 'stop',
  stopMeans: 'everyone is silent',
  hit: 'band hits',
  pickup: 'pickup',
  gridName: (bars: string) => `Sounding card, ${bars}`,
  startAt: (bar: number, side: Side) => `Start at bar ${bar}, ${sideName(side)}`,
  bars: (from: number, to: number) => (to - from === 1 ? `bar ${from + 1}` : `bars ${from + 1} to ${to}`),
  loneBar: (section: string) => `${section} ends here, in the middle of the clave. What follows begins on the other side.`,
  halfSide: 'A bar of half a side: from here on the clave lies across the bars.',
  restartShort: 'clave starts again',
  halfStepOut: 'a half step out',
  vamp: {
    holding: 'until the cue',
    leaving: 'leaving',
    'one more round': 'one more round',
  },
  vampSpoken: {
    holding: 'The vamp goes round until the cue.',
    leaving: 'Cue heard: leaving at the next cycle.',
    'one more round': 'One more round: the cue came after the bass had moved on.',
  },
} as const;
