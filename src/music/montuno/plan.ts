import { type Side, TICKS_PER_STEP } from '../../vocabulary';
import { sideOfStep, sideSteps, stepInSide } from '../harmony/bar-steps';
import { pianoLead } from '../harmony/lead';
import { barAt, type HarmonicTimeline, type HarmonyBar, type HarmonySpan, spanAt } from '../harmony/timeline';
import { type Cell, cell, type Pattern } from './cells';

/** What a planned stroke is to be: `O` octave, `i` inner notes, `c` both, `a` approach into the next octave. */
export type CellRole = 'O' | 'i' | 'c' | 'a';

/** A stroke before it has pitches: where, which role, whose chord. */
export interface PlannedStroke {
  readonly tick: number;
  readonly bar: HarmonyBar;
  /** Step of the bar, 0 = beat 1. */
  readonly step: number;
  readonly side: Side;
  readonly role: CellRole;
  readonly span: HarmonySpan;
  readonly leadTicks: 0 | 240 | 480;
  /** True when the whole band strikes it: a written hit or push. */
  readonly hit: boolean;
  /** True when it rings to the next stroke instead of being short. */
  readonly rings: boolean;
}

/** Which pattern a bar uses; bars of one section may open with another 2-side cell. */
export type PatternOf = (bar: HarmonyBar) => { readonly pattern: Pattern; readonly opening: boolean };

/** True when every chord of a half bar or longer must sound even where the cell leaves it out (level 1). */
export interface PlanOptions {
  readonly patternOf: PatternOf;
  readonly everyChord: boolean;
}

/** The strokes of a figure over a timeline, in order: rhythm, roles and harmony, no pitches. */
export function planStrokes(timeline: HarmonicTimeline, options: PlanOptions): PlannedStroke[] {
  const pushed = pushTicks(timeline);
  const planned: PlannedStroke[] = [];
  for (const bar of timeline.bars) {
    if (bar.playing !== 'band') continue;
    const steps =
      bar.hits.length > 0
        ? hitSteps(bar)
        : [...cellSteps(bar, options), ...(options.everyChord ? missingChords(timeline, bar, options) : [])];
    for (const place of steps.sort((a, b) => a.step - b.step)) {
      const tick = bar.tick + place.step * TICKS_PER_STEP;
      // A push takes the place of the beat it anticipates, and of any stroke of the cell in its own place.
      if (pushed.has(tick) || pushed.has(tick - TICKS_PER_STEP)) continue;
      const stroke = withHarmony(timeline, bar, tick, place);
      if (stroke) planned.push(stroke);
    }
  }
  for (const [tick, span] of pushed) {
    const bar = barAt(timeline, tick);
    if (!bar) continue;
    const step = (tick - bar.tick) / TICKS_PER_STEP;
    planned.push({ tick, bar, step, side: sideOfStep(bar, step), role: 'c', span, leadTicks: 240, hit: true, rings: true });
  }
  return planned.sort((a, b) => a.tick - b.tick);
}

interface Place {
  readonly step: number;
  readonly role: CellRole;
  readonly endsOnFour: boolean;
  readonly hit: boolean;
  readonly held: boolean;
}

function cellSteps(bar: HarmonyBar, { patternOf }: PlanOptions): Place[] {
  const { pattern, opening } = patternOf(bar);
  const half = sideSteps(bar);
  const places: Place[] = [];
  for (let step = 0; step * TICKS_PER_STEP < bar.ticks; step++) {
    const side = sideOfStep(bar, step);
    const row: Cell = cell(side === 3 ? pattern.three : opening && pattern.opening ? pattern.opening : pattern.two);
    const at = stepInSide(bar, step);
    const role = row.roles[at];
    if (role === 'O' || role === 'i' || role === 'c' || role === 'a')
      places.push({ step, role, endsOnFour: at === 6 && half === 8 && row.roles[7] === '.', hit: false, held: false });
  }
  return places;
}

function hitSteps(bar: HarmonyBar): Place[] {
  return bar.hits.map(({ step, held }) => ({ step, role: 'c', endsOnFour: false, hit: true, held }));
}

/** Strokes that level 1 adds so that a chord of a half bar or longer sounds: an eighth before it, or on it at the start of the bar. */
function missingChords(timeline: HarmonicTimeline, bar: HarmonyBar, options: PlanOptions): Place[] {
  const planned = [...cellSteps(bar, options)];
  const sounds = (span: HarmonySpan) =>
    planned.some((place) => {
      const stroke = withHarmony(timeline, bar, bar.tick + place.step * TICKS_PER_STEP, place);
      return stroke?.span === span;
    });
  const added: Place[] = [];
  for (const written of bar.chords) {
    const span = spanAt(timeline, written.tick);
    if (!span?.chord || span.tick !== written.tick || written.tick === bar.tick || written.push) continue;
    if (Math.min(span.end, bar.tick + bar.ticks) - written.tick < bar.ticks / 2 && span.end - written.tick < 960) continue;
    if (sounds(span)) continue;
    const step = (written.tick - bar.tick) / TICKS_PER_STEP - 1;
    if (!planned.some((place) => place.step === step)) added.push({ step, role: 'c', endsOnFour: false, hit: false, held: false });
  }
  return added;
}

function withHarmony(timeline: HarmonicTimeline, bar: HarmonyBar, tick: number, place: Place): PlannedStroke | undefined {
  const half = sideSteps(bar);
  const offbeat = half === 8 ? place.step % 2 === 1 : place.step % 3 === 2;
  const lead = pianoLead(timeline, tick, { offbeat, endsOnFour: place.endsOnFour });
  if (!lead?.span.chord) return undefined;
  const last = half === 8 ? place.step === 7 : place.step === 5;
  return {
    tick,
    bar,
    step: place.step,
    side: sideOfStep(bar, place.step),
    role: place.role,
    span: lead.span,
    leadTicks: lead.ticks,
    hit: place.hit,
    rings: place.held || (!place.hit && (lead.ticks > 0 || last || place.endsOnFour)),
  };
}

/** Ticks at which a written push is struck (an eighth before its chord), with the span pushed. */
function pushTicks(timeline: HarmonicTimeline): Map<number, HarmonySpan> {
  const { fromTick, toTick, closed, spans } = timeline;
  const found = new Map<number, HarmonySpan>();
  for (const span of spans) {
    if (!span.push || !span.chord) continue;
    const tick = span.tick - TICKS_PER_STEP;
    if (tick >= fromTick) found.set(tick, span);
    else if (closed) found.set(toTick - TICKS_PER_STEP, span);
  }
  return found;
}
