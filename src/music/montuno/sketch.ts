import type { Degree, Device, LineName, PianoRole, StrokeReason } from '../../vocabulary';
import { diatonicPcs } from '../pitch/key';
import { mod12 } from '../pitch/spell';
import { levelRow } from './levels';
import type { PlannedStroke } from './plan';
import type { Shape, ShapeNote } from './shapes';
import type { HandPosition } from './voice-leading';

/** A stroke with pitches counted from the tonic, before the figure is placed on the keyboard. */
export interface Sketch {
  readonly planned: PlannedStroke;
  readonly role: PianoRole;
  /** What the right hand strikes, ascending; an octave's upper note included. */
  readonly notes: readonly ShapeNote[];
  /** The lower note of the hand's octave at this moment, struck or not. */
  readonly octave: ShapeNote;
  readonly line: LineName | null;
  readonly device: Device | null;
  /** Semitones by which a device moved it. */
  readonly lift: number;
  readonly fallback: StrokeReason['fallback'];
  /** For an approach note: whether it rises into its goal. */
  readonly rises?: boolean;
  /** Written length set by hand, in ticks. */
  readonly lengthTicks?: number;
  /** What a player has set by hand: its pitch or place, or no more than its length. */
  readonly edited?: 'pitch or place' | 'length';
}

/** Sketches of all planned strokes, in order. Approach strokes are left without a target only when nothing follows; they are dropped then. */
export function sketchStrokes(
  planned: readonly PlannedStroke[],
  positions: readonly HandPosition[],
  closed: boolean,
  tonicPc: number,
): Sketch[] {
  const held = new Map<number, Sketch>();
  for (const position of positions) {
    for (const index of position.strokes) {
      const stroke = planned[index];
      if (stroke) held.set(index, fromShape(stroke, position));
    }
  }
  const sketches: Sketch[] = [];
  let next = closed ? held.values().next().value : undefined;
  for (let index = planned.length - 1; index >= 0; index--) {
    const stroke = planned[index];
    const own = held.get(index);
    if (own) sketches.push(own);
    else if (stroke && next) sketches.push(approach(stroke, next, held.get(index - 1), tonicPc));
    next = own ?? next;
  }
  return sketches.reverse();
}

function fromShape(planned: PlannedStroke, { shape, pull, span }: HandPosition): Sketch {
  const common = {
    planned,
    octave: shape.octave,
    line: pull?.row.line ?? ('guide' as const),
    device: planned.device,
    lift: 0,
    fallback: null,
  };
  const power = span.chord?.family === 'power';
  const octaves = [shape.octave, above(shape.octave)];
  if (planned.role === 'k') return { ...common, role: 'chord', notes: [shape.octave, ...shape.inner] };
  if (planned.role === 'c') {
    return {
      ...common,
      role: 'chord',
      notes: [shape.octave, ...shape.inner, above(shape.octave)],
      fallback: shape.inner.length === 0 ? thin(power) : null,
    };
  }
  if (planned.role === 'O' || (planned.role === 'i' && shape.inner.length === 0)) {
    return { ...common, role: 'octave', notes: octaves, fallback: planned.role === 'i' ? thin(power) : null };
  }
  if (planned.role === 'i') return { ...common, role: 'inner', notes: shape.inner, fallback: power ? 'power chord' : null };
  return { ...common, role: 'single', notes: [singleNote(planned.role, shape)] };
}

/** One note of the hand: the lowest, the inner ones, the top. */
function singleNote(role: PlannedStroke['role'], shape: Shape): ShapeNote {
  if (role === 't') return above(shape.octave);
  if (role === 'm') return shape.inner[0] ?? shape.octave;
  if (role === 'h') return shape.inner.at(-1) ?? above(shape.octave);
  return shape.octave;
}

const thin = (power: boolean): StrokeReason['fallback'] => (power ? 'power chord' : 'no inner note fits');
const above = (note: ShapeNote): ShapeNote => ({ pitch: note.pitch + 12, degree: note.degree });

/**
 * The pickup on 4: an octave a step above or below the octave it leads into. Steps of the key come first (half steps outside it
 * where the level is chromatic), then chord tones of the chord that still sounds, then the side from which the line has not just
 * come (common practice, no source).
 */
function approach(planned: PlannedStroke, target: Sketch, before: Sketch | undefined, tonicPc: number): Sketch {
  const goal = target.octave.pitch;
  const into = target.planned.span.chord;
  const chromatic = levelRow(planned.level).approach === 'chromatic';
  const scale = diatonicPcs(planned.span.key);
  const root = planned.span.chord?.rootPc ?? 0;
  const tones = new Set((planned.span.chord?.tones ?? []).map((tone) => tone.pc));
  const cost = (pitch: number): number => {
    const pc = mod12(pitch + tonicPc);
    let points = 0;
    // From above onto the root that the bass already has, or by the major third into a minor one, it grates.
    if (pitch === goal + 1 && mod12(goal + tonicPc) === into?.bassPc) points += 7;
    if (into?.tones.some(({ degree }) => degree === 'b3') && mod12(pc - into.rootPc) === 4) points += 9;
    if (chromatic ? Math.abs(pitch - goal) !== 1 : !scale.has(pc)) points += 6;
    if (chromatic && scale.has(pc)) points += 2;
    if (!tones.has(pc)) points += 2;
    if (Math.abs(pitch - goal) === 2) points += 1;
    if (before && pitch === before.octave.pitch) points += 3;
    if (before && Math.sign(pitch - goal) !== Math.sign(before.octave.pitch - goal)) points += 1;
    return points;
  };
  const [pitch = goal - 1] = [goal - 1, goal + 1, goal - 2, goal + 2].sort((a, b) => cost(a) - cost(b));
  const note: ShapeNote = { pitch, degree: degreeAt(planned, mod12(pitch + tonicPc - root)) };
  return {
    planned,
    role: 'approach',
    notes: [note, above(note)],
    octave: note,
    line: target.line,
    device: null,
    lift: 0,
    fallback: null,
    rises: pitch < goal,
  };
}

const PLAIN_DEGREES: readonly Degree[] = ['1', 'b2', '2', 'b3', '3', '4', '#4', '5', '#5', '6', 'b7', '7'];

/** The degree that a pitch is over a chord: the chord's own name for it where it has one. */
export function degreeAt(planned: PlannedStroke, semitones: number): Degree {
  const own = planned.span.chord?.tones.find((tone) => tone.semitones === semitones);
  return own?.degree ?? PLAIN_DEGREES[semitones] ?? '1';
}
