import { type Side, TICKS_PER_STEP } from '../../vocabulary';
import { sideSteps } from '../harmony/bar-steps';
import type { HarmonicTimeline, HarmonyBar } from '../harmony/timeline';
import { degreeSemitones, mod12 } from '../pitch/spell';
import { degreeAt, type Sketch } from './sketch';

/**
 * A change that a player made to one stroke by hand. Bars count sounding bars from 0, steps eighths of the bar from 0. `side` is the side
 * that the bar was when it was changed: when the direction is exchanged, the change goes with its side to the other bar of the cycle.
 */
export type FigureEdit = { readonly bar: number; readonly step: number; readonly side?: Side } & (
  | { readonly change: 'off' }
  | { readonly change: 'on'; readonly as: 'octave' | 'inner' }
  | { readonly change: 'pitch'; readonly semitones: number }
  | { readonly change: 'length'; readonly steps: number }
);

/** An edit that could not be done as it was made, and why. */
export interface UnfitEdit {
  readonly edit: FigureEdit;
  readonly why: 'rest' | 'nothing struck' | 'struck already' | 'other side' | 'outside the keys';
}

/**
 * The sketches with every edit done, in the order they were made. One that finds nothing to change, lies on a rest or has no bar of its
 * side in its cycle changes nothing and is given back. `placed` says where the edits are that were done.
 */
export function applyEdits(
  sketches: readonly Sketch[],
  edits: readonly FigureEdit[],
  timeline: HarmonicTimeline,
): { readonly sketches: readonly Sketch[]; readonly unfit: readonly UnfitEdit[]; readonly placed: readonly FigureEdit[] } {
  let figure = sketches;
  const unfit: UnfitEdit[] = [];
  const placed: FigureEdit[] = [];
  for (const made of edits) {
    const bar = barOf(made, timeline);
    if (bar === undefined) continue;
    if (bar === null) {
      unfit.push({ edit: made, why: 'other side' });
      continue;
    }
    const edit = { ...made, bar: bar.index };
    const why = unfitness(figure, edit, bar);
    if (why === null) {
      figure = applied(figure, edit, timeline);
      placed.push(edit);
    } else unfit.push({ edit, why });
  }
  return { sketches: figure, unfit, placed };
}

/** The bar that an edit belongs to: its own, or its neighbour in the cycle where the sides are exchanged; null when no bar there has its side, undefined outside the range. */
function barOf({ bar, side }: FigureEdit, { bars }: HarmonicTimeline): HarmonyBar | null | undefined {
  const at = bars.findIndex(({ index }) => index === bar);
  const own = bars[at];
  if (!own || side === undefined || own.side === side) return own;
  const other = bars[own.cycleStep === 0 ? at + 1 : at - 1];
  const sameCycle = other && Math.abs(other.cycleStep - own.cycleStep) === sideSteps(own) && other.side === side;
  return sameCycle ? other : null;
}

/** Why an edit does not find the stroke it changes (or, for `on`, a place to put one); null when it does. */
function unfitness(sketches: readonly Sketch[], edit: FigureEdit, bar: HarmonyBar): UnfitEdit['why'] | null {
  if (bar.playing !== 'band' || edit.step * TICKS_PER_STEP >= bar.ticks) return 'rest';
  const struck = sketches.some(({ planned }) => planned.bar.index === edit.bar && planned.step === edit.step);
  if (edit.change === 'on') return struck ? 'struck already' : sketches.length > 0 ? null : 'rest';
  return struck ? null : 'nothing struck';
}

function applied(sketches: readonly Sketch[], edit: FigureEdit, timeline: HarmonicTimeline): readonly Sketch[] {
  const here = ({ planned }: Sketch): boolean => planned.bar.index === edit.bar && planned.step === edit.step;
  if (edit.change === 'off') return sketches.filter((sketch) => !here(sketch));
  if (edit.change === 'on') return withAdded(sketches, edit, timeline);
  return sketches.map((sketch) => (here(sketch) ? changed(sketch, edit) : sketch));
}

function changed(sketch: Sketch, edit: Extract<FigureEdit, { readonly change: 'pitch' | 'length' }>): Sketch {
  if (edit.change === 'length')
    return { ...sketch, lengthTicks: Math.max(1, edit.steps) * TICKS_PER_STEP, edited: sketch.edited ?? 'length' };
  const moved = (note: Sketch['octave']) => ({
    pitch: note.pitch + edit.semitones,
    degree: degreeAt(sketch.planned, mod12(degreeSemitones[note.degree] + edit.semitones)),
  });
  return { ...sketch, notes: sketch.notes.map(moved), octave: moved(sketch.octave), edited: 'pitch or place' };
}

/** A stroke switched on takes the shape of the hand at that moment: the stroke before it, or the one after. */
function withAdded(
  sketches: readonly Sketch[],
  edit: Extract<FigureEdit, { readonly change: 'on' }>,
  timeline: HarmonicTimeline,
): readonly Sketch[] {
  const bar = timeline.bars.find(({ index }) => index === edit.bar);
  if (!bar) return sketches;
  const tick = bar.tick + edit.step * TICKS_PER_STEP;
  const before = sketches.filter(({ planned }) => planned.tick < tick);
  const model =
    (edit.as === 'octave' ? undefined : [...before].reverse().find(({ role }) => role === 'inner')) ??
    [...before].reverse().find(({ role }) => role === 'octave' || role === 'chord') ??
    sketches[0];
  if (!model) return sketches;
  const inner = edit.as === 'inner' && model.role === 'inner';
  const planned = { ...model.planned, tick, bar, step: edit.step, leadTicks: 0 as const, rings: false, hit: false };
  const { octave } = model;
  const added: Sketch = {
    ...model,
    planned,
    role: inner ? 'inner' : 'octave',
    notes: inner ? model.notes : [octave, { ...octave, pitch: octave.pitch + 12 }],
    edited: 'pitch or place',
  };
  return [...sketches, added].sort((a, b) => a.planned.tick - b.planned.tick);
}
