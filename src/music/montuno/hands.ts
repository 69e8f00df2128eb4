import type { BassStroke, Hands, PianoStroke, Stretch } from '../../vocabulary';
import { degreeSemitones, mod12 } from '../pitch/spell';
import type { LeftPlan } from './left-hand';
import { leftLine } from './left-line';
import type { ShapeNote } from './shapes';
import type { Sketch } from './sketch';
import { type Placing, strokesOf } from './strokes';

/** Lowest thumb-line note from which the left hand may play two octaves below: with a bass, nothing of the piano goes under G2 (common practice, no source). */
export const WIDE_FROM = 67;

/** Lowest note of a left hand that has a line of its own while a bass plays: C3. */
const LEFT_FLOOR = 48;

/** Both hands of a figure. */
export interface TwoHands {
  readonly rightHand: readonly PianoStroke[];
  readonly leftHand: readonly PianoStroke[];
}

/** How the hands are given the figure. */
export interface HandOptions {
  readonly hands: Hands;
  readonly stretch: Stretch;
  /** What the left hand plays when it takes the bass over. */
  readonly bass: readonly BassStroke[];
  /** What cells with a left hand of their own give it, in bars that have one. */
  readonly leftPlan: LeftPlan;
}

/** Gives the sketched figure to the hands. */
export function giveToHands(sketches: readonly Sketch[], options: HandOptions, placing: Placing): TwoHands {
  const right = strokesOf(sketches, placing, (sketch) => withinStretch(sketch.notes, sketch, options.stretch));
  if (options.hands === 'right') return { rightHand: right, leftHand: [] };
  if (options.hands === 'tumbao') return { rightHand: right, leftHand: options.bass.map((stroke) => asPiano(stroke, placing.lowest)) };
  const own = options.leftPlan.strokes(placing);
  if (options.hands === 'left') {
    const whole = strokesOf(sketches.map(unlifted), placing, (sketch) => withinStretch(lowered(sketch.notes, 12), sketch, options.stretch));
    return { rightHand: [], leftHand: whole };
  }
  const follows = sketches.filter(({ planned }) => !options.leftPlan.has(planned.bar)).map(unlifted);
  const lifted = new Set(sketches.filter(({ lift }) => lift >= 12).map(({ planned }) => planned));
  const left = [...strokesOf(follows, placing, leftNotes(follows, lifted, options, placing), leftRole), ...own].sort(
    (a, b) => a.tick - b.tick,
  );
  return { rightHand: right, leftHand: left };
}

/** What the left hand strikes under each sketch (whose own lift has been taken back). */
function leftNotes(
  sketches: readonly Sketch[],
  lifted: ReadonlySet<Sketch['planned']>,
  { hands, stretch }: HandOptions,
  placing: Placing,
): (sketch: Sketch, index: number) => readonly ShapeNote[] {
  if (hands === 'wide') {
    const lowest = Math.min(...new Set(sketches.map((sketch) => placing.tonicMidi + sketch.octave.pitch)));
    // Decided once, so that the texture does not change from stroke to stroke.
    return lowest >= WIDE_FROM - 2 && lowest - 24 >= placing.lowest
      ? (sketch, index) => withinStretch(aboveMud(sketch, sketches[index + 1] ?? sketch, placing), sketch, stretch)
      : (sketch) => (lifted.has(sketch.planned) ? withinStretch(lowered(lowTexture(sketch), 12), sketch, stretch) : below(sketch));
  }
  if (hands === 'tenths' || hands === 'contrary') {
    const { tonicMidi, timeline } = placing;
    const line = leftLine(sketches, hands, LEFT_FLOOR - tonicMidi, mod12(tonicMidi), timeline.closed);
    return (sketch) => {
      const note = line.get(sketch.planned);
      return note ? [note] : below(sketch);
    };
  }
  return below;
}

const leftRole = ({ role }: Sketch): Sketch['role'] => (role === 'inner' || role === 'octave' || role === 'chord' ? 'single' : role);

/** The lower octave note, or the lowest inner note, an octave lower. */
function below(sketch: Sketch): readonly ShapeNote[] {
  const [lowest] = sketch.notes;
  return lowest ? [{ pitch: lowest.pitch - 12, degree: lowest.degree }] : [];
}

/** Two octaves down a whole chord is mud, so the left hand gives its octave alone; octaves and inner pairs are doubled as they are. */
const lowTexture = ({ role, notes, octave }: Sketch): readonly ShapeNote[] =>
  role === 'chord' ? [octave, { ...octave, pitch: octave.pitch + 12 }] : notes;

/** Two octaves lower; of an octave that would reach under G2 while a bass plays the thumb's note alone, and so of an approach to it. */
function aboveMud(sketch: Sketch, next: Sketch, { tonicMidi }: Placing): readonly ShapeNote[] {
  const notes = lowered(lowTexture(sketch), 24);
  const { octave } = sketch.role === 'approach' ? next : sketch;
  return octave.pitch + tonicMidi < WIDE_FROM && notes.length > 1 && sketch.role !== 'inner' ? notes.slice(1) : notes;
}

const lowered = (notes: readonly ShapeNote[], semitones: number): readonly ShapeNote[] =>
  notes.map((note) => ({ pitch: note.pitch - semitones, degree: note.degree }));

/** The octave device lifts the right hand alone, so the left hand plays from the figure as it was; half steps out move both hands. */
function unlifted(sketch: Sketch): Sketch {
  const octaves = Math.floor(sketch.lift / 12) * 12;
  if (octaves === 0) return sketch;
  const lift = sketch.lift - octaves;
  return {
    ...sketch,
    lift,
    device: lift === 0 ? null : 'half-step-out',
    notes: lowered(sketch.notes, octaves),
    octave: { ...sketch.octave, pitch: sketch.octave.pitch - octaves },
  };
}

/**
 * What a hand that does not reach an octave plays instead: the thumb line with the highest inner note within a sixth above it, or the
 * line alone. Wider stretches play the notes as they are.
 */
function withinStretch(notes: readonly ShapeNote[], sketch: Sketch, stretch: Stretch): readonly ShapeNote[] {
  if (stretch !== 'less than an octave') return notes;
  const [low] = notes;
  if (!low) return notes;
  const near = notes.filter(({ pitch }) => pitch - low.pitch <= SMALL_HAND);
  if (sketch.role !== 'octave') return near;
  const chord = sketch.planned.span.chord;
  const above = chord?.tones
    .map(({ semitones, degree }) => ({ gap: mod12(semitones - degreeSemitones[low.degree]), degree }))
    .filter(({ gap }) => gap >= 3 && gap <= SMALL_HAND)
    .sort((a, b) => a.gap - b.gap)[0];
  return above ? [low, { pitch: low.pitch + above.gap, degree: above.degree }] : [low];
}

/** A major sixth: what fits under a hand that does not reach an octave (common practice, no source). */
const SMALL_HAND = 9;

/** A bass note struck by the left hand, an octave up where the instrument does not go down to it. */
function asPiano(stroke: BassStroke, lowest: number): PianoStroke {
  const role = stroke.role === 'approach' ? ('approach' as const) : ('single' as const);
  const [midi = 0] = stroke.midi;
  if (midi >= lowest) return { ...stroke, role };
  return {
    ...stroke,
    role,
    midi: [midi + 12],
    names: stroke.names.map((name) => name.replace(/\d+$/, (octave) => String(Number(octave) + 1))),
  };
}
