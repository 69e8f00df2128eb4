import { readKey } from '../pitch/key';
import type { FaultList } from './faults';
import { readTempo } from './read-values';

/** A line of a band's part, as a chart writes it. */
interface PartLine {
  readonly expected: string;
  readonly nearest: string;
}

const CLAVE = /^(?:(?:montuno|clave)\s*:?\s*)?(?<direction>2-3|3-2)(?:\s+(?<kind>son|rumba))?(?:\s+(?:clave|montuno))?$/i;
const TEMPO = /^tempo\s*=?\s*(?<number>\d{2,3})$/i;
const KEY = /^key\s+(?<key>\S.*)$/i;
/** Names that sections have on a part, from the band's usual words. Common practice, no source. */
const SECTION =
  /^\[?(?<name>(?:intro|verse|chorus|bridge|head|coro|mambo|montuno|mo[nñ]a|solos?|interlude|tag|vamp|coda|ending|outro)(?:\s+\d{1,2})?|[A-Z]\d?)\s*(?<colon>:)?$/iu;

/**
 * Meets a line that a part says in words and a chart in its own way: `montuno 2-3`, `Tempo 92`, `Key D`, `Coro`, `A:`. Adds the fault that says
 * how the chart writes it; false for a line that is none of these. A letter alone is a chord.
 */
export function meetPartLine(typed: string, line: number, faults: FaultList): boolean {
  // Almost every line is a row of bars.
  if (typed.includes('|')) return false;
  const text = typed.trim();
  const said = partLine(text);
  if (said) faults.add('unknown header', { line, column: typed.indexOf(text) + 1, text }, said.expected, said.nearest);
  return said !== null;
}

function partLine(text: string): PartLine | null {
  const clave = CLAVE.exec(text)?.groups;
  if (clave) return { expected: 'the clave as a header line', nearest: `clave: ${clave.direction} ${clave.kind?.toLowerCase() ?? 'son'}` };
  // The reader of tempo lines knows the likelier note value of a bare number.
  const number = TEMPO.exec(text)?.groups?.number;
  const tempo = number ? readTempo(number) : null;
  const likely = tempo && !tempo.ok ? tempo.faults[0]?.nearest : null;
  if (likely) return { expected: 'the tempo as a header line, with the note that is counted', nearest: `tempo: ${likely}` };
  const key = KEY.exec(text)?.groups?.key;
  if (key && readKey(key).ok) return { expected: 'the key as a header line', nearest: `key: ${key}` };
  const { name, colon } = SECTION.exec(text)?.groups ?? {};
  if (name && (colon || name.length > 2)) return { expected: "a section's name in brackets", nearest: `[${name}]` };
  return null;
}
