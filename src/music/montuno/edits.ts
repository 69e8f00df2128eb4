import { TICKS_PER_STEP } from '../../vocabulary';
import type { HarmonicTimeline } from '../harmony/timeline';
import { degreeSemitones, mod12 } from '../pitch/spell';
import { degreeAt, type Sketch } from './sketch';

/** A change that a player made to one stroke by hand. Bars count sounding bars from 0, steps eighths of the bar from 0. */
export type FigureEdit =
  | { readonly bar: number; readonly step: number; readonly change: 'off' }
  | { readonly bar: number; readonly step: number; readonly change: 'on'; readonly as: 'octave' | 'inner' }
  | { readonly bar: number; readonly step: number; readonly change: 'pitch'; readonly semitones: number }
  | { readonly bar: number; readonly step: number; readonly change: 'length'; readonly steps: number };

/** An edit that could not be done, and why. */
export interface UnfitEdit {
  readonly edit: FigureEdit;
  readonly why: 'rest' | 'outside the keys';
}

/** The sketches with every edit done, in the order they were made. An edit on a rest, or where the band does not play, changes nothing and is given back. */
export function applyEdits(
  sketches: readonly Sketch[],
  edits: readonly FigureEdit[],
  timeline: HarmonicTimeline,
): { readonly sketches: readonly Sketch[]; readonly unfit: readonly UnfitEdit[] } {
  let figure = sketches;
  const unfit: UnfitEdit[] = [];
  for (const edit of edits) {
    if (fits(figure, edit, timeline)) figure = applied(figure, edit, timeline);
    else if (timeline.bars.some(({ index }) => index === edit.bar)) unfit.push({ edit, why: 'rest' });
  }
  return { sketches: figure, unfit };
}

/** True when an edit finds the stroke it changes (or, for `on`, a place to put one). */
function fits(sketches: readonly Sketch[], edit: FigureEdit, timeline: HarmonicTimeline): boolean {
  const bar = timeline.bars.find(({ index }) => index === edit.bar);
  if (bar?.playing !== 'band' || edit.step * TICKS_PER_STEP >= bar.ticks) return false;
  const struck = sketches.some(({ planned }) => planned.bar.index === edit.bar && planned.step === edit.step);
  return edit.change === 'on' ? !struck && sketches.length > 0 : struck;
}

function applied(sketches: readonly Sketch[], edit: FigureEdit, timeline: HarmonicTimeline): readonly Sketch[] {
  const here = ({ planned }: Sketch): boolean => planned.bar.index === edit.bar && planned.step === edit.step;
  if (edit.change === 'off') return sketches.filter((sketch) => !here(sketch));
  if (edit.change === 'on') return withAdded(sketches, edit, timeline);
  return sketches.map((sketch) => (here(sketch) ? changed(sketch, edit) : sketch));
}

function changed(sketch: Sketch, edit: Extract<FigureEdit, { readonly change: 'pitch' | 'length' }>): Sketch {
  if (edit.change === 'length') return { ...sketch, lengthTicks: Math.max(1, edit.steps) * TICKS_PER_STEP };
  const moved = (note: Sketch['octave']) => ({
    pitch: note.pitch + edit.semitones,
    degree: degreeAt(sketch.planned, mod12(degreeSemitones[note.degree] + edit.semitones)),
  });
  return { ...sketch, notes: sketch.notes.map(moved), octave: moved(sketch.octave), edited: true };
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
    edited: true,
  };
  return [...sketches, added].sort((a, b) => a.planned.tick - b.planned.tick);
}
