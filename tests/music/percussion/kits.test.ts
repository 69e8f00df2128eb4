import { describe, expect, it } from 'vitest';
import { SECTION_ROLES } from '../../../src/music/chart/chart';
import { STYLE_NAMES } from '../../../src/music/chart/style-names';
import { KITS, kitOf } from '../../../src/music/percussion/kits';
import {
  PATTERN_IDS,
  PERCUSSION_INSTRUMENTS,
  PERCUSSION_PATTERNS,
  percussionGrid,
  percussionPattern,
} from '../../../src/music/percussion/patterns';

const ROLES = [null, ...SECTION_ROLES];

describe('the pattern table', () => {
  it('has each id once, and every id has a row', () => {
    expect(new Set(PATTERN_IDS).size).toBe(PATTERN_IDS.length);
    expect(PERCUSSION_PATTERNS.map(({ id }) => id)).toEqual([...PATTERN_IDS]);
    expect(new Set(PERCUSSION_PATTERNS.map(({ name }) => name)).size).toBe(PATTERN_IDS.length);
  });

  it.each(PERCUSSION_PATTERNS)('$id: two sides that fill its cycle, every letter named and used, neutral as its sides say', (pattern) => {
    const [three = '', two = '', ...rest] = pattern.grid.split(' ');
    expect(rest).toEqual([]);
    expect([three.length, two.length]).toEqual([pattern.cycle / 2, pattern.cycle / 2]);
    const letters = new Set(`${three}${two}`.replaceAll('.', ''));
    expect(letters.size).toBeGreaterThan(0);
    for (const letter of letters) expect(pattern.strokes[letter], `letter ${letter}`).toMatch(/^[a-z ]+$/);
    expect(pattern.neutral).toBe(percussionGrid(pattern, '2-3') === percussionGrid(pattern, '3-2'));
    expect(PERCUSSION_INSTRUMENTS).toContain(pattern.instrument);
    expect(pattern.evidence).toMatch(/^(published|common practice|from memory)/);
  });

  it('says of four-four patterns which go with either direction (trade usage)', () => {
    const sided = PERCUSSION_PATTERNS.filter(({ neutral }) => !neutral).map(({ id }) => id);
    expect(sided).toEqual(['cascara', 'mambo bell', '6/8 bell', 'abanico', 'conga clave-aligned', 'conga two drums']);
  });

  it('throws on an id that has no row', () => {
    expect(() => percussionPattern('tambora' as never)).toThrow('tambora');
  });
});

describe('the kits', () => {
  it('reach every pattern', () => {
    expect([...new Set(KITS.flatMap(({ patterns }) => patterns))].sort()).toEqual([...PATTERN_IDS].sort());
  });

  it('have exactly one row for every style a chart can name and every role', () => {
    for (const { name } of STYLE_NAMES)
      for (const role of ROLES)
        expect(KITS.filter(({ styles, roles }) => styles.includes(name) && roles.includes(role)).length, `${name}, ${role}`).toBe(1);
    const named = new Set(STYLE_NAMES.map(({ name }) => name));
    expect(KITS.flatMap(({ styles }) => styles).filter((style) => !named.has(style))).toEqual([]);
  });

  it('give an instrument one groove, and a player two hands', () => {
    for (const { patterns, styles } of KITS) {
      const grooves = patterns.map(percussionPattern).filter(({ fill }) => fill === null);
      expect(new Set(grooves.map(({ instrument }) => instrument)).size, styles.join()).toBe(grooves.length);
      for (const player of new Set(grooves.map((pattern) => pattern.player)))
        expect(grooves.filter((pattern) => pattern.player === player).length, `${styles}: ${player}`).toBeLessThanOrEqual(2);
    }
  });

  it('are of one meter each, and say where they come from', () => {
    for (const { patterns, evidence } of KITS) {
      expect(new Set(patterns.map((id) => percussionPattern(id).cycle)).size).toBe(1);
      expect(evidence).toMatch(/published|common practice, no source/);
    }
  });

  // Conte, Guide to Latin Percussion I (one drum on verses, second drum on choruses); BMA primer glossary (bongo player takes the bell).
  it.each([
    ['verse', ['cascara', 'timbales low drum', 'martillo', 'conga one drum']],
    ['coro', ['mambo bell', 'timbales low drum', 'abanico', 'bongo bell', 'conga two drums']],
    ['mambo', ['mambo bell', 'timbales low drum', 'abanico', 'bongo bell', 'conga two drums']],
  ] as const)('salsa: a %s has %j', (role, patterns) => {
    expect(kitOf('salsa', role, 16)).toEqual(patterns);
  });

  it('play shells and martillo, no bells, behind a piano solo in salsa (common practice, no source)', () => {
    const kit = kitOf('salsa', 'piano solo', 16);
    expect(kit).toEqual(expect.arrayContaining(['cascara', 'martillo']));
    expect(kit.filter((id) => id.includes('bell'))).toEqual([]);
  });

  it('sound nothing with a side in rhythms outside the clave', () => {
    for (const { name } of STYLE_NAMES.filter(({ onClave }) => !onClave))
      for (const role of ROLES) for (const id of kitOf(name, role, 16)) expect(percussionPattern(id).neutral, `${name} ${id}`).toBe(true);
  });

  it('fall back to salsa or bembé for a style unheard of or of the other meter', () => {
    expect(kitOf('unheard of', 'coro', 16)).toEqual(kitOf('salsa', 'coro', 16));
    expect(kitOf('bembe', 'coro', 16)).toEqual(kitOf('salsa', 'coro', 16));
    expect(kitOf('salsa', 'verse', 12)).toEqual(['6/8 bell', '6/8 low drum']);
  });
});
