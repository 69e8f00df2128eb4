import type { HarmonyBar } from '../harmony/timeline';
import { type PatternId, percussionPattern } from './patterns';

/** The role a section plays; null for a section that says none. */
export type KitRole = HarmonyBar['role'];

/** What a style sounds in sections of some roles. */
export interface KitRow {
  /** Styles by the name charts know them by. */
  readonly styles: readonly string[];
  readonly roles: readonly KitRole[];
  readonly patterns: readonly PatternId[];
  readonly evidence: string;
}

/** Song, or a section that says nothing: room for the voice. */
const SONG: readonly KitRole[] = [null, 'intro', 'verse'];
/** Chorus and riffs, and what follows them. */
const MONTUNO: readonly KitRole[] = ['coro', 'mambo', 'break', 'coda'];
const EVERY: readonly KitRole[] = [...SONG, ...MONTUNO, 'piano solo', 'percussion solo'];

const SALSA = ['salsa', 'guaracha', 'descarga', 'mambo'];
const SONGO = ['songo', 'timba'];
const SON = ['son', 'son montuno'];
const OUTSIDE = ['swing', 'bossa', 'merengue', 'cumbia', 'bachata', 'plena'];

const NO_SOURCE = 'common practice, no source';
const BELLS = 'published: Conte, Guide to Latin Percussion I (second drum on choruses); BMA primer glossary (bongo player takes the bell)';
const SHELLS = 'published: Conte, Guide to Latin Percussion I (one drum on verses); shells and martillo: common practice, no source';
const OTHER_ROLES = `intro and sections without a role as a verse, break and coda as a coro: ${NO_SOURCE}`;
const OWN_FIGURES = `${NO_SOURCE}: congas and drum set have figures of their own in this style that no source at hand prints`;

/** Who plays what when. A style and role stand in exactly one row. */
export const KITS: readonly KitRow[] = [
  {
    styles: SALSA,
    roles: SONG,
    patterns: ['cascara', 'timbales low drum', 'martillo', 'conga one drum'],
    evidence: `${SHELLS}; ${OTHER_ROLES}`,
  },
  {
    styles: SALSA,
    roles: MONTUNO,
    patterns: ['mambo bell', 'timbales low drum', 'abanico', 'bongo bell', 'conga two drums'],
    evidence: `${BELLS}; ${OTHER_ROLES}`,
  },
  {
    styles: SALSA,
    roles: ['piano solo'],
    patterns: ['cascara', 'timbales low drum', 'martillo', 'conga clave-aligned'],
    evidence: `${NO_SOURCE}: shells and martillo are commoner than bells; the conga with the clave shows the side`,
  },
  {
    styles: SALSA,
    roles: ['percussion solo'],
    patterns: ['bongo bell', 'conga two drums'],
    evidence: `${NO_SOURCE}: bell and congas keep the time and leave the timbales to the soloist`,
  },
  { styles: SONGO, roles: SONG, patterns: ['cascara', 'timbales low drum', 'conga clave-aligned'], evidence: OWN_FIGURES },
  {
    styles: SONGO,
    roles: MONTUNO,
    patterns: ['mambo bell', 'timbales low drum', 'abanico', 'bongo bell', 'conga two drums'],
    evidence: OWN_FIGURES,
  },
  { styles: SONGO, roles: ['piano solo'], patterns: ['cascara', 'timbales low drum', 'conga two drums'], evidence: OWN_FIGURES },
  { styles: SONGO, roles: ['percussion solo'], patterns: ['bongo bell', 'conga two drums'], evidence: OWN_FIGURES },
  {
    styles: ['latin jazz'],
    roles: SONG,
    patterns: ['cascara', 'timbales low drum', 'conga one drum'],
    evidence: `${NO_SOURCE}: the small band has no bongo`,
  },
  {
    styles: ['latin jazz'],
    roles: MONTUNO,
    patterns: ['mambo bell', 'timbales low drum', 'abanico', 'conga two drums'],
    evidence: `${NO_SOURCE}: the small band has no bongo`,
  },
  {
    styles: ['latin jazz'],
    roles: ['piano solo'],
    patterns: ['cascara', 'timbales low drum', 'conga two drums'],
    evidence: `${NO_SOURCE}: the rhythm section fills in behind a solo`,
  },
  {
    styles: ['latin jazz'],
    roles: ['percussion solo'],
    patterns: ['mambo bell', 'conga two drums'],
    evidence: `${NO_SOURCE}: bell and congas keep the time`,
  },
  {
    styles: SON,
    roles: [...SONG, 'piano solo'],
    patterns: ['maracas', 'martillo', 'conga one drum'],
    evidence: NO_SOURCE,
  },
  {
    styles: SON,
    roles: [...MONTUNO, 'percussion solo'],
    patterns: ['maracas', 'bongo bell', 'conga one drum'],
    evidence: `bell: published, BMA primer glossary; the rest ${NO_SOURCE}`,
  },
  {
    styles: ['cha-cha-cha', 'danzon'],
    roles: [...SONG, 'piano solo', 'percussion solo'],
    patterns: ['cha-cha bell', 'cha-cha left hand', 'guiro', 'conga one drum'],
    evidence: `bell and left hand: published, timbales pattern sheet; güiro and conga: ${NO_SOURCE}; the danzón's own timbales figure is in no source at hand`,
  },
  {
    styles: ['cha-cha-cha', 'danzon'],
    roles: MONTUNO,
    patterns: ['cha-cha bell', 'cha-cha left hand', 'abanico', 'guiro', 'conga one drum'],
    evidence: `bell, left hand and abanico: published, timbales pattern sheet; güiro and conga: ${NO_SOURCE}`,
  },
  { styles: ['bolero'], roles: EVERY, patterns: ['maracas', 'martillo', 'conga soft'], evidence: NO_SOURCE },
  {
    styles: ['bolero-son'],
    roles: [...SONG, 'piano solo'],
    patterns: ['maracas', 'martillo', 'conga soft'],
    evidence: `${NO_SOURCE}: a bolero until the son part`,
  },
  {
    styles: ['bolero-son'],
    roles: [...MONTUNO, 'percussion solo'],
    patterns: ['maracas', 'bongo bell', 'conga one drum'],
    evidence: `${NO_SOURCE}: the son part as in son`,
  },
  { styles: ['guajira'], roles: EVERY, patterns: ['maracas', 'martillo', 'conga one drum'], evidence: NO_SOURCE },
  {
    styles: ['rumba'],
    roles: EVERY,
    patterns: ['cascara', 'conga two drums'],
    evidence: `${NO_SOURCE}: sticks on wood as cáscara; the drums of rumba have figures of their own that no source at hand prints`,
  },
  { styles: ['bembe'], roles: EVERY, patterns: ['6/8 bell', '6/8 low drum'], evidence: 'published: timbales pattern sheet' },
  { styles: OUTSIDE, roles: EVERY, patterns: ['maracas on the beats'], evidence: `${NO_SOURCE}: one safe accompaniment` },
];

const STAND_IN = { 16: 'salsa', 12: 'bembe' } as const;

/**
 * The patterns that sound in a section of a style and role, in a cycle of 16 (4/4) or 12 (6/8) steps. A style the table does not know
 * sounds as salsa, and one of the other meter as salsa or bembé.
 */
export function kitOf(style: string, role: KitRole, cycle: 16 | 12): readonly PatternId[] {
  const rowFor = (name: string) =>
    KITS.find(({ styles, roles, patterns }) => styles.includes(name) && roles.includes(role) && inCycle(patterns, cycle).length > 0);
  return inCycle((rowFor(style) ?? rowFor(STAND_IN[cycle]))?.patterns ?? [], cycle);
}

/** The patterns of a list that have this many steps in their cycle. */
export const inCycle = (patterns: readonly PatternId[], cycle: 16 | 12): readonly PatternId[] =>
  patterns.filter((id) => percussionPattern(id).cycle === cycle);
