import type { Colour, Level } from '../../vocabulary';
import type { BassFeel } from '../bass/patterns';
import { NEUTRAL_PATTERN, type Pattern, pattern, SAFE_PATTERN } from '../montuno/patterns';

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
  /** True where offbeat eighths are played late by habit; nobody is told of it then (common practice, no source). */
  readonly swings: boolean;
  /** Patterns of its own, by level; levels without one play the montuno patterns of that level. */
  readonly piano: Readonly<Partial<Record<Level, readonly Pattern[]>>>;
  /** Whether its piano takes chords early: always, as the player likes, or not by habit. */
  readonly anticipation: 'always' | 'optional' | 'seldom';
  readonly evidence: string;
}

const STABS = [pattern('off the beat', 'C2', 'C3'), NEUTRAL_PATTERN];
const ARPEGGIO = [pattern('arpeggio', 'G2', 'G3'), NEUTRAL_PATTERN];
const BROKEN = [pattern('broken eighths', 'E2', 'E3'), pattern('chord and broken notes', 'L2', 'L3')];
const ON_THE_BELL = [pattern('on the bell', 'U2', 'U3'), pattern('chords on the clave', 'T2', 'T3')];
const ALL_LEVELS: readonly Level[] = [1, 2, 3, 4, 5, 6];
const atAll = (patterns: readonly Pattern[]): StyleRow['piano'] => Object.fromEntries(ALL_LEVELS.map((level) => [level, patterns]));
/** Piano parts of styles that do not use the standard montuno at every level (common practice, no source; the guajira arpeggio is unverified). */
const PIANO = {
  'cha-cha-cha': { 1: STABS, 2: STABS, 3: [NEUTRAL_PATTERN] },
  guajira: atAll(ARPEGGIO),
  bolero: { ...atAll(BROKEN), 1: [...BROKEN].reverse() },
  'bolero-son': { 1: [...BROKEN].reverse(), 2: BROKEN, 3: BROKEN },
  danzon: { 1: STABS, 2: STABS },
  'latin jazz': { 1: [pattern('behind a soloist', 'A5', 'B6'), pattern('behind a soloist', 'A5', 'B7'), pattern('sparse', 'A6', 'B6')] },
  bembe: atAll(ON_THE_BELL),
} satisfies Readonly<Record<string, StyleRow['piano']>>;
const pianoOf = (name: string): StyleRow['piano'] => (name in PIANO ? PIANO[name as keyof typeof PIANO] : {});
const SELDOM = ['bolero', 'guajira', 'bolero-son'];
const OPTIONAL = ['cha-cha-cha', 'danzon', 'bembe'];
const anticipationOf = (name: string): StyleRow['anticipation'] =>
  SELDOM.includes(name) ? 'seldom' : OPTIONAL.includes(name) ? 'optional' : 'always';

const MEMORY = 'tempo from memory';
const onClave = (name: string, bass: BassFeel, colour: Colour, from: number, to: number, usual: number, evidence = MEMORY): StyleRow => ({
  name,
  bass,
  colour,
  tempo: { from, to, usual },
  onClave: true,
  swings: false,
  piano: pianoOf(name),
  anticipation: anticipationOf(name),
  evidence,
});
const outside = (name: string, from: number, to: number, usual: number): StyleRow => ({
  name,
  bass: 'half notes',
  colour: 'plain',
  tempo: { from, to, usual },
  onClave: false,
  swings: name === 'swing',
  piano: atAll([SAFE_PATTERN]),
  anticipation: 'seldom',
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
