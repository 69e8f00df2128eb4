import { readKey } from '../pitch/key';

/** A line of a band's part, as a chart writes it. */
export interface PartLine {
  readonly expected: string;
  readonly nearest: string;
}

const CLAVE = /^(?:(?:montuno|clave)\s*:?\s*)?(?<direction>2-3|3-2)(?:\s+(?<kind>son|rumba))?(?:\s+(?:clave|montuno))?$/i;
const TEMPO = /^tempo\s*=?\s*(?<number>\d{2,3})$/i;
const KEY = /^key\s+(?<key>\S.*)$/i;
/** Names that sections have on a part, from the band's usual words. Common practice, no source. */
const SECTION =
  /^\[?(?<name>(?:intro|verse|chorus|bridge|head|coro|mambo|montuno|mo[nñ]a|solos?|interlude|tag|vamp|coda|ending|outro)(?:\s+\d{1,2})?|[A-Z]\d?)\s*(?<colon>:)?$/iu;
/** The fastest a half note is counted; above it the number means quarter notes. */
const FASTEST_HALF = 140;

/**
 * Reads a line that a part says in words and a chart in its own way: `montuno 2-3`, `Tempo 92`, `Key D`, `Coro`, `A:`. Null for a line that is
 * none of these; a letter alone is a chord.
 */
export function partLine(typed: string): PartLine | null {
  const text = typed.trim();
  const clave = CLAVE.exec(text)?.groups;
  if (clave) return { expected: 'the clave as a header line', nearest: `clave: ${clave.direction} ${clave.kind?.toLowerCase() ?? 'son'}` };
  const tempo = TEMPO.exec(text)?.groups?.number;
  if (tempo) {
    const unit = Number(tempo) > FASTEST_HALF ? 'quarter' : 'half';
    return { expected: 'the tempo as a header line, with the note that is counted', nearest: `tempo: ${unit} = ${Number(tempo)}` };
  }
  const key = KEY.exec(text)?.groups?.key;
  if (key && readKey(key).ok) return { expected: 'the key as a header line', nearest: `key: ${key}` };
  const { name, colon } = SECTION.exec(text)?.groups ?? {};
  if (name && (colon || name.length > 2)) return { expected: "a section's name in brackets", nearest: `[${name}]` };
  return null;
}
