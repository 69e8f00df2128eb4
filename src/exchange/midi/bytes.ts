/**
 * The bytes of a Standard MIDI File: numbers of variable length, chunks, meta events and channel messages.
 * Source of every layout here: Standard MIDI Files 1.0 (MIDI Manufacturers Association, RP-001) and MIDI 1.0 channel messages.
 */
import { assert } from '../../vocabulary';

/** Bytes, each 0 to 255. */
export type Bytes = readonly number[];

/** The largest number that four bytes of seven bits can hold. */
const LARGEST_VARIABLE = 0x0fffffff;

/** A number of 0 to 268435455 in one to four bytes of seven bits, high bit set on all but the last: 200 is 81 48. Throws outside that range. */
export function variableLength(value: number): Bytes {
  assert(
    Number.isInteger(value) && value >= 0 && value <= LARGEST_VARIABLE,
    `a variable-length number must be a whole number from 0 to ${LARGEST_VARIABLE}, got ${value}`,
  );
  const bytes = [value & 0x7f];
  for (let rest = value >> 7; rest > 0; rest >>= 7) bytes.unshift((rest & 0x7f) | 0x80);
  return bytes;
}

const big16 = (value: number): Bytes => [(value >> 8) & 0xff, value & 0xff];
const big24 = (value: number): Bytes => [(value >> 16) & 0xff, ...big16(value)];
const big32 = (value: number): Bytes => [(value >>> 24) & 0xff, ...big24(value)];
const ascii = (text: string): Bytes => [...text].map((character) => character.charCodeAt(0) & 0x7f);

/** The header chunk of a type 1 file with `tracks` tracks and `ticksPerQuarter` ticks to the quarter note. */
export const headerChunk = (tracks: number, ticksPerQuarter: number): Bytes => [
  ...ascii('MThd'),
  ...big32(6),
  ...big16(1),
  ...big16(tracks),
  ...big16(ticksPerQuarter),
];

/** What stands before the events of a track of `length` bytes. */
export const trackChunkHead = (length: number): Bytes => [...ascii('MTrk'), ...big32(length)];

const meta = (kind: number, data: Bytes): Bytes => [0xff, kind, ...variableLength(data.length), ...data];

/** Name of the track (of the whole piece in track 0). ASCII only. */
export const trackName = (text: string): Bytes => meta(0x03, ascii(text));
/** A named place, such as the start of a section. ASCII only. */
export const marker = (text: string): Bytes => meta(0x06, ascii(text));
/** The end that every track must have. */
export const endOfTrack: Bytes = meta(0x2f, []);

/** Tempo in quarter notes per minute, rounded to whole microseconds for a quarter: 120 is FF 51 03 07 A1 20. Throws when that does not fit 24 bits. */
export function setTempo(quartersPerMinute: number): Bytes {
  const microseconds = Math.round(60_000_000 / quartersPerMinute);
  assert(
    microseconds >= 1 && microseconds <= 0xffffff,
    `a tempo must lie between 3.58 and 60000000 quarters a minute, got ${quartersPerMinute}`,
  );
  return meta(0x51, big24(microseconds));
}

/** A time signature; `denominator` is a power of two, `clocksPerClick` counts 24 to the quarter. 4/4 with 24 is FF 58 04 04 02 18 08. */
export function timeSignature(numerator: number, denominator: number, clocksPerClick: number): Bytes {
  const power = Math.log2(denominator);
  assert(Number.isInteger(power) && numerator > 0 && numerator < 256, `no time signature ${numerator}/${denominator}`);
  return meta(0x58, [numerator, power, clocksPerClick, 8]);
}

/** A key signature: sharps (positive) or flats (negative), −7 to 7. B♭ major is FF 59 02 FE 00. */
export function keySignature(fifths: number, mode: 'major' | 'minor'): Bytes {
  assert(Number.isInteger(fifths) && Math.abs(fifths) <= 7, `a key signature has −7 to 7 sharps, got ${fifths}`);
  return meta(0x59, [fifths & 0xff, mode === 'minor' ? 1 : 0]);
}

/** Chooses an instrument; `program` counts from 0, as the bytes do. `channel` counts from 0. */
export const programChange = (channel: number, program: number): Bytes => [0xc0 | channel, program];
/** Begins a note. */
export const noteOn = (channel: number, midi: number, velocity: number): Bytes => [0x90 | channel, midi, velocity];
/** Ends a note, with the release velocity 64 that the standard asks of senders without one. */
export const noteOff = (channel: number, midi: number): Bytes => [0x80 | channel, midi, 64];
