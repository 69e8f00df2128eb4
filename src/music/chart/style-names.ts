import type { Meter } from '../../vocabulary';

/** A style a chart can name: the name it is known by afterwards, other spellings, whether it is built on this clave, and its meter. */
interface StyleName {
  readonly name: string;
  readonly spellings: readonly string[];
  readonly onClave: boolean;
  readonly meter: Meter;
}

const inFour = (name: string, ...spellings: string[]): StyleName => ({ name, spellings, onClave: true, meter: '4/4' });
const outside = (name: string, ...spellings: string[]): StyleName => ({ name, spellings, onClave: false, meter: '4/4' });

/** Style names charts use (common practice, no source). Names are lower-case ASCII; spellings are compared without case or accents. */
export const STYLE_NAMES: readonly StyleName[] = [
  inFour('salsa', 'salsa dura', 'salsa romantica'),
  inFour('son'),
  inFour('son montuno', 'montuno'),
  inFour('guaracha', 'fast guaracha'),
  inFour('descarga'),
  inFour('mambo'),
  inFour('cha-cha-cha', 'cha cha cha', 'chachacha', 'cha-cha', 'cha cha', 'chacha', 'cha'),
  inFour('bolero'),
  inFour('bolero-son', 'bolero son'),
  inFour('guajira'),
  inFour('danzon'),
  inFour('songo'),
  inFour('timba'),
  inFour('rumba', 'guaguanco'),
  inFour('latin jazz', 'latin-jazz', 'latin', 'afro-cuban', 'afro cuban'),
  { name: 'bembe', spellings: ['6/8', 'afro', 'afro 6/8'], onClave: true, meter: '6/8' },
  outside('swing', 'jazz', 'jazz swing'),
  outside('bossa', 'bossa nova', 'bossa-nova'),
  outside('merengue'),
  outside('cumbia'),
  outside('bachata'),
  outside('plena'),
];

const plainLetters = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .toLowerCase()
    .replace(/\s+/g, ' ')
    .trim();

const BY_SPELLING: ReadonlyMap<string, StyleName> = new Map(
  STYLE_NAMES.flatMap((style) => [style.name, ...style.spellings].map((spelling): [string, StyleName] => [spelling, style])),
);

/** The style a person named, or null: `styleNamed('Cha-Cha-Chá')?.name` is `'cha-cha-cha'`. */
export const styleNamed = (text: string): StyleName | null => BY_SPELLING.get(plainLetters(text)) ?? null;
