import type { Colour } from '../../vocabulary';
import type { BassFeel } from '../bass/patterns';

/** How a style is accompanied. Adding a style is adding a row. */
export interface StyleRow {
  readonly name: string;
  readonly bass: BassFeel;
  /** Colour when the player has not chosen one. */
  readonly colour: Colour;
  /** Usual tempo, in half notes a minute, and where one starts. */
  readonly tempo: { readonly from: number; readonly to: number; readonly usual: number };
  /** False for rhythms that are not built on this clave: they get a notice and one safe accompaniment. */
  readonly onClave: boolean;
  readonly evidence: string;
}

const MEMORY = 'tempo from memory';
const onClave = (name: string, bass: BassFeel, colour: Colour, from: number, to: number, usual: number, evidence = MEMORY): StyleRow => ({
  name,
  bass,
  colour,
  tempo: { from, to, usual },
  onClave: true,
  evidence,
});
const outside = (name: string, from: number, to: number, usual: number): StyleRow => ({
  name,
  bass: 'half notes',
  colour: 'plain',
  tempo: { from, to, usual },
  onClave: false,
  evidence: MEMORY,
});

/** Styles that a chart can name. Tempi: two dance sites for salsa, salsa-merengue.co.uk glossary for bolero and cha-cha-chá, otherwise memory. */
export const STYLES: readonly StyleRow[] = [
  onClave('salsa', 'anticipated', 'plain', 80, 110, 92, 'tempo: two dance sites, not scholarly'),
  onClave('son', 'anticipated', 'plain', 60, 95, 78),
  onClave('son montuno', 'anticipated', 'plain', 70, 95, 80),
  onClave('guaracha', 'anticipated', 'plain', 90, 130, 104),
  onClave('descarga', 'anticipated', 'plain', 90, 130, 104),
  onClave('mambo', 'anticipated', 'plain', 80, 120, 96),
  onClave('cha-cha-cha', 'on the beat', 'plain', 50, 70, 60, 'tempo: salsa-merengue.co.uk glossary'),
  onClave('bolero', 'on the beat', 'plain', 40, 55, 48, 'tempo: salsa-merengue.co.uk glossary'),
  onClave('bolero-son', 'on the beat', 'plain', 40, 60, 50),
  onClave('guajira', 'on the beat', 'plain', 45, 65, 54),
  onClave('danzon', 'on the beat', 'plain', 45, 70, 56),
  onClave('songo', 'anticipated', 'plain', 85, 110, 94),
  onClave('timba', 'anticipated', 'plain', 85, 110, 96),
  onClave('rumba', 'anticipated', 'plain', 80, 130, 100),
  onClave('latin jazz', 'anticipated', 'jazz', 70, 130, 96),
  onClave('bembe', 'half notes', 'plain', 60, 110, 80),
  outside('swing', 60, 140, 80),
  outside('bossa', 50, 90, 66),
  outside('merengue', 110, 140, 130),
  outside('cumbia', 40, 60, 48),
  outside('bachata', 55, 75, 64),
  outside('plena', 80, 120, 96),
];

const BY_NAME = new Map(STYLES.map((row) => [row.name, row]));

/** The style of a name as charts know it; salsa for a name that has no row. */
export function styleOf(name: string): StyleRow {
  const row = BY_NAME.get(name) ?? BY_NAME.get('salsa');
  if (!row) throw new Error('the style table has no salsa');
  return row;
}
