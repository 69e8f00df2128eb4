import type { Degree, LineName } from '../../vocabulary';
import type { Chord, ChordFamily } from '../chord/chord';
import { mod12, pcOf } from '../pitch/spell';
import type { HarmonicTimeline, HarmonySpan } from './timeline';

/**
 * Moving lines: what the octaves (or an inner note) do over a held chord, a cadence or a dance loop. Adding a line is adding a row.
 * All rows are common practice; the minor and major lines are described in lessons on line clichés, the ii–V–I ones in M. Levine,
 * The Jazz Theory Book (1995).
 */
export interface LineRow {
  readonly name: string;
  readonly line: LineName;
  /** `always`, or only at levels with moving lines. */
  readonly at: 'always' | 'moving levels';
  readonly place: 'octave' | 'inside';
  readonly when:
    | {
        readonly kind: 'held';
        readonly families: readonly ChordFamily[];
        readonly without?: readonly Degree[];
        readonly leadsUpFourth?: boolean;
      }
    | { readonly kind: 'to dominant'; readonly families: readonly ChordFamily[]; readonly without?: readonly Degree[] }
    | { readonly kind: 'two a bar by fifths' }
    | { readonly kind: 'loop'; readonly chords: readonly { readonly aboveTonic: number; readonly families: readonly ChordFamily[] }[] };
  /** Held: one note per half bar (per bar when it lasts four bars). To dominant: over the first chord. Loop: one for each chord. */
  readonly degrees: readonly Degree[];
}

const MAJOR: readonly ChordFamily[] = ['major'];
const MINOR: readonly ChordFamily[] = ['minor'];
const DOMINANT: readonly ChordFamily[] = ['dominant', 'augmented'];
const ANY_MAJOR: readonly ChordFamily[] = ['major', 'dominant'];

export const LINES: readonly LineRow[] = [
  {
    name: 'i–♭VII–♭VI–V7',
    line: 'guide',
    at: 'always',
    place: 'octave',
    degrees: ['b3', '3', '3', '3'],
    when: {
      kind: 'loop',
      chords: [
        { aboveTonic: 0, families: MINOR },
        { aboveTonic: 10, families: ANY_MAJOR },
        { aboveTonic: 8, families: ANY_MAJOR },
        { aboveTonic: 7, families: DOMINANT },
      ],
    },
  },
  {
    name: 'I–IV–V–IV',
    line: 'guide',
    at: 'always',
    place: 'octave',
    degrees: ['1', '5', '3', '5'],
    when: {
      kind: 'loop',
      chords: [
        { aboveTonic: 0, families: MAJOR },
        { aboveTonic: 5, families: MAJOR },
        { aboveTonic: 7, families: ANY_MAJOR },
        { aboveTonic: 5, families: MAJOR },
      ],
    },
  },
  {
    name: 'i–iv–V7',
    line: 'guide',
    at: 'always',
    place: 'octave',
    degrees: ['1', '5', '3'],
    when: {
      kind: 'loop',
      chords: [
        { aboveTonic: 0, families: MINOR },
        { aboveTonic: 5, families: MINOR },
        { aboveTonic: 7, families: DOMINANT },
      ],
    },
  },
  {
    name: '♭VI–V7',
    line: 'guide',
    at: 'always',
    place: 'octave',
    degrees: ['3', '3'],
    when: {
      kind: 'loop',
      chords: [
        { aboveTonic: 8, families: ANY_MAJOR },
        { aboveTonic: 7, families: DOMINANT },
      ],
    },
  },
  {
    name: 'i–V7',
    line: 'guide',
    at: 'always',
    place: 'octave',
    degrees: ['1', '3'],
    when: {
      kind: 'loop',
      chords: [
        { aboveTonic: 0, families: MINOR },
        { aboveTonic: 7, families: DOMINANT },
      ],
    },
  },
  {
    name: 'I–V7',
    line: 'guide',
    at: 'always',
    place: 'octave',
    degrees: ['1', '3'],
    when: {
      kind: 'loop',
      chords: [
        { aboveTonic: 0, families: MAJOR },
        { aboveTonic: 7, families: DOMINANT },
      ],
    },
  },
  {
    name: 'I7–IV7',
    line: 'guide',
    at: 'always',
    place: 'octave',
    degrees: ['b7', '3'],
    when: {
      kind: 'loop',
      chords: [
        { aboveTonic: 0, families: ['dominant'] },
        { aboveTonic: 5, families: ['dominant'] },
      ],
    },
  },
  { name: 'two a bar by 7→3', line: 'guide', at: 'always', place: 'octave', degrees: ['b7', '3'], when: { kind: 'two a bar by fifths' } },
  {
    name: 'ii–V with the minor line',
    line: 'minor',
    at: 'moving levels',
    place: 'octave',
    degrees: ['1', '7', 'b7', 'b7'],
    when: { kind: 'to dominant', families: MINOR, without: ['6'] },
  },
  {
    name: 'held minor 1–7–♭7–6',
    line: 'minor',
    at: 'moving levels',
    place: 'octave',
    degrees: ['1', '7', 'b7', '6'],
    when: { kind: 'held', families: MINOR },
  },
  {
    name: 'held minor 5–♭6–6–♭6',
    line: 'minor',
    at: 'moving levels',
    place: 'octave',
    degrees: ['5', 'b6', '6', 'b6'],
    when: { kind: 'held', families: MINOR },
  },
  {
    name: 'held minor 1–7–♭7–6 inside',
    line: 'minor',
    at: 'moving levels',
    place: 'inside',
    degrees: ['1', '7', 'b7', '6'],
    when: { kind: 'held', families: MINOR },
  },
  {
    name: 'held major 5–♯5–6–♭7',
    line: 'major',
    at: 'moving levels',
    place: 'octave',
    degrees: ['5', '#5', '6', 'b7'],
    when: { kind: 'held', families: MAJOR, without: ['7'], leadsUpFourth: true },
  },
  {
    name: '6/9 vamp 5–6',
    line: 'vamp',
    at: 'moving levels',
    place: 'octave',
    degrees: ['5', '6', '5', '6'],
    when: { kind: 'held', families: MAJOR },
  },
  {
    name: 'held major 1–7–6–7',
    line: 'major',
    at: 'moving levels',
    place: 'octave',
    degrees: ['1', '7', '6', '7'],
    when: { kind: 'held', families: MAJOR },
  },
  {
    name: 'dominant vamp 5–6–♭7–6',
    line: 'vamp',
    at: 'moving levels',
    place: 'octave',
    degrees: ['5', '6', 'b7', '6'],
    when: { kind: 'held', families: ['dominant'], without: ['b9', '#9', 'b13', '#5', 'b5'] },
  },
];

/** What a line asks of the hand over part of a chord. */
export interface LinePull {
  readonly row: LineRow;
  readonly degree: Degree;
  /** Which note of the line it is, from 0: strokes of one chord with different indexes belong to different hand positions. */
  readonly index: number;
}

/** The pull of a line on a stroke: the span whose chord it takes, and the tick from which that chord counts for it. */
export type PullAt = (span: HarmonySpan, harmonicTick: number) => LinePull | undefined;

/**
 * Chooses a row for every chord: dance loops first, then cadences, then held chords; `choice` goes through the rows that apply
 * to the same held chord. Chords without a row follow the guide tones by the search alone.
 */
export function planLines(
  timeline: HarmonicTimeline,
  options: { readonly movingLines: boolean; readonly choice: number; readonly halfBarTicks: number; readonly loops: boolean },
): PullAt {
  const rows = LINES.filter((row) => row.at === 'always' || options.movingLines);
  const chosen = new Map<HarmonySpan, { readonly row: LineRow; readonly degrees: readonly Degree[]; readonly unit: number }>();
  const sounding = timeline.spans.filter((span) => span.chord);
  const at = (index: number): HarmonySpan | undefined => (timeline.closed ? sounding[index % sounding.length] : sounding[index]);
  if (options.loops) for (const row of rows) if (row.when.kind === 'loop') matchLoop(row, row.when.chords, sounding, at, chosen);
  sounding.forEach((span, index) => {
    const halves = Math.round((span.end - span.tick) / options.halfBarTicks);
    const held = rows.filter((row) => applies(row, span, at(index + 1), at(index + sounding.length - 1), halves, sounding.length));
    const row = held[options.choice % Math.max(held.length, 1)];
    if (!row || (chosen.has(span) && (row.at === 'always' || halves < 4))) return;
    const unit = halves >= 8 ? 2 * options.halfBarTicks : options.halfBarTicks;
    chosen.set(span, { row, unit, degrees: row.when.kind === 'to dominant' && halves < 4 ? ['1', 'b7'] : row.degrees });
  });
  return (span, harmonicTick) => {
    const plan = chosen.get(span);
    if (!plan) return undefined;
    const index = Math.max(0, Math.floor((harmonicTick - span.tick) / plan.unit));
    const degree = plan.degrees[index % plan.degrees.length];
    return degree ? { row: plan.row, degree, index } : undefined;
  };
}

type Chosen = Map<HarmonySpan, { readonly row: LineRow; readonly degrees: readonly Degree[]; readonly unit: number }>;

function matchLoop(
  row: LineRow,
  wanted: readonly { readonly aboveTonic: number; readonly families: readonly ChordFamily[] }[],
  sounding: readonly HarmonySpan[],
  at: (index: number) => HarmonySpan | undefined,
  chosen: Chosen,
): void {
  sounding.forEach((_, start) => {
    const spans = wanted.map((__, offset) => at(start + offset));
    if (new Set(spans).size !== wanted.length) return;
    const fits = spans.every((span, offset) => {
      const want = wanted[offset];
      if (!span?.chord || !want || chosen.has(span)) return false;
      return mod12(span.chord.rootPc - pcOf(span.key.tonic)) === want.aboveTonic && want.families.includes(span.chord.family);
    });
    if (!fits) return;
    spans.forEach((span, offset) => {
      const degree = row.degrees[offset];
      if (span && degree) chosen.set(span, { row, degrees: [degree], unit: Number.POSITIVE_INFINITY });
    });
  });
}

function applies(
  row: LineRow,
  span: HarmonySpan,
  next: HarmonySpan | undefined,
  before: HarmonySpan | undefined,
  halves: number,
  count: number,
): boolean {
  const chord = span.chord;
  if (!chord) return false;
  const { when } = row;
  if (when.kind === 'held') {
    if (halves < 4 || !when.families.includes(chord.family)) return false;
    if (when.without?.some((degree) => has(chord, degree))) return false;
    return !when.leadsUpFourth || (count > 1 && next?.chord?.rootPc === mod12(chord.rootPc + 5));
  }
  if (when.kind === 'to dominant') {
    if (when.without?.some((degree) => has(chord, degree))) return false;
    return (
      halves >= 2 &&
      count > 1 &&
      when.families.includes(chord.family) &&
      isDominant(next?.chord) &&
      next?.chord?.rootPc === mod12(chord.rootPc + 5)
    );
  }
  if (when.kind === 'two a bar by fifths') {
    return (
      halves === 1 &&
      count > 1 &&
      has(chord, 'b7') &&
      next?.chord?.rootPc === mod12(chord.rootPc + 5) &&
      before !== next &&
      span.tick % 1920 === 0
    );
  }
  return false;
}

const isDominant = (chord: Chord | null | undefined): boolean => chord?.family === 'dominant';
const has = (chord: Chord, degree: Degree): boolean => chord.tones.some((tone) => tone.degree === degree);
