import { type Clave, halfNotesPerMinute, type Meter } from '../../vocabulary';
import { type Chart, HEADER_NAMES, type HeaderName, type Key } from './chart';
import type { FaultList, Place } from './faults';
import { nearest } from './nearest';
import { meetPartLine } from './part-words';
import { type ReadValue, readChanges, readClaveValue, readFigure, readKeyValue, readMeter, readStyle, readTempo } from './read-values';

/** The value of a chart without any header line. A chart in 6/8 has the clave 2-3 bembe and the style bembe instead. */
const HEADER_DEFAULTS = {
  title: 'Untitled',
  key: { tonic: 'C', mode: 'major' } satisfies Key as Key,
  clave: { kind: 'son', direction: '2-3' } satisfies Clave as Clave,
  tempo: halfNotesPerMinute(90),
  style: 'salsa',
  meter: '4/4' satisfies Meter as Meter,
  changes: 'on the beat' satisfies Chart['changes'] as Chart['changes'],
  figure: null,
} as const;

/** The values of a chart of this meter that has no header line but `meter:`. */
export const defaultHeader = (meter: Meter): Omit<Header, 'headers' | 'meter'> => {
  const { title, key, tempo, changes, figure, clave, style } = HEADER_DEFAULTS;
  return {
    title,
    key,
    tempo,
    changes,
    figure,
    clave: { ...clave, kind: meter === '6/8' ? 'bembe' : clave.kind },
    style: meter === '6/8' ? 'bembe' : style,
  };
};

/** What the header says besides `form`, with the defaults filled in. */
export type Header = Pick<Chart, 'title' | 'key' | 'clave' | 'tempo' | 'style' | 'meter' | 'changes' | 'figure' | 'headers'>;

/** A header line as typed: which header it is and where its value stands. */
export interface HeaderLine {
  readonly name: HeaderName;
  readonly value: Place;
}

const HEADER = /^(\s*)(\p{L}[\p{L} -]*?)\s*:(?!\|)/u;

/** True for a line that has the form `name: value`. */
export const isHeaderLine = (text: string): boolean => HEADER.test(text);

/** Reads one `name: value` line; null with a fault when there is no such header. */
export function readHeaderLine(text: string, line: number, faults: FaultList): HeaderLine | null {
  const match = HEADER.exec(text);
  if (!match) return null;
  const typed = match[2] ?? '';
  const name = HEADER_NAMES.find((known) => known === typed.toLowerCase());
  if (!name) {
    if (meetPartLine(text, line, faults)) return null;
    faults.add(
      'unknown header',
      { line, column: (match[1] ?? '').length + 1, text: typed },
      `a header line: ${HEADER_NAMES.join(', ')}`,
      nearest(typed, HEADER_NAMES),
    );
    return null;
  }
  const rest = text.slice(match[0].length);
  const column = match[0].length + (rest.length - rest.trimStart().length) + 1;
  return { name, value: { line, column, text: rest.trim() } };
}

/** Reads the values of all header lines but `form`. A line that cannot be read leaves its default and a fault. */
export function readHeader(lines: readonly HeaderLine[], faults: FaultList): Header {
  const places = new Map(lines.map(({ name, value }) => [name, value]));
  const value = <Value>(name: HeaderName, read: ReadValue<Value>): Value | null => {
    const place = places.get(name);
    if (!place) return null;
    const result = read(place.text);
    if (result.ok) return result.value;
    faults.addAll(result.faults, place);
    return null;
  };
  const meter = value('meter', readMeter) ?? HEADER_DEFAULTS.meter;
  const inSix = meter === '6/8';
  const defaults = defaultHeader(meter);
  const typedClave = value('clave', readClaveValue);
  const clave: Clave = { kind: typedClave?.kind ?? defaults.clave.kind, direction: typedClave?.direction ?? defaults.clave.direction };
  const clavePlace = places.get('clave');
  if (clavePlace && (clave.kind === 'bembe') !== inSix) {
    const fits = inSix ? 'bembe' : 'son';
    faults.add(
      'clave against meter',
      clavePlace,
      inSix ? 'the clave of 6/8: bembe' : 'a clave of 4/4 (son, rumba), or the line meter: 6/8',
      `${clave.direction} ${fits}`,
    );
  }
  return {
    title: places.get('title')?.text || defaults.title,
    key: value('key', readKeyValue) ?? defaults.key,
    clave,
    tempo: value('tempo', readTempo) ?? defaults.tempo,
    style: value('style', readStyle) ?? defaults.style,
    meter,
    changes: value('changes', readChanges) ?? defaults.changes,
    figure: value('figure', readFigure(meter)) ?? defaults.figure,
    headers: lines.map(({ name, value: place }) => ({ name, line: place.line })),
  };
}
