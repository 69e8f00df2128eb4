import type { Degree, Side } from '../vocabulary';

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
  readonly percussion: readonly string[];
}

/** A note name as it is printed: `C#4` gives `C♯`, `Bb` gives `B♭`. */
export const noteLetter = (name: string): string =>
  name
    .replace(/-?\d+$/, '')
    .replaceAll('#', '♯')
    .replaceAll('b', '♭');

/** A chord symbol as it is printed: `B7b9` gives `B7♭9`, `Ebm7/Bb` gives `E♭m7/B♭`. */
export const chordText = (symbol: string): string =>
  symbol.replace(/(^|\/)([A-G])(b+|#+)/g, (_, slash, letter, sign) => slash + letter + musical(sign)).replace(/[b#](?=\d)/g, musical);

const musical = (signs: string): string => signs.replaceAll('b', '♭').replaceAll('#', '♯');

/** A note name as it is said: `Eb4` gives `E flat 4`. */
export const spokenNote = (name: string): string =>
  name
    .replace(/^([A-G])(b*)(#*)/, (_, letter, flats, sharps) => letter + said(flats.length, 'flat') + said(sharps.length, 'sharp'))
    .replace(/(-?\d+)$/, ' $1');

const said = (times: number, word: string): string => (times === 0 ? '' : times === 2 ? ` double ${word}` : ` ${word}`);

/** Notes as they are said, octaves named once: `Eb4 Eb5` gives `E flat 4 and 5`. */
export function spokenNotes(names: readonly string[]): string {
  const spoken = names.map((name, at) => {
    const before = names[at - 1];
    return before !== undefined && noteLetter(before) === noteLetter(name) ? (/-?\d+$/.exec(name)?.[0] ?? '') : spokenNote(name);
  });
  return list(spoken);
}

/** Words joined as in speech: `a`, `a and b`, `a, b and c`. */
export const list = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

/** A side by its name. */
export const sideName = (side: Side): string => `${side}-side`;

/** A bar by its number, counted from 1. */
export const barName = (number: number): string => `bar ${number}`;

/** A cell in words: `bar 3, 2-side, beat 2 and, clave stroke, right hand E flat 4 and 5`. */
export function cellSentence(cell: CellFacts): string {
  const parts = [barName(cell.bar), sideName(cell.side), cell.count === '&' ? `beat ${cell.beat} and` : `beat ${cell.beat}`];
  if (cell.chord) parts.push(cell.chord.early ? `${chordText(cell.chord.symbol)} taken early` : chordText(cell.chord.symbol));
  if (cell.clave) parts.push('clave stroke');
  if (cell.hit) parts.push('band hit');
  if (cell.right.length > 0) parts.push(`right hand ${spokenNotes(cell.right)}`);
  if (cell.left.length > 0) parts.push(`left hand ${spokenNotes(cell.left)}`);
  if (cell.bass.length > 0) parts.push(`bass ${spokenNotes(cell.bass)}`);
  if (cell.percussion.length > 0) parts.push(list(cell.percussion));
  return parts.join(', ');
}

const DEGREE_WORDS: Readonly<Record<Degree, string>> = {
  '1': 'root',
  b2: 'second',
  '2': 'second',
  b3: 'third',
  '3': 'third',
  '4': 'fourth',
  '#4': 'raised fourth',
  b5: 'fifth',
  '5': 'fifth',
  '#5': 'fifth',
  b6: 'sixth',
  '6': 'sixth',
  b7: 'seventh',
  '7': 'seventh',
  b9: 'flat ninth',
  '9': 'ninth',
  '#9': 'sharp ninth',
  '11': 'eleventh',
  '#11': 'sharp eleventh',
  b13: 'flat thirteenth',
  '13': 'thirteenth',
  bb7: 'seventh',
};

/** A degree in short, as the hand strip names it: `third`, `flat ninth`. */
export const degreeWord = (degree: Degree): string => DEGREE_WORDS[degree];

/** The hand's shape: `C♯ octave, third of A7`, `G and B`. `degree` and `chord` belong to the octave note. */
export function shapeWords(names: readonly string[], degree: Degree | null, chord: string): string {
  const letters = names.map(noteLetter);
  const outer = letters.length > 1 && letters[0] === letters.at(-1);
  const inside = outer ? letters.slice(1, -1) : letters;
  if (!outer) return letters.length === 1 && degree ? `${letters[0]}, ${degreeWord(degree)} of ${chordText(chord)}` : list(letters);
  const octave = `${letters[0]} octave${inside.length > 0 ? ` with ${list(inside)}` : ''}`;
  return degree ? `${octave}, ${degreeWord(degree)} of ${chordText(chord)}` : octave;
}

/** A note that comes from another: its name and how far it moved, in semitones. */
export interface NamedMove {
  readonly name: string;
  readonly semitones: number;
}

/** How a shape lies to the one before it: `both stay`, `G stays, B♭ a half step down`, `both a whole step up`; empty for neither. An octave counts as one note. */
export function motionWords(stays: readonly string[], moves: readonly NamedMove[]): string {
  const notes = stays.length + moves.length;
  const all = notes === 2 ? 'both ' : notes > 2 ? 'all ' : '';
  const first = moves[0]?.semitones;
  if (notes > 0 && moves.length === 0) return `${all}${notes === 1 ? 'stays' : 'stay'}`;
  if (first !== undefined && stays.length === 0 && moves.every((move) => move.semitones === first)) return `${all}${stepWords(first)}`;
  const held = stays.length === 0 ? [] : [`${list(stays.map(noteLetter))} ${stays.length === 1 ? 'stays' : 'stay'}`];
  return [...held, ...moves.map((move) => `${noteLetter(move.name)} ${stepWords(move.semitones)}`)].join(', ');
}

function stepWords(semitones: number): string {
  const size = Math.abs(semitones);
  const width = size === 1 ? 'a half step' : size === 2 ? 'a whole step' : `${size} half steps`;
  return `${width} ${semitones > 0 ? 'up' : 'down'}`;
}

/** The rest of the words that the grid shows. */
export const GRID_WORDS = {
  now: 'now',
  next: 'next',
  stays: 'stays',
  right: 'right hand',
  left: 'left hand',
  leftShort: 'left',
  keys: 'Arrow keys go from step to step and bar to bar, Page Up and Page Down from card to card. Enter says why a stroke is played, Shift and Enter start at the bar.',
  countIn: 'count-in',
  bass: 'bass',
  silent: 'silent',
  firstTime: '1st time only',
  noChord: 'N.C.',
  noChordMeans: 'clave and percussion go on',
  stop: 'stop',
  stopMeans: 'everyone is silent',
  hit: 'band hits',
  pickup: 'pickup',
  gridName: (bars: string) => `Sounding card, ${bars}`,
  nextName: (bars: string) => `Next card, ${bars}`,
  mapName: 'The form',
  startAt: (bar: number, side: Side) => `Start at bar ${bar}, ${sideName(side)}`,
  card: (bars: string, chords: string) => `${bars}: ${chords}`,
  bars: (from: number, to: number) => (to - from === 1 ? `bar ${from + 1}` : `bars ${from + 1} to ${to}`),
  count: (bars: number) => (bars === 1 ? '1 bar' : `${bars} bars`),
  fromSide: (side: Side) => `from the ${sideName(side)}`,
  beginsOn: (section: string, side: Side) => `${section} begins on the ${sideName(side)}`,
  loneBar: (section: string) => `${section} ends here, on half a cycle`,
  halfSide: 'half a side: from here the clave lies half a bar later',
  restart: 'the clave starts again here',
  loopFrom: 'Loop starts at',
  loopTo: 'Loop ends after',
  previous: 'Previous card',
  following: 'Next card',
  close: 'Close',
  why: 'Why this stroke',
  atOnce: 'the last bar leads back to the first',
} as const;
