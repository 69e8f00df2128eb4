import { cheapestPath } from '../harmony/cheapest-path';
import { degreeSemitones, mod12 } from '../pitch/spell';
import type { PlannedStroke } from './plan';
import type { ShapeNote } from './shapes';
import type { Sketch } from './sketch';

/** Contrary motion: the left hand's line goes down where the right hand's goes up, through chord tones (common practice, no source; named in E. Villafranca's lesson notes). */

/** How far below the right hand's line the left one stays. */
const GAP = { from: 8, to: 24 } as const;
const COSTS = { sameWay: 8, restless: 6, leap: [0, 0, 0, 1, 3, 6, 12, 14], outOfReach: 30, unison: 12 } as const;

interface Step {
  readonly note: ShapeNote;
  /** The right hand's line at this stroke. */
  readonly line: number;
}

/** The left hand's note under each stroke of the line, not below `floor` (semitones above the tonic); strokes that are not part of the line have none. */
export function contraryLine(sketches: readonly Sketch[], floor: number): ReadonlyMap<PlannedStroke, ShapeNote> {
  const line = sketches.filter(({ role, planned }) => (role === 'octave' || role === 'chord') && planned.span.chord);
  const layers = line.map((sketch) => candidates(sketch, floor));
  const { choice } = cheapestPath<Step>({
    layers,
    cost: ({ note, line: above }) => (mod12(above - note.pitch) === 0 ? COSTS.unison : 0),
    step: (from, to) => {
      const left = to.note.pitch - from.note.pitch;
      const right = to.line - from.line;
      const sameWay = right !== 0 && (left === 0 || Math.sign(left) === Math.sign(right));
      const restless = right === 0 && left !== 0;
      return (COSTS.leap[Math.abs(left)] ?? COSTS.outOfReach) + (sameWay ? COSTS.sameWay : 0) + (restless ? COSTS.restless : 0);
    },
    closed: false,
  });
  return new Map(
    line.flatMap(({ planned }, index) => {
      const chosen = layers[index]?.[choice[index] ?? 0];
      return chosen ? [[planned, chosen.note] as const] : [];
    }),
  );
}

function candidates({ planned, octave }: Sketch, floor: number): Step[] {
  const chord = planned.span.chord;
  const tones = chord?.tones ?? [];
  const root = octave.pitch - degreeSemitones[octave.degree];
  const steps: Step[] = [];
  for (let gap = GAP.from; gap <= GAP.to; gap++) {
    const pitch = octave.pitch - gap;
    if (pitch < floor) continue;
    const own = tones.find(({ semitones }) => mod12(pitch - root - semitones) === 0);
    if (own) steps.push({ note: { pitch, degree: own.degree }, line: octave.pitch });
  }
  return steps.length > 0 ? steps : [{ note: { pitch: octave.pitch - 12, degree: octave.degree }, line: octave.pitch }];
}

/** Under inner notes the left hand stays on its own line, on the chord tone nearest to it where the chord has changed. */
export function stayOn(sketch: Sketch, under: ShapeNote): ShapeNote {
  const root = sketch.octave.pitch - degreeSemitones[sketch.octave.degree];
  const tones = sketch.planned.span.chord?.tones ?? [];
  const near = [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6].flatMap((step) =>
    tones
      .filter(({ semitones }) => mod12(under.pitch + step - root - semitones) === 0)
      .map(({ degree }) => ({ pitch: under.pitch + step, degree })),
  );
  return near[0] ?? under;
}
