import type { Degree } from '../vocabulary';

/** How notes are named: by letters, or as they are sung. */
export const NOTE_NAMINGS = ['letters', 'do re mi'] as const;
export type NoteNaming = (typeof NOTE_NAMINGS)[number];

const SUNG: Readonly<Record<string, string>> = { C: 'Do', D: 'Re', E: 'Mi', F: 'Fa', G: 'Sol', A: 'La', B: 'Si' };
let naming: NoteNaming = 'letters';

/** Names notes in this way from now on. Chord symbols keep their letters. */
export const nameNotes = (by: NoteNaming): void => {
  naming = by;
};

/** How notes are named now. */
export const namingInForce = (): NoteNaming => naming;

/** The letter of a note, or its syllable where notes are sung. */
export const noteLetter = (letter: string): string => (naming === 'letters' ? letter : (SUNG[letter] ?? letter));

const printedSigns = (text: string): string => text.replaceAll('#', '♯').replaceAll('b', '♭');

/** A note name as it is printed: `C#4` gives `C♯`, `Bb` gives `B♭` (or `Do♯`, `Si♭`). */
export const printedNote = (name: string): string => {
  const note = name.replace(/-?\d+$/, '');
  return noteLetter(note.slice(0, 1)) + printedSigns(note.slice(1));
};

/** A chord symbol as it is printed: `B7b9` gives `B7♭9`, `Ebm7/Bb` gives `E♭m7/B♭`. */
export const printedChord = (symbol: string): string =>
  symbol
    .replace(/(^|\/)([A-G])(b+|#+)/g, (_, slash: string, letter: string, signs: string) => slash + letter + printedSigns(signs))
    .replace(/[b#](?=\d)/g, printedSigns);

/** A key as it is printed: `Bb` gives `B♭`, `F#m` gives `F♯m`. */
export const printedKey = (key: { readonly tonic: string; readonly mode: 'major' | 'minor' }): string =>
  printedNote(key.tonic) + (key.mode === 'minor' ? 'm' : '');

const DEGREES: Readonly<Record<Degree, string>> = {
  '1': 'root',
  b2: 'flat second',
  '2': 'second',
  b3: 'third',
  '3': 'third',
  '4': 'fourth',
  '#4': 'sharp fourth',
  b5: 'flat fifth',
  '5': 'fifth',
  '#5': 'sharp fifth',
  b6: 'flat sixth',
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

/** Pieces of sentences that other tables build on. */
export const SPOKEN = {
  /** Words joined as in speech: `a`, `a and b`, `a, b and c`. */
  list: (words: readonly string[]): string => (words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`),
  /** Degrees in words, as they stand after "the": `third`, `flat ninth`. */
  degrees: DEGREES,
  /** A step of a bar as it is counted: in 4/4 `1`, `the & of 1`, `2` …; in 6/8 the six eighths `1` to `6`. Steps count from 0. */
  count: (step: number, sixEight: boolean): string => {
    if (sixEight) return String(step + 1);
    const beat = Math.floor(step / 2) + 1;
    return step % 2 === 0 ? String(beat) : `the & of ${beat}`;
  },
} as const;
