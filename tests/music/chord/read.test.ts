import { describe, expect, test } from 'vitest';
import type { Chord } from '../../../src/music/chord/chord';
import { isNoChord, readChord } from '../../../src/music/chord/read';
import { pcOf } from '../../../src/music/pitch/spell';
import { PUBLISHED_SYMBOLS } from './published-symbols';

const chordOf = (symbol: string): Chord => {
  const reading = readChord(symbol);
  if (!reading.ok) throw new Error(`${symbol}: ${JSON.stringify(reading.faults)}`);
  return reading.value;
};
const names = (chord: Chord): string => chord.tones.map((tone) => tone.name).join(' ');
const degrees = (symbol: string): string => chordOf(symbol).tones.map((tone) => tone.degree).join(' ');
const nearest = (symbol: string): string | null | undefined => {
  const reading = readChord(symbol);
  return reading.ok ? undefined : (reading.faults[0]?.nearest ?? null);
};

/**
 * `C4` is printed for sus4 in one published list and is a note name everywhere else, so it is a fault that offers `Csus4`;
 * the published tones are those of the correction.
 */
const ASKED_BACK: Readonly<Record<string, string>> = { C4: 'Csus4' };

describe('E11: published chord symbols', () => {
  test.each(PUBLISHED_SYMBOLS.map((row) => [row.symbol, row] as const))('%s has the required tones and none beyond those allowed', (symbol, row) => {
    const correction = ASKED_BACK[symbol];
    if (correction !== undefined) expect(nearest(symbol)).toBe(correction);
    const chord = chordOf(correction ?? symbol);
    const found = names(chord).split(' ');
    const required = row.tones.split(' ');
    const allowed = [...required, ...(row.optional?.split(' ') ?? []), ...(row.bass ? [row.bass] : [])];
    expect(found).toEqual(expect.arrayContaining(required));
    expect(allowed).toEqual(expect.arrayContaining(found));
    expect(chord.tones.map((tone) => tone.degree)).toEqual(expect.arrayContaining(row.degrees.split(' ')));
    expect([...new Set(chord.tones.map((tone) => tone.pc))]).toEqual(expect.arrayContaining([...row.pcs]));
    expect(chord.bass).toBe(row.bass ?? null);
    expect(chord.bassPc).toBe(pcOf(row.bass ?? chord.root));
    expect(chord.symbol).toBe(correction ?? symbol);
  });

  test('the table covers more than 120 symbols, each once', () => {
    expect(PUBLISHED_SYMBOLS.length).toBeGreaterThan(120);
    expect(new Set(PUBLISHED_SYMBOLS.map((row) => row.symbol)).size).toBe(PUBLISHED_SYMBOLS.length);
  });

  test.each(['N.C.', 'NC', 'N.C'])('%s is no chord', (symbol) => {
    expect(isNoChord(symbol)).toBe(true);
    expect(readChord(symbol)).toMatchObject({ ok: false, faults: [{ code: 'no chord' }] });
  });

  // Robustness rows; common practice.
  test.each([
    ['H7', 'unknown root', 'B7'], ['BB7', 'unknown suffix', 'Bb7'], ['C/H', 'unknown bass', 'C/B'], ['C/', 'missing bass', 'C'], ['%', 'repeat sign', null], ['', 'empty', null],
  ])('"%s" is a fault: %s', (symbol, code, correction) => {
    expect(readChord(symbol)).toMatchObject({ ok: false, faults: [{ code, nearest: correction }] });
  });
});
