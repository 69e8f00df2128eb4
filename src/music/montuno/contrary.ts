import { cheapestPath } from '../harmony/cheapest-path';
import { degreeSemitones, mod12 } from '../pitch/spell';
import type { PlannedStroke } from './plan';
import type { ShapeNote } from './shapes';
import type { Sketch } from './sketch';

/** Contrary motion: the left hand's line goes down where the right hand's goes up, through chord tones (common practice, no source; named in E. Villafranca's lesson notes). */

/** How far below the right hand's line the left one stays. */
const GAP = { from: 8, to: 24 } as const;
const COSTS = { sameWay: 8, leap: [1, 0, 0, 1, 3, 5, 9, 12], outOfReach: 30, unison: 12 } as const;

interface Step {
  readonly note: ShapeNote;
  /** The right hand's line at this stroke. */
  readonly line: number;
}

/** The left hand's note under each stroke of the line; strokes that are not part of the line have none. */
export function contraryLine(sketches: readonly Sketch[]): ReadonlyMap<PlannedStroke, ShapeNote> {
  const line = sketches.filter(({ role, planned }) => (role === 'octave' || role === 'chord') && planned.span.chord);
  const layers = line.map(candidates);
  const { choice } = cheapestPath<Step>({
    layers,
    cost: ({ note, line: above }) => (mod12(above - note.pitch) === 0 ? COSTS.unison : 0),
    step: (from, to) => {
      const left = to.note.pitch - from.note.pitch;
      const right = to.line - from.line;
      const sameWay = right !== 0 && (left === 0 || Math.sign(left) === Math.sign(right));
      return (COSTS.leap[Math.abs(left)] ?? COSTS.outOfReach) + (sameWay ? COSTS.sameWay : 0);
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

function candidates({ planned, octave }: Sketch): Step[] {
  const chord = planned.span.chord;
  const tones = chord?.tones ?? [];
  const root = octave.pitch - degreeSemitones[octave.degree];
  const steps: Step[] = [];
  for (let gap = GAP.from; gap <= GAP.to; gap++) {
    const pitch = octave.pitch - gap;
    const own = tones.find(({ semitones }) => mod12(pitch - root - semitones) === 0);
    if (own) steps.push({ note: { pitch, degree: own.degree }, line: octave.pitch });
  }
  return steps.length > 0 ? steps : [{ note: { pitch: octave.pitch - 12, degree: octave.degree }, line: octave.pitch }];
}

/** The left hand's note under inner notes of the right: the chord tone a third to a sixth above its own line that lies nearest to a fourth. */
export function insideOf(sketch: Sketch, under: ShapeNote): ShapeNote {
  const tones = sketch.planned.span.chord?.tones ?? [];
  const root = sketch.octave.pitch - degreeSemitones[sketch.octave.degree];
  const above = [3, 4, 5, 6, 7, 8, 9].flatMap((gap) =>
    tones.filter(({ semitones }) => mod12(under.pitch + gap - root - semitones) === 0).map(({ degree }) => ({ gap, degree })),
  );
  const [best] = above.sort((a, b) => Math.abs(a.gap - 5) - Math.abs(b.gap - 5));
  return best ? { pitch: under.pitch + best.gap, degree: best.degree } : under;
}
