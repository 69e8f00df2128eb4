import { HEADER_NAMES } from '../../music/chart/chart';
import { MARKS } from '../../music/chart/read-bar';
import { STYLE_NAMES } from '../../music/chart/style-names';
import { readChord } from '../../music/chord/read';
import { tokensOf } from './tokens';

/** What could be written at the caret: the piece of text from `from` to `to` becomes one of `options`, the likeliest first. */
export interface Completion {
  readonly from: number;
  readonly to: number;
  readonly options: readonly string[];
}

/** At most this many are offered. */
const OFFERED = 6;
/** Chord suffixes in the order in which dance-band charts use them (common practice, no source). */
const SUFFIXES =
  '7 m7 6 maj7 m 7b9 m7b5 m6 9 m9 13 6/9 dim7 7alt sus4 7sus4 maj9 7#9 7#11 7#5 7b13 9sus4 13b9 13sus4 m(maj7) maj7#11 add9 m11 aug dim sus2 7b5 69'.split(
    ' ',
  );

/**
 * What could be written at `caret`: chords in a row of bars (those of this chart first), names in a header line, sections after `form:`.
 * Null when nothing was begun there, or when it is whole already and could only be itself.
 */
export function completionAt(text: string, caret: number): Completion | null {
  const lineFrom = text.lastIndexOf('\n', caret - 1) + 1;
  const before = text.slice(lineFrom, caret);
  if (before.includes(';')) return null;
  const lineEnd = text.indexOf('\n', caret);
  const after = text.slice(caret, lineEnd < 0 ? text.length : lineEnd);
  const context = contextOf(before);
  const begun = context?.pattern.exec(before)?.[1] ?? '';
  if (!context || begun.length < context.least) return null;
  const rest = context.kind === 'chord' ? (/^[^\s|;{<]*/.exec(after)?.[0] ?? '') : '';
  const from = caret - begun.length;
  const candidates = context.candidates(text, begun);
  const options = fitting(candidates, begun).filter((option) => option !== begun + rest);
  return options.length === 0 ? null : { from, to: caret + rest.length, options: options.slice(0, OFFERED) };
}

interface Context {
  readonly kind: 'chord' | 'name';
  /** What was begun: its first group, up to the caret. */
  readonly pattern: RegExp;
  /** Characters that must have been typed. */
  readonly least: number;
  readonly candidates: (text: string, begun: string) => readonly string[];
}

const CLAVES = ['2-3 son', '3-2 son', '2-3 rumba', '3-2 rumba'];
const VALUES: Readonly<Record<string, (text: string) => readonly string[]>> = {
  clave: () => CLAVES,
  style: () => STYLE_NAMES.filter(({ onClave }) => onClave).map(({ name }) => name),
  meter: () => ['4/4', '6/8'],
  changes: () => ['on the beat', 'as played'],
  tempo: () => ['half = 92', 'quarter = 184'],
  form: (text) => [...text.matchAll(/^\s*\[\s*([^\],\n]+)/gm)].map((match) => (match[1] ?? '').trim()),
};

function contextOf(before: string): Context | null {
  if (/<[^>]*$/.test(before)) return { kind: 'name', pattern: /(<[^>]*)$/, least: 1, candidates: () => MARKS.map((mark) => `<${mark}>`) };
  if (/\{[^}]*$/.test(before) || /^\s*\[/.test(before)) return null;
  const header = /^\s*(\w+)\s*:(?!\|)/.exec(before)?.[1]?.toLowerCase();
  if (header !== undefined) {
    const values = VALUES[header];
    return values ? { kind: 'name', pattern: /[:,]\s*([^,:]*)$/, least: 0, candidates: values } : null;
  }
  if (/^\s*[a-z]*$/.test(before))
    return { kind: 'name', pattern: /^\s*([a-z]+)$/, least: 1, candidates: () => HEADER_NAMES.map((name) => `${name}: `) };
  return { kind: 'chord', pattern: /(?:^|[\s|:.>])([A-G][^\s|]*)$/, least: 1, candidates: chordsFor };
}

/** The chart's own chords, most used first, then every usual suffix on the root that was begun, spelled as it was begun. */
function chordsFor(text: string, begun: string): readonly string[] {
  const root = /^[A-G](?:bb|##|[b#♭♯])?/.exec(begun)?.[0] ?? begun;
  return [...ownChords(text, begun), ...SUFFIXES.map((suffix) => root + suffix)];
}

function ownChords(text: string, begun: string): string[] {
  const used = new Map<string, number>();
  for (const line of text.split('\n'))
    for (const { kind, text: word } of tokensOf(line)) {
      const symbol = word.replace(/^>/, '');
      if (kind === 'chord' && symbol !== begun && symbol.startsWith(begun)) used.set(symbol, (used.get(symbol) ?? 0) + 1);
    }
  const byUse = [...used].sort((a, b) => b[1] - a[1]).map(([symbol]) => symbol);
  return byUse.slice(0, OFFERED).filter((symbol) => readChord(symbol).ok);
}

function fitting(candidates: readonly string[], begun: string): string[] {
  const wanted = begun.toLowerCase();
  // A chord's root is a capital, and M is not m: letter case counts unless nothing else would fit.
  const exact = candidates.filter((candidate) => candidate.startsWith(begun));
  const found = exact.length > 0 ? exact : candidates.filter((candidate) => candidate.toLowerCase().startsWith(wanted));
  return [...new Set(found)];
}
