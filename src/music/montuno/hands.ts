import type { BassStroke, Hands, PianoStroke } from '../../vocabulary';
import { degreeSemitones, mod12 } from '../pitch/spell';
import type { ShapeNote } from './shapes';
import type { Sketch } from './sketch';
import { type Placing, rightHand, strokesOf } from './strokes';

/** Lowest thumb-line note from which the left hand may play two octaves below: with a bass, nothing of the piano goes under G2 (common practice, no source). */
export const WIDE_FROM = 67;

/** Both hands of a figure. */
export interface TwoHands {
  readonly rightHand: readonly PianoStroke[];
  readonly leftHand: readonly PianoStroke[];
}

/** Gives the sketched figure to the hands. `bass` is what the left hand plays when it takes the bass over. */
export function giveToHands(sketches: readonly Sketch[], hands: Hands, placing: Placing, bass: readonly BassStroke[]): TwoHands {
  const right = rightHand(sketches, placing);
  switch (hands) {
    case 'right':
      return { rightHand: right, leftHand: [] };
    case 'left':
      return { rightHand: [], leftHand: strokesOf(sketches, placing, (sketch) => below(sketch, 12), leftRole) };
    case 'tumbao':
      return { rightHand: right, leftHand: bass.map(asPiano) };
    case 'wide':
      return {
        rightHand: right,
        leftHand: strokesOf(
          sketches,
          placing,
          (sketch) => (placing.tonicMidi + sketch.octave.pitch >= WIDE_FROM ? shifted(sketch.notes, 24) : below(sketch, 12)),
          leftRole,
        ),
      };
    case 'tenths':
      return { rightHand: right, leftHand: strokesOf(sketches, placing, tenthBelow, leftRole) };
    default:
      return { rightHand: right, leftHand: strokesOf(sketches, placing, (sketch) => below(sketch, 12), leftRole) };
  }
}

const leftRole = ({ role }: Sketch): Sketch['role'] => (role === 'inner' || role === 'octave' || role === 'chord' ? 'single' : role);

/** The lower octave note, or the lowest inner note, so many semitones lower; devices that lift the right hand leave the left where it is. */
function below(sketch: Sketch, semitones: number): readonly ShapeNote[] {
  const [lowest] = sketch.notes;
  return lowest ? [{ pitch: lowest.pitch - sketch.lift - semitones, degree: lowest.degree }] : [];
}

const shifted = (notes: readonly ShapeNote[], semitones: number): readonly ShapeNote[] =>
  notes.map((note) => ({ pitch: note.pitch - semitones, degree: note.degree }));

/** The chord tone nearest to a tenth below the octave line; under inner notes the same note as in `double`. */
function tenthBelow(sketch: Sketch): readonly ShapeNote[] {
  const chord = sketch.planned.span.chord;
  if (!chord || sketch.role === 'inner' || sketch.role === 'approach') return below(sketch, 12);
  const line = sketch.octave.pitch - sketch.lift;
  const root = line - degreeSemitones[sketch.octave.degree];
  const choices = chord.tones.flatMap(({ degree, semitones }) =>
    [13, 14, 15, 16, 17, 18].filter((gap) => mod12(line - gap - root - semitones) === 0).map((gap) => ({ gap, degree })),
  );
  choices.sort((a, b) => Math.abs(a.gap - 15.4) - Math.abs(b.gap - 15.4));
  const [best] = choices;
  return best ? [{ pitch: line - best.gap, degree: best.degree }] : below(sketch, 12);
}

/** A bass note struck by the left hand. */
const asPiano = (stroke: BassStroke): PianoStroke => ({ ...stroke, role: stroke.role === 'approach' ? 'approach' : 'single' });
