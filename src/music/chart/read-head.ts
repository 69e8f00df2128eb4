import type { Direction, HalfNotesPerMinute, Meter } from '../../vocabulary';
import { type Key, SECTION_ROLES, type Section, type SectionRole } from './chart';
import type { FaultList, Place } from './faults';
import { MAX_TIMES } from './limits';
import { nearest } from './nearest';
import { splitAt } from './read-lines';
import { type ReadValue, readDirection, readFigure, readKeyValue, readStyle, readTempo } from './read-values';

/** A section without its bars. */
export type SectionHead = Omit<Section, 'bars'>;

/** The head of bars that have none in the text. */
export const headless = (name: string): SectionHead => ({
  name,
  role: null,
  times: 1,
  onCue: false,
  restart: null,
  expects: null,
  style: null,
  key: null,
  tempo: null,
  figure: null,
  line: 0,
});

const ATTRIBUTES = ['role', 'style', 'key', 'tempo', 'figure', 'clave', 'on cue'] as const;

const roleNamed = (text: string): SectionRole | null =>
  SECTION_ROLES.find((known) => known === text.toLowerCase().replace(/\s+/g, ' ')) ?? null;

const missingRole: ReadValue<SectionRole> = () => ({
  ok: false,
  faults: [{ code: 'unknown role', expected: `a role: ${SECTION_ROLES.join(', ')}`, nearest: null }],
});

/** Reads what stands between `[` and `]`: a name (which may be missing) and attributes, separated by commas. `column` is that of the first character after `[`. */
export function readHead(text: string, line: number, column: number, meter: Meter, faults: FaultList): SectionHead {
  const [namePiece, ...pieces] = splitAt(text, ',', column);
  const name = (namePiece?.text ?? '').replace(/\s+/g, ' ');
  const seen = new Set<string>();
  const found: { -readonly [Field in keyof SectionHead]?: SectionHead[Field] } = {};

  for (const piece of pieces) {
    const place: Place = { line, column: piece.column, text: piece.text };
    const attribute = splitAttribute(piece.text);
    if (seen.has(attribute.name)) {
      faults.add('attribute twice', place, `each attribute once: this section has "${attribute.name}" already`);
      continue;
    }
    seen.add(attribute.name);
    const value = <Value>(read: ReadValue<Value>): Value | null => {
      const result = read(attribute.value);
      if (result.ok) return result.value;
      faults.addAll(
        result.faults,
        attribute.value === '' ? place : { line, column: piece.column + attribute.offset, text: attribute.value },
      );
      return null;
    };
    switch (attribute.name) {
      case 'role':
        found.role = roleNamed(attribute.value);
        // Words are told and kept; what could not be written back is a fault.
        if (attribute.value === '' || /[\]:]/.test(attribute.value)) value(missingRole);
        else if (!found.role) found.unknownRole = attribute.value;
        break;
      case 'style':
        found.style = value(readStyle);
        break;
      case 'key':
        found.key = value<Key>(readKeyValue);
        break;
      case 'tempo':
        found.tempo = value<HalfNotesPerMinute>(readTempo);
        break;
      case 'figure':
        found.figure = value(readFigure(meter));
        break;
      case 'clave':
        found.expects = value<Direction>(readDirection);
        break;
      case 'clave restart':
        found.restart = value<Direction>(readDirection);
        break;
      case 'on cue':
        found.onCue = true;
        break;
      case 'x': {
        const times = Number(attribute.value);
        if (times >= 1 && times <= MAX_TIMES) found.times = times;
        else faults.add('unknown times', place, `x1 to x${MAX_TIMES}: how often the section is played`, times < 1 ? 'x1' : `x${MAX_TIMES}`);
        break;
      }
      default:
        faults.add(
          'unknown attribute',
          place,
          'role: …, x8, on cue, clave restart 3-2, clave: 3-2, style: …, key: …, tempo: … or figure: …',
          nearestAttribute(attribute.name, piece.text),
        );
    }
  }
  return { ...headless(name), ...found, line };
}

/** What was typed with the nearest attribute's name in place of its own. */
function nearestAttribute(name: string, text: string): string | null {
  const near = nearest(name, ATTRIBUTES);
  if (near === null) return null;
  const colon = text.indexOf(':');
  return colon < 0 ? near : near + text.slice(colon);
}

/** Splits `role: coro`, `x8`, `on cue`, `clave restart 3-2` into a name, a value and where in the text the value begins. */
function splitAttribute(text: string): { name: string; value: string; offset: number } {
  const colon = text.indexOf(':');
  if (colon >= 0) {
    const value = text.slice(colon + 1);
    return {
      name: text
        .slice(0, colon)
        .trim()
        .toLowerCase()
        .replace(/^(x|on cue|clave restart)$/, '$1:'),
      value: value.trim(),
      offset: colon + 1 + value.length - value.trimStart().length,
    };
  }
  const times = /^[x×]\s*(\d{1,9})$/i.exec(text);
  if (times) return { name: 'x', value: times[1] ?? '', offset: 0 };
  const restart = /^clave\s+restart\s*/i.exec(text);
  if (restart) return { name: 'clave restart', value: text.slice(restart[0].length), offset: restart[0].length };
  if (/^(on\s+cue|open|till\s+cue|until\s+cue)$/i.test(text)) return { name: 'on cue', value: '', offset: 0 };
  return { name: text.toLowerCase().slice(0, 40), value: '', offset: 0 };
}
