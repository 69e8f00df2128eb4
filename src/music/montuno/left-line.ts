import { cheapestPath } from '../harmony/cheapest-path';
import { diatonicPcs } from '../pitch/key';
import { degreeSemitones, mod12 } from '../pitch/spell';
import { levelRow } from './levels';
import type { PlannedStroke } from './plan';
import type { ShapeNote } from './shapes';
import { degreeAt, type Sketch } from './sketch';

/**
 * Left hands with a line of their own under the right hand's octaves: in tenths and sixths along with it (décimas: from memory), or against
 * it (contrary motion: named in E. Villafranca's lesson notes; how is common practice, no source). Both are searched as one line over the
 * whole figure, through chord tones; tensions stay in the right hand, because low down they hide the chord.
 */

/** How the left hand's line goes with the right hand's. */
export type LeftMotion = 'tenths' | 'contrary';

/** How far below the right hand's line the left one may lie. */
const GAPS: Readonly<Record<LeftMotion, readonly number[]>> = {
  tenths: [16, 15, 9, 8],
  contrary: Array.from({ length: 17 }, (_, place) => place + 8),
};
const COSTS = { sameWay: 8, restless: 6, leap: [0, 0, 0, 1, 3, 6, 12, 14], outOfReach: 30, unison: 12, sixth: 2 } as const;

interface Step {
  readonly note: ShapeNote;
  /** The right hand's line at this stroke. */
  readonly line: number;
}

/** The note that the left hand strikes under each stroke of the figure, not below `floor` (semitones above the tonic). */
export function leftLine(
  sketches: readonly Sketch[],
  motion: LeftMotion,
  floor: number,
  tonicPc: number,
  closed: boolean,
): ReadonlyMap<PlannedStroke, ShapeNote> {
  const line = sketches.filter(({ role, planned }) => (role === 'octave' || role === 'chord') && planned.span.chord);
  const layers = line.map((sketch) => candidates(sketch, motion, floor));
  const { choice } = cheapestPath<Step>({
    layers,
    cost: (step) => ownCost(step, motion),
    step: (from, to) => moveCost(from, to, motion),
    closed: false,
  });
  const notes = new Map<PlannedStroke, ShapeNote>();
  line.forEach(({ planned }, index) => {
    const chosen = layers[index]?.[choice[index] ?? 0];
    if (chosen) notes.set(planned, chosen.note);
  });
  return withOthers(sketches, notes, motion, tonicPc, closed);
}

function ownCost({ note, line }: Step, motion: LeftMotion): number {
  if (motion === 'contrary') return mod12(line - note.pitch) === 0 ? COSTS.unison : 0;
  return line - note.pitch > 12 ? 0 : line - note.pitch === 12 ? COSTS.unison : COSTS.sixth;
}

function moveCost(from: Step, to: Step, motion: LeftMotion): number {
  const left = to.note.pitch - from.note.pitch;
  const right = to.line - from.line;
  const leap = COSTS.leap[Math.abs(left)] ?? COSTS.outOfReach;
  const restless = right === 0 && left !== 0 ? COSTS.restless : 0;
  if (motion === 'tenths') return leap + restless;
  return leap + restless + (right !== 0 && (left === 0 || Math.sign(left) === Math.sign(right)) ? COSTS.sameWay : 0);
}

/** Degrees that a low line may hold: the chord itself. */
const PLAIN = ['1', '2', 'b3', '3', '4', '5', '#5', '6', 'b7', '7', 'bb7'];

function candidates(sketch: Sketch, motion: LeftMotion, floor: number): Step[] {
  const { planned, octave } = sketch;
  const tones = planned.span.chord?.tones ?? [];
  const fifth = tones.some(({ degree }) => degree === '5');
  const steps = GAPS[motion].flatMap((gap): Step[] => {
    const pitch = octave.pitch - gap;
    const own = tones.find(({ semitones }) => mod12(pitch - rootOf(sketch) - semitones) === 0);
    const plain = own && (PLAIN.includes(own.degree) || (own.degree === 'b5' && !fifth));
    return plain && pitch >= floor ? [{ note: noteAt(sketch, pitch), line: octave.pitch }] : [];
  });
  return steps.length > 0 ? steps : [{ note: { pitch: octave.pitch - 12, degree: octave.degree }, line: octave.pitch }];
}

/** The root that the hands hear: a figure gone outside takes its chord with it. */
const rootOf = ({ octave, lift }: Sketch): number => octave.pitch - degreeSemitones[octave.degree] + lift;
/** A note by its pitch, named over the chord as written. */
const noteAt = (sketch: Sketch, pitch: number): ShapeNote => ({
  pitch,
  degree: degreeAt(sketch.planned, mod12(pitch - rootOf(sketch) + sketch.lift)),
});

/** Inner notes stay on the line; an approach steps into the line's next note, with the right hand or against it. */
function withOthers(
  sketches: readonly Sketch[],
  line: ReadonlyMap<PlannedStroke, ShapeNote>,
  motion: LeftMotion,
  tonicPc: number,
  closed: boolean,
): ReadonlyMap<PlannedStroke, ShapeNote> {
  const all = new Map(line);
  const first = sketches.map(({ planned }) => line.get(planned)).find((note) => note !== undefined);
  const last = [...sketches].reverse().find(({ planned }) => line.has(planned));
  let under = (closed && last ? line.get(last.planned) : undefined) ?? first;
  sketches.forEach((sketch, index) => {
    const own = line.get(sketch.planned);
    if (own) under = own;
    else if (sketch.role === 'approach') {
      const goal = [...sketches.slice(index + 1), ...(closed ? sketches : [])].find(({ planned }) => line.has(planned));
      const into = goal && line.get(goal.planned);
      if (goal && into) all.set(sketch.planned, approachTo(sketch, goal, into, motion, tonicPc));
    } else if (under) all.set(sketch.planned, stayOn(sketch, under));
  });
  return all;
}

function approachTo(sketch: Sketch, goal: Sketch, into: ShapeNote, motion: LeftMotion, tonicPc: number): ShapeNote {
  const right = Math.sign(goal.octave.pitch - sketch.octave.pitch) || 1;
  const way = motion === 'contrary' ? -right : right;
  const { span, level } = sketch.planned;
  const scale = diatonicPcs(span.key);
  const steps = levelRow(level).approach === 'chromatic' ? [1, 2] : [2, 1];
  const inKey = steps.find((size) => scale.has(mod12(into.pitch - way * size + tonicPc)));
  const pitch = into.pitch - way * (levelRow(level).approach === 'chromatic' ? 1 : (inKey ?? 1));
  return { pitch, degree: degreeAt(sketch.planned, mod12(pitch + tonicPc - (span.chord?.rootPc ?? 0))) };
}

/** Under inner notes the left hand stays on its own line, on the chord tone nearest to it where the chord has changed. */
function stayOn(sketch: Sketch, under: ShapeNote): ShapeNote {
  const tones = sketch.planned.span.chord?.tones ?? [];
  const near = [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6]
    .map((step) => under.pitch + step)
    .find((pitch) => tones.some(({ semitones }) => mod12(pitch - rootOf(sketch) - semitones) === 0));
  return near === undefined ? under : noteAt(sketch, near);
}
