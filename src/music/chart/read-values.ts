import {
  type Clave,
  type Direction,
  failed,
  type HalfNotesPerMinute,
  halfNotesPerMinute,
  type Meter,
  ok,
  type Result,
  TEMPO_RANGE,
} from '../../vocabulary';
import { readKey } from '../pitch/key';
import type { Chart, Key } from './chart';
import type { ChartFaultCode } from './fault-codes';
import { nearest } from './nearest';
import { STYLE_NAMES, styleNamed } from './style-names';

/** Why a value after a header name or in a section head cannot be read; the reader adds the place and the text. */
export interface ValueFault {
  readonly code: ChartFaultCode;
  readonly expected: string;
  readonly nearest: string | null;
}
/** Reads one value from trimmed text. */
export type ReadValue<Value> = (text: string) => Result<Value, ValueFault>;

const wrong = (code: ChartFaultCode, expected: string, near: string | null): Result<never, ValueFault> =>
  failed({ code, expected, nearest: near });

/** A key: `D`, `Dm`, `Bb`. */
export const readKeyValue: ReadValue<Key> = (text) => {
  const read = readKey(text);
  if (read.ok) return read;
  const fault = read.faults[0];
  return wrong('unknown key', fault?.expected ?? 'a key such as D, Dm or Bb', fault?.nearest ?? null);
};

const DASHES = /[‐-―−]/g;

/** A direction: `2-3` or `3-2` (any dash or a colon between). */
export const readDirection: ReadValue<Direction> = (text) => {
  const plain = text.replace(DASHES, '-').replace(/\s+/g, '');
  if (plain === '2-3' || plain === '3-2') return ok(plain);
  return wrong('unknown direction', '2-3 or 3-2', nearest(plain, ['2-3', '3-2']));
};

/** A direction and, if it is not the meter's usual one, a kind: `2-3 son`, `3-2 rumba`, `2-3`; in 6/8 `2-3 bembe`. The kind is null when it is not said. */
export const readClaveValue: ReadValue<{ direction: Direction; kind: Clave['kind'] | null }> = (text) => {
  const plain = text.replace(DASHES, '-').replace(/é/g, 'e').toLowerCase();
  const match = /^\s*(?:([23])\s*-\s*([23])(?:\s+(\w+))?|(\w+)\s+([23])\s*-\s*([23]))\s*$/.exec(plain);
  const direction = match && `${match[1] ?? match[5]}-${match[2] ?? match[6]}`;
  const kind = match?.[3] ?? match?.[4] ?? null;
  if ((direction === '2-3' || direction === '3-2') && (kind === null || kind === 'son' || kind === 'rumba' || kind === 'bembe'))
    return ok({ direction, kind });
  const choices = ['2-3 son', '3-2 son', '2-3 rumba', '3-2 rumba', '2-3 bembe', '3-2 bembe'];
  return wrong(
    'unknown clave',
    'a direction and a clave: 2-3 son, 3-2 son, 2-3 rumba or 3-2 rumba (2-3 bembe in 6/8)',
    nearest(plain.trim(), choices),
  );
};

/** How many of each note value go into a half note. */
const HALVES_PER: Readonly<Record<string, number>> = { half: 1, quarter: 0.5, 'dotted quarter': 0.75 };

/** A tempo: `half = 92`, `quarter = 184` or (for 6/8) `dotted quarter = 120`. */
export const readTempo: ReadValue<HalfNotesPerMinute> = (text) => {
  const range = `${TEMPO_RANGE.from} to ${TEMPO_RANGE.to} half notes a minute (quarter = ${TEMPO_RANGE.from * 2} to ${TEMPO_RANGE.to * 2})`;
  const plain = text.trim().toLowerCase().replace(/\s+/g, ' ').replace(DASHES, '-');
  const match = /^(?:([a-z ]*?)\s*=\s*)?(-?\d{1,9}(?:\.\d{1,6})?)$/.exec(plain);
  if (!match) return wrong('unknown tempo', `half = 92 or quarter = 184: ${range}`, nearest(plain, ['half = 92', 'quarter = 184'], 6));
  const unit = match[1];
  const number = Number(match[2]);
  const value = unit === undefined ? null : HALVES_PER[unit];
  if (value === undefined) {
    const name = nearest(unit ?? '', Object.keys(HALVES_PER));
    return wrong('unknown tempo', `half = 92 or quarter = 184: ${range}`, name === null ? null : `${name} = ${number}`);
  }
  const inRange = (halves: number): boolean => halves >= TEMPO_RANGE.from && halves <= TEMPO_RANGE.to;
  if (value === null) {
    const readings = Object.entries(HALVES_PER).filter(([name, share]) => name !== 'dotted quarter' && inRange(number * share));
    if (readings.length === 0) return wrong('tempo range', range, null);
    const likely = number > 120 ? readings.at(-1) : readings[0];
    const both = readings.map(([name]) =>
      name === 'half' ? `half = ${number} (quarter = ${number * 2})` : `quarter = ${number} (half = ${number / 2})`,
    );
    return wrong('bare tempo', `which note is counted: ${both.join(' or ')}`, `${likely?.[0]} = ${number}`);
  }
  return inRange(number * value) ? ok(halfNotesPerMinute(number * value)) : wrong('tempo range', range, null);
};

/** A style's name. */
export const readStyle: ReadValue<string> = (text) => {
  const style = styleNamed(text);
  if (style) return ok(style.name);
  const names = STYLE_NAMES.map((known) => known.name);
  return wrong('unknown style', `a style: ${names.join(', ')}`, nearest(text.trim(), names));
};

/** A meter that has a clave; `2/2` and `cut` are written as 4/4 here. */
export const readMeter: ReadValue<Meter> = (text) => {
  const plain = text.trim().toLowerCase();
  if (plain === '6/8') return ok('6/8');
  if (['4/4', '2/2', 'c', 'cut', 'cut time'].includes(plain)) return ok('4/4');
  return wrong('unknown meter', '4/4 or 6/8', nearest(plain, ['4/4', '6/8']));
};

/** Whether chords are written on the beat or where they are struck. */
export const readChanges: ReadValue<Chart['changes']> = (text) => {
  const plain = text.trim().toLowerCase().replace(/\s+/g, ' ');
  if (plain === 'on the beat' || plain === 'as played') return ok(plain);
  return wrong('unknown changes', 'on the beat, or as played', nearest(plain, ['on the beat', 'as played'], 6));
};

/**
 * A rhythm to carry on: a stroke or rest for each step, two bars of 8 (6 in 6/8), or one bar that is then played on both sides.
 * `.` rests; `x` strikes; `o`, `i`, `c`, `s`, `a` strike an octave, inner notes, a chord, a single note, an approach note.
 * Gives the two bars with one space between them.
 */
export const readFigure =
  (meter: Meter): ReadValue<string> =>
  (text) => {
    const half = meter === '6/8' ? 6 : 8;
    const plain = text.toLowerCase().replace(/[\s|]+/g, '');
    if (/^[.xoicsa]+$/.test(plain) && /[^.]/.test(plain) && (plain.length === half || plain.length === 2 * half)) {
      return ok(`${plain.slice(0, half)} ${plain.slice(-half)}`);
    }
    return wrong(
      'unknown figure',
      `two bars of ${half} steps, x for a stroke and . for a rest, such as ${half === 8 ? 'x.xx.x.x .x.xx.x.' : 'x.xx.x .x.x.x'}; found ${plain.length} steps`,
      null,
    );
  };
