import { parseMidi } from 'midi-file';
import { describe, expect, it } from 'vitest';
import {
  endOfTrack,
  headerChunk,
  keySignature,
  noteOn,
  programChange,
  setTempo,
  timeSignature,
  trackChunkHead,
  variableLength,
} from '../../../src/exchange/midi/bytes';
import { keyFifths } from '../../../src/layout/notation/key-fifths';
import type { Key } from '../../../src/music/chart/chart';

const hex = (bytes: Iterable<number>): string => [...bytes].map((byte) => byte.toString(16).toUpperCase().padStart(2, '0')).join(' ');

/* Standard MIDI Files 1.0 (RP-001), table of variable-length quantities; 64, 127, 2097151 and 2097152 from memory of the same table.
   200 and 1000 are the examples repeated in secondary tables; 96 to 65535 computed from the rule of the standard. */
const VARIABLE: readonly (readonly [number, string])[] = [
  [0x00, '00'],
  [0x40, '40'],
  [0x7f, '7F'],
  [0x80, '81 00'],
  [0x2000, 'C0 00'],
  [0x3fff, 'FF 7F'],
  [0x100000, 'C0 80 00'],
  [0x1fffff, 'FF FF 7F'],
  [0x200000, '81 80 80 00'],
  [0xfffffff, 'FF FF FF 7F'],
  [200, '81 48'],
  [1000, '87 68'],
  [96, '60'],
  [120, '78'],
  [240, '81 70'],
  [960, '87 40'],
  [1440, '8B 20'],
  [1920, '8F 00'],
  [2400, '92 60'],
  [3840, '9E 00'],
  [65535, '83 FF 7F'],
];

describe('bytes of a Standard MIDI File', () => {
  it.each(VARIABLE)('writes %i with variable length as %s', (value, bytes) => expect(hex(variableLength(value))).toBe(bytes));

  it.each([-1, 0.5, 0x10000000, Number.NaN])('refuses %d as a variable-length number', (value) =>
    expect(() => variableLength(value)).toThrow('variable-length'),
  );

  // RP-001, header chunk; numbers computed from the layout.
  it.each([
    [3, 480, '4D 54 68 64 00 00 00 06 00 01 00 03 01 E0'],
    [2, 384, '4D 54 68 64 00 00 00 06 00 01 00 02 01 80'],
  ])('writes a type 1 header of %i tracks at %i ticks', (tracks, ticks, bytes) => expect(hex(headerChunk(tracks, ticks))).toBe(bytes));

  it('opens a track with MTrk and its length and ends it with FF 2F 00 (RP-001)', () => {
    expect(hex(trackChunkHead(59))).toBe('4D 54 72 6B 00 00 00 3B');
    expect(hex(endOfTrack)).toBe('FF 2F 00');
  });

  // RP-001, Set Tempo: 120 quoted there, the others computed and rounded to the microsecond.
  it.each([
    [120, '07 A1 20'],
    [60, '0F 42 40'],
    [100, '09 27 C0'],
    [180, '05 16 15'],
    [96, '09 89 68'],
    [160, '05 B8 D8'],
    [75, '0C 35 00'],
  ])('writes %i quarters a minute as FF 51 03 %s', (tempo, bytes) => expect(hex(setTempo(tempo))).toBe(`FF 51 03 ${bytes}`));

  it('refuses a tempo that does not fit three bytes', () => expect(() => setTempo(3)).toThrow('tempo'));

  // RP-001, Time Signature, from memory of the fields: numerator, power of two, clocks per click, 32nds per 24 clocks.
  it.each([
    [4, 4, 24, '04 02 18 08'],
    [3, 4, 24, '03 02 18 08'],
    [12, 8, 36, '0C 03 24 08'],
    [2, 4, 24, '02 02 18 08'],
  ])('writes %i/%i with %i clocks a click as FF 58 04 %s', (n, d, clocks, bytes) =>
    expect(hex(timeSignature(n, d, clocks))).toBe(`FF 58 04 ${bytes}`),
  );

  // RP-001, Key Signature: sharps as a signed byte, then 0 for major and 1 for minor.
  const KEYS: readonly (readonly [string, Key['mode'], string])[] = [
    ['C', 'major', '00 00'],
    ['E', 'major', '04 00'],
    ['F#', 'major', '06 00'],
    ['C#', 'major', '07 00'],
    ['F', 'major', 'FF 00'],
    ['Bb', 'major', 'FE 00'],
    ['Eb', 'major', 'FD 00'],
    ['Db', 'major', 'FB 00'],
    ['Gb', 'major', 'FA 00'],
    ['Cb', 'major', 'F9 00'],
    ['E', 'minor', '01 01'],
    ['B', 'minor', '02 01'],
    ['C#', 'minor', '04 01'],
    ['G#', 'minor', '05 01'],
    ['D#', 'minor', '06 01'],
    ['C', 'minor', 'FD 01'],
    ['F', 'minor', 'FC 01'],
    ['Bb', 'minor', 'FB 01'],
    ['Eb', 'minor', 'FA 01'],
    ['Ab', 'minor', 'F9 01'],
  ];
  it.each(KEYS)('writes %s %s as FF 59 02 %s', (tonic, mode, bytes) =>
    expect(hex(keySignature(keyFifths({ tonic, mode }), mode))).toBe(`FF 59 02 ${bytes}`),
  );

  // MIDI 1.0 channel messages with General MIDI level 1 numbers.
  it('writes program changes and notes as in MIDI 1.0', () => {
    expect(hex(programChange(0, 0))).toBe('C0 00');
    expect(hex(programChange(1, 32))).toBe('C1 20');
    expect(hex(noteOn(9, 75, 100))).toBe('99 4B 64');
    expect(hex(noteOn(1, 28, 90))).toBe('91 1C 5A');
  });

  it('has an independent reader that agrees with the worked example of RP-001 (bytes from memory)', () => {
    const worked =
      '4D 54 68 64 00 00 00 06 00 00 00 01 00 60 4D 54 72 6B 00 00 00 3B 00 FF 58 04 04 02 18 08 00 FF 51 03 07 A1 20 00 C0 05 00 C1 2E 00 C2 46 00 92 30 60 00 3C 60 60 91 43 40 60 90 4C 20 81 40 82 30 40 00 3C 40 00 81 43 40 00 80 4C 40 00 FF 2F 00';
    const read = parseMidi(Uint8Array.from(worked.split(' '), (byte) => Number.parseInt(byte, 16)));
    expect(read.header).toMatchObject({ format: 0, numTracks: 1, ticksPerBeat: 96 });
    expect(
      read.tracks[0]
        ?.filter((event) => event.type === 'noteOn')
        .map((event) => (event.type === 'noteOn' ? [event.channel, event.noteNumber, event.velocity] : [])),
    ).toEqual([
      [2, 48, 96],
      [2, 60, 96],
      [1, 67, 64],
      [0, 76, 32],
    ]);
  });
});

describe('key signatures', () => {
  // Circle of fifths; MusicXML 4.0 <fifths>: negative flats, positive sharps.
  const FIFTHS: readonly (readonly [string, Key['mode'], number])[] = [
    ['C', 'major', 0],
    ['G', 'major', 1],
    ['D', 'major', 2],
    ['E', 'major', 4],
    ['B', 'major', 5],
    ['C#', 'major', 7],
    ['Bb', 'major', -2],
    ['Ab', 'major', -4],
    ['Gb', 'major', -6],
    ['Cb', 'major', -7],
    ['A', 'minor', 0],
    ['E', 'minor', 1],
    ['B', 'minor', 2],
    ['D#', 'minor', 6],
    ['A#', 'minor', 7],
    ['D', 'minor', -1],
    ['C', 'minor', -3],
    ['F', 'minor', -4],
    ['Bb', 'minor', -5],
    ['Ab', 'minor', -7],
  ];
  it.each(FIFTHS)('gives %s %s %i fifths', (tonic, mode, fifths) => expect(keyFifths({ tonic, mode })).toBe(fifths));

  it('writes a key beyond seven accidentals with its neighbour on the keyboard', () => {
    expect(keyFifths({ tonic: 'G#', mode: 'major' })).toBe(-4);
    expect(keyFifths({ tonic: 'Db', mode: 'minor' })).toBe(4);
    expect(keyFifths({ tonic: 'Fb', mode: 'major' })).toBe(4);
  });
});
