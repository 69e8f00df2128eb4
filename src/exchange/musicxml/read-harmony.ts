import { describeChord } from '../../music/chord/members';
import { readChord } from '../../music/chord/read';
import { mod12, pcOf } from '../../music/pitch/spell';
import type { NotTaken } from '../../words/import-screen';
import { type DegreeChange, pcsOfKind } from './chord-kinds';
import { child, childNumber, childrenNamed, childText, type XmlNode } from './read-xml';

/** What a `harmony` element gives: a symbol that charts can hold (`N.C.` included), or null, and what was left out or changed. */
export interface HarmonyReading {
  readonly symbol: string | null;
  readonly notTaken: readonly Omit<NotTaken, 'bar'>[];
}

/** How each kind is written when its text does not say it, or says it in a way that cannot be read. */
const SUFFIXES: Readonly<Record<string, string>> = {
  dominant: '7',
  'major-seventh': 'maj7',
  'minor-seventh': 'm7',
  'diminished-seventh': 'dim7',
  'augmented-seventh': '7#5',
  'half-diminished': 'm7b5',
  'major-minor': 'm(maj7)',
  major: '',
  minor: 'm',
  augmented: '+',
  diminished: 'dim',
  'suspended-second': 'sus2',
  'suspended-fourth': 'sus4',
  power: '5',
  'major-sixth': '6',
  'minor-sixth': 'm6',
  'dominant-ninth': '9',
  'major-ninth': 'maj9',
  'minor-ninth': 'm9',
  'dominant-11th': '11',
  'major-11th': 'maj11',
  'minor-11th': 'm11',
  'dominant-13th': '13',
  'major-13th': 'maj13',
  'minor-13th': 'm13',
};

/**
 * A chord symbol from a `harmony` element. The kind's text is taken as printed where it means what kind and degrees say; else a usual
 * symbol is made for them. A kind with a text that can be read (`other`) is taken by its text; one without is reported.
 */
export function readHarmony(harmony: XmlNode): HarmonyReading {
  const kind = child(harmony, 'kind');
  const kindName = kind?.text.trim() ?? '';
  if (kindName === 'none' || /^n\.?\s?c\.?$/i.test(kind?.attributes.text?.trim() ?? '')) return { symbol: 'N.C.', notTaken: [] };
  const root = noteName(child(harmony, 'root'), 'root');
  if (root === null) return { symbol: null, notTaken: [{ code: 'no root', detail: {} }] };
  const bass = noteName(child(harmony, 'bass'), 'bass');
  const slash = bass === null ? '' : `/${bass}`;
  const text = (kind?.attributes.text ?? '').replace(/\s+/g, '');
  const changes = childrenNamed(harmony, 'degree').flatMap(degreeChange);
  const found = suffixOf(root, kindName, kind?.attributes.text === undefined ? null : text, changes);
  const doubled = childrenNamed(harmony, 'root').length > 1;
  if (found === null) {
    const detail = { chord: `${root}${text}${slash}`, kind: kindName === '' ? '—' : kindName };
    return { symbol: null, notTaken: [{ code: 'unknown kind', detail }] };
  }
  const symbol = `${root}${found.suffix}${slash}`;
  const notTaken: Omit<NotTaken, 'bar'>[] = [];
  if (doubled) notTaken.push({ code: 'second chord', detail: { chord: symbol } });
  if (!found.exact) notTaken.push({ code: 'chord read as', detail: { typed: `${root}${text}${slash}`, chord: symbol } });
  return { symbol, notTaken };
}

const SIGNS: Readonly<Record<string, string>> = { '-2': 'bb', '-1': 'b', '0': '', '1': '#', '2': '##' };

function noteName(node: XmlNode | undefined, part: 'root' | 'bass'): string | null {
  const step = childText(node, `${part}-step`);
  const sign = SIGNS[String(Math.round(childNumber(node, `${part}-alter`) ?? 0))];
  return /^[A-G]$/.test(step) && sign !== undefined ? step + sign : null;
}

function degreeChange(degree: XmlNode): DegreeChange[] {
  const value = childNumber(degree, 'degree-value');
  const type = childText(degree, 'degree-type');
  if (value === null || (type !== 'add' && type !== 'alter' && type !== 'subtract')) return [];
  return [{ value, alter: Math.round(childNumber(degree, 'degree-alter') ?? 0), type }];
}

/** The suffix to write, and whether it means exactly what the element says; null when nothing can be written. */
function suffixOf(
  root: string,
  kind: string,
  text: string | null,
  changes: readonly DegreeChange[],
): { suffix: string; exact: boolean } | null {
  const pcs = pcsOfKind({ kind, changes });
  if (pcs === null) return text !== null && text !== '' && pcsOf(root + text) !== null ? { suffix: text, exact: true } : null;
  const wanted = pcs.map((pc) => mod12(pc + pcOf(root)));
  const words = changes.map(degreeWord).filter((word) => word !== '');
  const listed = words.length === 0 ? '' : `(${words.join(',')})`;
  const usual = SUFFIXES[kind] ?? '';
  const texts = text === null ? [] : [text, text + listed, text + words.join('')];
  const candidates = [...texts, ...suspended(kind, changes), usual + listed, usual + words.join('')];
  const same = (suffix: string): boolean => {
    const read = pcsOf(root + suffix);
    return read !== null && read.length === wanted.length && wanted.every((pc) => read.includes(pc));
  };
  if (text !== null && same(text)) return { suffix: text, exact: true };
  // A text that says more than its kind (`7alt` as a plain dominant) is what the reader of the page sees.
  const frame = wanted.filter((pc) => pc !== mod12(pcOf(root) + 7));
  const holds = (suffix: string): boolean => {
    const read = pcsOf(root + suffix);
    return read !== null && frame.every((pc) => read.includes(pc));
  };
  if (changes.length === 0 && text !== null && holds(text)) return { suffix: text, exact: true };
  const exact = candidates.find(same);
  if (exact !== undefined) return { suffix: exact, exact: true };
  const nearest = [...texts.slice(1), usual + listed, ...texts.slice(0, 1), usual].find((suffix) => pcsOf(root + suffix) !== null);
  return nearest === undefined ? null : { suffix: nearest, exact: false };
}

const pcsOf = (symbol: string): readonly number[] | null => {
  const read = readChord(symbol);
  return read.ok ? describeChord(read.value).pcs : null;
};

/** A suspended fourth with a seventh is written by its highest number: `7sus4`, `9sus4`, `13sus4`. */
function suspended(kind: string, changes: readonly DegreeChange[]): string[] {
  const numbers = changes.filter(({ type, alter }) => type === 'add' && alter === 0).map(({ value }) => value);
  if (!kind.startsWith('suspended') || !numbers.includes(7)) return [];
  const sus = kind === 'suspended-second' ? 'sus2' : 'sus4';
  const rest = changes.filter(({ value, alter }) => alter !== 0 || ![7, 9, 13].includes(value)).map(degreeWord);
  return [`${Math.max(...numbers.filter((number) => [7, 9, 13].includes(number)))}${sus}${rest.length > 0 ? `(${rest.join(',')})` : ''}`];
}

/** A change as it is written in brackets: `b9`, `#11`, `maj7`, `no3`. */
function degreeWord({ value, alter, type }: DegreeChange): string {
  if (type === 'subtract') return `no${value}`;
  if (value === 7) return alter > 0 ? 'maj7' : '7';
  if (alter === 0 && (value === 2 || value === 4)) return `add${value}`;
  return `${alter < 0 ? 'b' : alter > 0 ? '#' : ''}${value}`;
}
