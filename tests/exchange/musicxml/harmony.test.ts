import { describe, expect, it } from 'vitest';
import { KINDS, kindOf, pcsOfKind } from '../../../src/exchange/musicxml/chord-kinds';
import { readHarmony } from '../../../src/exchange/musicxml/read-harmony';
import { readXml } from '../../../src/exchange/musicxml/read-xml';
import { harmonyElement } from '../../../src/exchange/musicxml/write-harmony';
import { printXml } from '../../../src/exchange/musicxml/xml';
import { describeChord } from '../../../src/music/chord/members';
import { readChord } from '../../../src/music/chord/read';
import { PUBLISHED_SYMBOLS } from '../../music/chord/published-symbols';

const chordOf = (symbol: string) => {
  const read = readChord(symbol);
  if (!read.ok) throw new Error(symbol);
  return read.value;
};

/** Kind-value enumeration of MusicXML 4.0 (W3C, 2021), musicxml.xsd, in its order. */
const ALL_KINDS =
  'major minor augmented diminished dominant major-seventh minor-seventh diminished-seventh augmented-seventh half-diminished major-minor major-sixth minor-sixth dominant-ninth major-ninth minor-ninth dominant-11th major-11th minor-11th dominant-13th major-13th minor-13th suspended-second suspended-fourth Neapolitan Italian French German pedal power Tristan other none'.split(
    ' ',
  );

/** Pitch classes above the root of kinds, from the documentation of kind-value in musicxml.xsd. */
const KIND_PCS: readonly (readonly [string, readonly number[]])[] = [
  ['augmented', [0, 4, 8]],
  ['dominant', [0, 4, 7, 10]],
  ['minor-seventh', [0, 3, 7, 10]],
  ['diminished-seventh', [0, 3, 6, 9]],
  ['augmented-seventh', [0, 4, 8, 10]],
  ['half-diminished', [0, 3, 6, 10]],
  ['major-minor', [0, 3, 7, 11]],
  ['major-sixth', [0, 4, 7, 9]],
  ['minor-sixth', [0, 3, 7, 9]],
  ['major-ninth', [0, 2, 4, 7, 11]],
  ['minor-ninth', [0, 2, 3, 7, 10]],
  ['minor-11th', [0, 2, 3, 5, 7, 10]],
  ['suspended-fourth', [0, 5, 7]],
];

/** One valid encoding of each quality: kinds quoted from the standard's documentation; with degrees, common usage checked by expanding it. */
const QUALITIES: readonly (readonly [string, string, string])[] = [
  ['', 'major', ''],
  ['m', 'minor', ''],
  ['dim', 'diminished', ''],
  ['sus4', 'suspended-fourth', ''],
  ['sus2', 'suspended-second', ''],
  ['5', 'power', ''],
  ['7', 'dominant', ''],
  ['m7', 'minor-seventh', ''],
  ['mMaj7', 'major-minor', ''],
  ['m7b5', 'half-diminished', ''],
  ['dim7', 'diminished-seventh', ''],
  ['aug7', 'augmented-seventh', ''],
  ['6', 'major-sixth', ''],
  ['69', 'major-sixth', '9 0 add'],
  ['add9', 'major', '9 0 add'],
  ['7sus4', 'suspended-fourth', '7 0 add'],
  ['m9b5', 'half-diminished', '9 0 add'],
  ['m7#5', 'minor-seventh', '5 1 alter'],
  ['madd9', 'minor', '9 0 add'],
  ['9', 'dominant-ninth', ''],
  ['maj9', 'major-ninth', ''],
  ['13', 'dominant-13th', ''],
  ['maj13', 'major-13th', ''],
  ['11', 'dominant-11th', ''],
  ['7b9', 'dominant', '9 -1 add'],
  ['7#11', 'dominant', '11 1 add'],
  ['7#5#9', 'augmented-seventh', '9 1 add'],
  ['7b9sus4', 'suspended-fourth', '7 0 add, 9 -1 add'],
  ['maj7#11', 'major-seventh', '11 1 add'],
  ['13b9', 'dominant-13th', '9 -1 alter'],
];

describe('kinds of MusicXML', () => {
  it('are those of the standard', () => {
    expect(ALL_KINDS).toHaveLength(33);
    expect(KINDS.map(({ name }) => name).filter((name) => !ALL_KINDS.includes(name))).toEqual([]);
    expect(new Set(KINDS.map(({ name }) => name)).size).toBe(KINDS.length);
  });

  it.each(KIND_PCS)('%s has the tones that the standard describes', (kind, pcs) => expect(pcsOfKind({ kind, changes: [] })).toEqual(pcs));

  it.each(QUALITIES)('C%s is %s with "%s"', (suffix, kind, degrees) => {
    const reading = kindOf(chordOf(`C${suffix}`).tones.map(({ degree }) => degree));
    expect([reading.kind, reading.changes.map(({ value, alter, type }) => `${value} ${alter} ${type}`).join(', ')]).toEqual([
      kind,
      degrees,
    ]);
  });
});

/** A harmony element of ours as the reader gets it. */
function written(symbol: string) {
  const read = readXml(printXml(harmonyElement({ chord: chordOf(symbol), symbol }, 0)));
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
}
const readBack = (xml: string) => {
  const read = readXml(xml);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return readHarmony(read.value);
};

describe('harmony', () => {
  it('keeps every published symbol as typed, its degrees saying exactly its tones', () => {
    const symbols = PUBLISHED_SYMBOLS.map(({ symbol }) => symbol).filter((symbol) => readChord(symbol).ok);
    expect(symbols.length).toBeGreaterThan(100);
    for (const symbol of symbols) {
      const chord = chordOf(symbol);
      expect(readHarmony(written(symbol)), symbol).toEqual({
        symbol: `${chord.root}${chord.suffix}${chord.bass === null ? '' : `/${chord.bass}`}`,
        notTaken: [],
      });
      const reading = kindOf(chord.tones.map(({ degree }) => degree));
      expect(pcsOfKind(reading), symbol).toEqual([...new Set(chord.tones.map(({ semitones }) => semitones))].sort((a, b) => a - b));
    }
  });

  it('reads the example of the tutorial: G6 over D', () => {
    expect(
      readBack(
        '<harmony><root><root-step>G</root-step></root><kind text="6">major-sixth</kind><bass><bass-step>D</bass-step></bass></harmony>',
      ).symbol,
    ).toBe('G6/D');
  });

  it.each([
    [
      'a kind without text, with degrees',
      '<kind>dominant</kind><degree><degree-value>9</degree-value><degree-alter>-1</degree-alter><degree-type>add</degree-type></degree><degree><degree-value>5</degree-value><degree-alter>1</degree-alter><degree-type>alter</degree-type></degree>',
      [0, 1, 4, 8, 10],
    ],
    [
      'a text that leaves the degrees to be printed',
      '<kind text="7">dominant</kind><degree><degree-value>11</degree-value><degree-alter>1</degree-alter><degree-type>add</degree-type></degree>',
      [0, 4, 6, 7, 10],
    ],
    ['a text that is empty although the kind is not major', '<kind text="">minor-seventh</kind>', [0, 3, 7, 10]],
    [
      'a third left out',
      '<kind>dominant</kind><degree><degree-value>3</degree-value><degree-alter>0</degree-alter><degree-type>subtract</degree-type></degree>',
      [0, 7, 10],
    ],
    [
      'a suspended ninth',
      '<kind>suspended-fourth</kind><degree><degree-value>7</degree-value><degree-alter>0</degree-alter><degree-type>add</degree-type></degree><degree><degree-value>9</degree-value><degree-alter>0</degree-alter><degree-type>add</degree-type></degree>',
      [0, 2, 5, 7, 10],
    ],
    ['text alone', '<kind text="m7b5">other</kind>', [0, 3, 6, 10]],
  ])('reads %s by its tones', (_, kind, pcs) => {
    const { symbol, notTaken } = readBack(`<harmony><root><root-step>C</root-step></root>${kind}</harmony>`);
    expect(notTaken).toEqual([]);
    expect(describeChord(chordOf(symbol ?? '')).pcs).toEqual(pcs);
  });

  it('takes what the page shows where the kind says less, and reports what it had to change', () => {
    expect(readBack('<harmony><root><root-step>A</root-step></root><kind text="7alt">dominant</kind></harmony>')).toEqual({
      symbol: 'A7alt',
      notTaken: [],
    });
    expect(readBack('<harmony><root><root-step>A</root-step></root><kind text="weird">minor</kind></harmony>')).toEqual({
      symbol: 'Am',
      notTaken: [],
    });
    expect(readBack('<harmony><root><root-step>A</root-step></root><kind>Tristan</kind></harmony>')).toMatchObject({
      symbol: null,
      notTaken: [{ code: 'unknown kind' }],
    });
    expect(readBack('<harmony><root><root-step text="">C</root-step></root><kind text="N.C.">none</kind></harmony>').symbol).toBe('N.C.');
  });
});
