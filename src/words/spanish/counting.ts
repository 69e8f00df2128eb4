import type { Degree } from '../../vocabulary';
import type { Said } from '../language';
import { noteLetter, printedNote, type SPOKEN } from '../spoken';

/** Words joined as in speech: `a`, `a y b`, `a, b y c`; `e` before an i. */
export const juntas = (words: readonly string[]): string => {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} ${/^h?i(?![aeou])/i.test(last) ? 'e' : 'y'} ${last}`;
};

const GRADOS: Readonly<Record<Degree, string>> = {
  '1': 'fundamental',
  b2: 'segunda bemol',
  '2': 'segunda',
  b3: 'tercera',
  '3': 'tercera',
  '4': 'cuarta',
  '#4': 'cuarta sostenida',
  b5: 'quinta bemol',
  '5': 'quinta',
  '#5': 'quinta sostenida',
  b6: 'sexta bemol',
  '6': 'sexta',
  b7: 'séptima',
  '7': 'séptima',
  b9: 'novena bemol',
  '9': 'novena',
  '#9': 'novena sostenida',
  '11': 'oncena',
  '#11': 'oncena sostenida',
  b13: 'trecena bemol',
  '13': 'trecena',
  bb7: 'séptima',
};

/** Pieces of sentences in Spanish. The count is said as players do: 1 y 2 y 3 y 4 y. */
export const PIEZAS: Said<typeof SPOKEN> = {
  list: juntas,
  degrees: GRADOS,
  count: (step, sixEight) => {
    if (sixEight) return `el ${step + 1}`;
    const beat = Math.floor(step / 2) + 1;
    return step % 2 === 0 ? `el ${beat}` : `el «y» del ${beat}`;
  },
};

const signo = (times: number, word: string): string => (times === 0 ? '' : times === 2 ? ` doble ${word}` : ` ${word}`);

/** A note name as it is said: `Eb4` gives `E bemol 4`, or `Mi bemol 4`. */
export const notaDicha = (name: string): string =>
  name
    .replace(
      /^([A-G])(b*)(#*)/,
      (_, letter: string, flats: string, sharps: string) =>
        noteLetter(letter) + signo(flats.length, 'bemol') + signo(sharps.length, 'sostenido'),
    )
    .replace(/(-?\d+)$/, ' $1');

/** Notes as they are said, octaves named once: `Eb4 Eb5` gives `E bemol 4 y 5`. */
export const notasDichas = (names: readonly string[]): string =>
  juntas(
    names.map((name, at) => {
      const before = names[at - 1];
      return before !== undefined && printedNote(before) === printedNote(name) ? (/-?\d+$/.exec(name)?.[0] ?? '') : notaDicha(name);
    }),
  );

/** So many bars: `1 compás`, `4 compases`. */
export const compases = (count: number): string => (count === 1 ? '1 compás' : `${count} compases`);
/** A bar by its number, counted from 1. */
export const compas = (number: number): string => `compás ${number}`;
/** A side by its name. */
export const lado = (side: number): string => `lado de ${side}`;
/** The first letter in capitals. */
export const mayuscula = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
