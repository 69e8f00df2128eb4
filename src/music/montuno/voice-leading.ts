import type { Colour } from '../../vocabulary';
import { admittedTones } from '../harmony/admitted-tones';
import { cheapestPath, type Layers } from '../harmony/cheapest-path';
import type { LinePull, PullAt } from '../harmony/plan-lines';
import type { HarmonicTimeline, HarmonySpan } from '../harmony/timeline';
import { mod12, pcOf } from '../pitch/spell';
import { COSTS } from './costs';
import type { CellRole, PlannedStroke } from './plan';
import { type Shape, shapeStep, shapesOn } from './shapes';

/**
 * Voice leading: the shapes the hand takes, by exact search.
 *
 * Strokes that take the same chord (and the same note of a moving line) share one hand position. Each position offers every
 * shape that its chord admits; the cheapest way through all positions, seam included when the music goes round, is the figure.
 */

/** A run of strokes played from one hand position. */
export interface HandPosition {
  readonly span: HarmonySpan;
  readonly pull: LinePull | undefined;
  /** Indexes into the planned strokes. */
  readonly strokes: readonly number[];
  readonly shape: Shape;
}

/** The kind of degree on which a figure's octaves are asked to open, or null. */
export type Opening = 'third' | 'seventh' | 'body' | null;

/** What voice leading is asked to respect. */
export interface LeadingOptions {
  readonly colour: Colour;
  readonly pullAt: PullAt;
  readonly opening: Opening;
  /** Octave pitches that other figures over the same chords have used: this one keeps away from them. */
  readonly taken: ReadonlyMap<HarmonySpan, readonly number[]>;
  /** Tonic that pitches are counted from. */
  readonly tonicPc: number;
}

/** The hand positions of a planned figure, in order. Approach strokes belong to none: they are found afterwards. */
export function leadVoices(planned: readonly PlannedStroke[], timeline: HarmonicTimeline, options: LeadingOptions): HandPosition[] {
  const { runs, search } = voiceSearch(planned, timeline, options);
  const { choice } = cheapestPath(search);
  return runs.map((run, index) => {
    const shape = search.layers[index]?.[choice[index] ?? 0];
    if (!shape) throw new Error(`no shape for ${run.span.symbol}`);
    return { span: run.span, pull: run.pull, strokes: run.strokes, shape };
  });
}

/** What is searched: the runs of strokes, and for each of them the shapes on offer, with what they cost and what the way between them costs. */
export function voiceSearch(
  planned: readonly PlannedStroke[],
  timeline: HarmonicTimeline,
  options: LeadingOptions,
): { readonly runs: readonly Run[]; readonly search: Layers<Shape> } {
  const runs = runsOf(planned, options.pullAt, timeline);
  const nextSpan = followingSpans(timeline);
  const cache = new Map<string, readonly Shape[]>();
  const layers = runs.map((run) => {
    const next = nextSpan.get(run.span);
    const key = `${run.span.symbol}|${run.span.key.tonic}${run.span.key.mode}|${next?.symbol}|${run.sounds}|${run.pull?.row.name}|${run.pull?.degree}`;
    const known = cache.get(key);
    if (known) return known;
    const root = mod12((run.span.chord?.rootPc ?? 0) - options.tonicPc);
    const shapes = shapesOn({
      root,
      admitted: admittedTones(run.span, next, options.colour),
      colour: options.colour,
      sounds: run.sounds,
      pull: run.pull,
    });
    cache.set(key, shapes);
    return shapes;
  });
  // A line in the octaves says itself how it opens.
  const taken = runs.map(({ span }) => options.taken.get(span));
  const opens = runs[0]?.pull?.row.place === 'octave' ? null : options.opening;
  const cost = (shape: Shape, layer: number): number => {
    const before = taken[layer] ?? [];
    const again = before.length === 0 ? 0 : before.filter((pitch) => pitch === shape.octave.pitch).length;
    return shape.cost + again * COSTS.sameAgain + (layer === 0 && opens && shape.octaveKind !== opens ? COSTS.offTheOpening : 0);
  };
  return { runs, search: { layers, cost, step: shapeStep, closed: timeline.closed } };
}

/** Strokes that share a hand position, before its shape is found. */
export interface Run {
  readonly span: HarmonySpan;
  readonly pull: LinePull | undefined;
  readonly strokes: number[];
  sounds: 'both' | 'octave' | 'inner';
}

function runsOf(planned: readonly PlannedStroke[], pullAt: PullAt, timeline: HarmonicTimeline): Run[] {
  const runs: Run[] = [];
  planned.forEach((stroke, index) => {
    if (stroke.role === 'a') return;
    const pull = pullAt(stroke.span, harmonicTick(stroke, timeline));
    const last = runs.at(-1);
    if (last && last.span === stroke.span && last.pull?.index === pull?.index) last.strokes.push(index);
    else runs.push({ span: stroke.span, pull, strokes: [index], sounds: 'octave' });
  });
  for (const run of runs) {
    const roles = new Set(run.strokes.map((index) => planned[index]?.role));
    const outer = ['O', 'c', 'k', 's', 'l', 't'].some((role) => roles.has(role as CellRole));
    const inside = ['i', 'c', 'k', 'm', 'h'].some((role) => roles.has(role as CellRole));
    run.sounds = outer && inside ? 'both' : inside ? 'inner' : 'octave';
  }
  return runs;
}

/** Where a stroke counts in the harmony: an offbeat directly before a half bar belongs to that half bar. */
function harmonicTick(stroke: PlannedStroke, timeline: HarmonicTimeline): number {
  const early = stroke.step % 4 === 3 ? 240 : 0;
  const tick = stroke.tick + Math.max(stroke.leadTicks, early);
  // Past the end of a loop the stroke belongs to the start of the first chord.
  return tick >= timeline.toTick && timeline.closed && stroke.span.tick < stroke.tick ? stroke.span.tick + (tick - timeline.toTick) : tick;
}

function followingSpans(timeline: HarmonicTimeline): Map<HarmonySpan, HarmonySpan | undefined> {
  const sounding = timeline.spans.filter((span) => span.chord);
  return new Map(sounding.map((span, index) => [span, sounding[index + 1] ?? (timeline.closed ? sounding[0] : undefined)]));
}

/** Pitch class of the tonic that a form's pitches are counted from. */
export const tonicOf = (timeline: HarmonicTimeline): number => pcOf(timeline.bars[0]?.key.tonic ?? 'C');
