import { type Device, type Level, type Side, TICKS_PER_STEP } from '../../vocabulary';
import { sideOfStep, sideSteps, stepInSide } from '../harmony/bar-steps';
import { pianoLead } from '../harmony/lead';
import { barAt, type HarmonicTimeline, type HarmonyBar, type HarmonySpan, spanAt } from '../harmony/timeline';
import { levelRow } from './levels';
import type { Pattern } from './patterns';

/**
 * What a planned stroke is to be: `O` octave, `i` inner notes, `c` both, `k` both without the upper note, `a` approach into the next octave, `s` the lower octave
 * note alone, `l` `m` `h` `t` the hand's notes one by one from the lowest to the top.
 */
export type CellRole = 'O' | 'i' | 'c' | 'k' | 'a' | 's' | 'l' | 'm' | 'h' | 't';
const ROLES = 'Oickaslmht';
const isRole = (letter: string | undefined): letter is CellRole => letter !== undefined && letter !== '' && ROLES.includes(letter);

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
  readonly level: Level;
  /** Louder or softer than usual, in velocity steps. */
  readonly loudness: number;
  /** True when the bar's pattern makes a tune of octaves. */
  readonly riff: boolean;
  /** The device that added it, or null. */
  readonly device: Device | null;
}

/** What is played in a bar: its pattern, whether the pattern's opening cell stands here, and how busy it is. */
export interface BarPlan {
  readonly pattern: Pattern;
  readonly opening: boolean;
  readonly level: Level;
  readonly loudness: number;
  readonly devices: readonly Device[];
}
/** What a bar plays. */
export type PlanOf = (bar: HarmonyBar) => BarPlan;

/** The strokes of a figure over a timeline, in order: rhythm, roles and harmony, no pitches. */
export function planStrokes(timeline: HarmonicTimeline, planOf: PlanOf): PlannedStroke[] {
  const pushed = pushTicks(timeline);
  const planned: PlannedStroke[] = [];
  for (const bar of timeline.bars) {
    if (bar.playing !== 'band') continue;
    const plan = planOf(bar);
    for (const place of placesIn(timeline, bar, plan)) {
      const tick = bar.tick + place.step * TICKS_PER_STEP + place.later;
      // A push takes the place of the beat it anticipates, and of any stroke of the cell in its own place.
      if (pushed.has(tick) || pushed.has(tick - TICKS_PER_STEP)) continue;
      const stroke = withHarmony(timeline, bar, tick, place, plan);
      if (stroke) planned.push(stroke);
    }
  }
  for (const [tick, span] of pushed) {
    const bar = barAt(timeline, tick);
    if (!bar) continue;
    const step = (tick - bar.tick) / TICKS_PER_STEP;
    const { level, loudness } = planOf(bar);
    planned.push({
      tick,
      bar,
      step,
      side: sideOfStep(bar, step),
      role: 'c',
      span,
      leadTicks: 240,
      hit: true,
      rings: true,
      level,
      loudness,
      riff: false,
      device: null,
    });
  }
  return planned.sort((a, b) => a.tick - b.tick);
}

interface Place {
  readonly step: number;
  /** Ticks after the step: 120 for the second of two sixteenths. */
  readonly later: number;
  readonly role: CellRole;
  readonly endsOnFour: boolean;
  readonly hit: boolean;
  readonly held: boolean;
  readonly device: Device | null;
}

const place = (step: number, role: CellRole, more: Partial<Place> = {}): Place => ({
  step,
  role,
  later: 0,
  endsOnFour: false,
  hit: false,
  held: false,
  device: null,
  ...more,
});

function placesIn(timeline: HarmonicTimeline, bar: HarmonyBar, plan: BarPlan): Place[] {
  const hits = bar.hits.map(({ step, held }) => place(step, 'c', { hit: true, held }));
  const firstHit = Math.min(...bar.hits.map(({ step }) => step));
  // A hit late in the bar leaves the groove before it standing, up to the beat before.
  if (hits.length > 0) return [...(firstHit >= 4 ? cellPlaces(bar, plan).filter(({ step }) => step <= firstHit - 2) : []), ...hits];
  const cell = cellPlaces(bar, plan);
  const places = [
    ...cell,
    ...(levelRow(plan.level).everyChord ? missingChords(timeline, bar, plan, cell) : []),
    ...addedBy(bar, cell, plan.devices),
  ];
  return places.sort((a, b) => a.step - b.step || a.later - b.later);
}

function cellPlaces(bar: HarmonyBar, { pattern, opening }: BarPlan): Place[] {
  const half = sideSteps(bar);
  const places: Place[] = [];
  for (let step = 0; step * TICKS_PER_STEP < bar.ticks; step++) {
    const row = sideOfStep(bar, step) === 3 ? pattern.three : opening && pattern.opening ? pattern.opening : pattern.two;
    const at = stepInSide(bar, step);
    const role = row.roles[at];
    if (isRole(role)) places.push(place(step, role, { endsOnFour: at === 6 && half === 8 && row.roles[7] === '.' }));
  }
  return places;
}

/**
 * Strokes that devices add. An extra note fills beat 3 of the 3-side, where it speaks for the right side; double notes put two
 * sixteenths in place of an inner eighth of the 2-side, once in two cycles (from memory).
 */
function addedBy(bar: HarmonyBar, cell: readonly Place[], devices: readonly Device[]): Place[] {
  if (sideSteps(bar) !== 8 || bar.kind !== 'groove') return [];
  const added: Place[] = [];
  if (devices.includes('extra-note') && bar.side === 3 && bar.cycleStep % 8 === 0 && !cell.some(({ step }) => step === 4))
    added.push(place(4, 'i', { device: 'extra-note' }));
  const cycle = Math.floor(bar.tick / (1920 * 2));
  if (devices.includes('double-notes') && bar.side === 2 && cycle % 2 === 1) {
    const inner = cell
      .filter(({ role, step }) => role === 'i' && !cell.some((other) => other.step === step + 1 && other.role === 'i'))
      .at(-1);
    if (inner) added.push(place(inner.step, 'i', { later: 120, device: 'double-notes' }));
  }
  return added;
}

/** Strokes added so that a chord of a half bar or longer sounds: an eighth before it. */
function missingChords(timeline: HarmonicTimeline, bar: HarmonyBar, plan: BarPlan, cell: readonly Place[]): Place[] {
  if (bar.chords.length < 2) return [];
  const sounds = (span: HarmonySpan) =>
    cell.some((own) => withHarmony(timeline, bar, bar.tick + own.step * TICKS_PER_STEP, own, plan)?.span === span);
  const added: Place[] = [];
  for (const written of bar.chords) {
    const span = spanAt(timeline, written.tick);
    if (!span?.chord || span.tick !== written.tick || written.tick === bar.tick || written.push) continue;
    if (Math.min(span.end, bar.tick + bar.ticks) - written.tick < bar.ticks / 2 && span.end - written.tick < 960) continue;
    if (sounds(span)) continue;
    const step = (written.tick - bar.tick) / TICKS_PER_STEP - 1;
    if (!cell.some((own) => own.step === step)) added.push(place(step, 'c'));
  }
  return added;
}

function withHarmony(timeline: HarmonicTimeline, bar: HarmonyBar, tick: number, at: Place, plan: BarPlan): PlannedStroke | undefined {
  const half = sideSteps(bar);
  const offbeat = half === 8 ? at.step % 2 === 1 : at.step % 3 === 2;
  const row = sideOfStep(bar, at.step) === 3 ? plan.pattern.three : plan.pattern.two;
  const onTime = row.onTime === true && !at.hit;
  const lead = pianoLead(timeline, tick - at.later, { offbeat: offbeat && !onTime, endsOnFour: at.endsOnFour && !onTime });
  if (!lead?.span.chord) return undefined;
  const last = half === 8 ? at.step === 7 : at.step === 5;
  return {
    tick,
    bar,
    step: at.step,
    side: sideOfStep(bar, at.step),
    role: at.role,
    span: lead.span,
    leadTicks: lead.ticks,
    hit: at.hit,
    rings: at.held || (!at.hit && !onTime && (lead.ticks > 0 || last || at.endsOnFour)),
    level: plan.level,
    loudness: plan.loudness,
    riff: plan.pattern.riff === true,
    device: at.device,
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
