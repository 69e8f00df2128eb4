import type { Degree } from '../../vocabulary';
import type { Chord } from '../chord/chord';
import { diatonicPcs } from '../pitch/key';
import { degreeSemitones, mod12, pcOf } from '../pitch/spell';
import { LINES, type LineRow, THIRD_OF_V } from './lines';
import { barAt, type HarmonicTimeline, type HarmonyBar, type HarmonySpan } from './timeline';

/** What a line asks of the hand over part of a chord. */
export interface LinePull {
  readonly row: LineRow;
  readonly degree: Degree;
  /** All that the line sounds while this chord lasts. */
  readonly within: readonly Degree[];
  /** Which note of the line it is, from 0: strokes of one chord with different indexes belong to different hand positions. */
  readonly index: number;
}

/** The pull of a line on a stroke: the span whose chord it takes, and the tick from which that chord counts for it. */
export type PullAt = (span: HarmonySpan, harmonicTick: number) => LinePull | undefined;

/**
 * Chooses a row for every chord: dance loops first, then cadences, then held chords; `choice` 0 takes the first row that applies, others
 * go through the rows of a held chord and leave cadences to the search. Chords without a row follow the guide tones by the search alone.
 */
export function planLines(
  timeline: HarmonicTimeline,
  options: {
    readonly movingIn: (bar: HarmonyBar) => boolean;
    readonly choice: number;
    readonly halfBarTicks: number;
    readonly loops: boolean;
  },
): PullAt {
  const chosen = new Map<HarmonySpan, { readonly row: LineRow; readonly degrees: readonly Degree[]; readonly unit: number }>();
  const sounding = timeline.spans.filter((span) => span.chord);
  const at = (index: number): HarmonySpan | undefined => (timeline.closed ? sounding[index % sounding.length] : sounding[index]);
  for (const row of LINES) if (row.when.kind === 'written over one root') matchWritten(row, sounding, at, chosen);
  if (options.loops) for (const row of LINES) if (row.when.kind === 'loop') matchLoop(row, row.when, sounding, at, chosen);
  sounding.forEach((span, index) => {
    const halves = Math.round((span.end - span.tick) / options.halfBarTicks);
    const bar = barAt(timeline, span.tick);
    const moving = bar !== undefined && options.movingIn(bar);
    const held = LINES.filter(
      (row) =>
        (moving || row.at === 'always') &&
        applies(row, span, { next: at(index + 1), after: at(index + 2), before: at(index + sounding.length - 1) }, halves, sounding.length),
    );
    const row = choiceOf(held, options.choice);
    if (!row || chosen.get(span)?.row === THIRD_OF_V || (chosen.has(span) && (row.at === 'always' || halves < 4))) return;
    const unit = halves >= 8 && row.degrees.length <= 4 ? 2 * options.halfBarTicks : options.halfBarTicks;
    const falls = row.when.kind === 'to dominant';
    chosen.set(span, { row, unit, degrees: falls && halves < 4 ? ['1', 'b7'] : row.degrees });
    const next = at(index + 1);
    if (falls && next && !chosen.has(next))
      chosen.set(next, { row: THIRD_OF_V, unit: Number.POSITIVE_INFINITY, degrees: THIRD_OF_V.degrees });
  });
  return (span, harmonicTick) => {
    const plan = chosen.get(span);
    if (!plan) return undefined;
    const index = Math.max(0, Math.floor((harmonicTick - span.tick) / plan.unit));
    const degree = plan.degrees[index % plan.degrees.length];
    return degree ? { row: plan.row, degree, within: plan.degrees, index } : undefined;
  };
}

/** Cadences have one line or none; of the lines of a held chord each is taken in turn, then none. */
function choiceOf(held: readonly LineRow[], choice: number): LineRow | undefined {
  const [first] = held;
  if (first?.when.kind === 'held') return held[choice];
  return choice === 0 ? first : undefined;
}

type Chosen = Map<HarmonySpan, { readonly row: LineRow; readonly degrees: readonly Degree[]; readonly unit: number }>;

function matchLoop(
  row: LineRow,
  { chords: wanted, returns }: Extract<LineRow['when'], { readonly kind: 'loop' }>,
  sounding: readonly HarmonySpan[],
  at: (index: number) => HarmonySpan | undefined,
  chosen: Chosen,
): void {
  sounding.forEach((_, start) => {
    const spans = wanted.map((__, offset) => at(start + offset));
    if (new Set(spans).size !== wanted.length || (returns && at(start + wanted.length)?.symbol !== spans[0]?.symbol)) return;
    const fits = spans.every((span, offset) => {
      const want = wanted[offset];
      const degree = row.degrees[offset];
      if (!span?.chord || !want || !degree || chosen.has(span) || !has(span.chord, degree)) return false;
      return mod12(span.chord.rootPc - pcOf(span.key.tonic)) === want.aboveTonic && want.families.includes(span.chord.family);
    });
    if (!fits) return;
    spans.forEach((span, offset) => {
      const degree = row.degrees[offset];
      if (span && degree) chosen.set(span, { row, degrees: [degree], unit: Number.POSITIVE_INFINITY });
    });
  });
}

/** Consecutive chords over one root of which each holds its note of the line, and the note before it no longer. */
function matchWritten(
  row: LineRow,
  sounding: readonly HarmonySpan[],
  at: (index: number) => HarmonySpan | undefined,
  chosen: Chosen,
): void {
  sounding.forEach((_, start) => {
    const spans = row.degrees.map((__, offset) => at(start + offset));
    const root = spans[0]?.chord?.rootPc;
    const fits =
      new Set(spans).size === spans.length &&
      spans.every((span, offset) => {
        const degree = row.degrees[offset];
        return span?.chord && degree && !chosen.has(span) && span.chord.rootPc === root && has(span.chord, degree);
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
  { next, after, before }: { readonly [place in 'next' | 'after' | 'before']: HarmonySpan | undefined },
  halves: number,
  count: number,
): boolean {
  const chord = span.chord;
  if (!chord) return false;
  const { when } = row;
  if (when.kind === 'held') {
    if (halves < 4 || !when.families.includes(chord.family)) return false;
    if (when.without?.some((degree) => has(chord, degree))) return false;
    if (when.fourBars && halves < 8) return false;
    if (when.inKey && !row.degrees.every((degree) => has(chord, degree) || inKey(span, degree))) return false;
    if (when.onTonic && !isMinorTonic(span)) return false;
    // A minor chord with its sixth in the key, held as a mode of its own, takes the second as a tune note.
    if (when.dorianOnly && !isDorian(span)) return false;
    return !when.leadsUpFourth || (count > 1 && next?.chord?.rootPc === mod12(chord.rootPc + 5));
  }
  if (when.kind === 'to dominant') {
    if (when.without?.some((degree) => has(chord, degree)) || (when.holds && !has(chord, when.holds))) return false;
    return (
      after?.symbol !== span.symbol &&
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

/** True for a minor seventh chord whose root is the second degree of its major key, or the tonic of a key that is written major there. */
const isDorian = (span: HarmonySpan): boolean =>
  span.chord !== null &&
  has(span.chord, 'b7') &&
  diatonicPcs(span.key).has(mod12(span.chord.rootPc + 9)) &&
  diatonicPcs(span.key).has(mod12(span.chord.rootPc + 2));

const inKey = (span: HarmonySpan, degree: Degree): boolean =>
  span.chord !== null && diatonicPcs(span.key).has(mod12(span.chord.rootPc + degreeSemitones[degree]));

/** True for i of a minor key and vi of a major one. */
const isMinorTonic = ({ chord, key }: HarmonySpan): boolean => chord?.rootPc === mod12(pcOf(key.tonic) + (key.mode === 'minor' ? 0 : 9));
