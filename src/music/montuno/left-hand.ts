import { type Degree, type PianoStroke, type Stretch, TICKS_PER_STEP } from '../../vocabulary';
import type { Chord } from '../chord/chord';
import { strokeName } from '../clave/patterns';
import { sideOfStep, stepFromThreeSide, stepInSide } from '../harmony/bar-steps';
import { pianoLead } from '../harmony/lead';
import { type HarmonicTimeline, type HarmonyBar, type HarmonySpan, spanAt } from '../harmony/timeline';
import { degreeName, mod12, spellMidi } from '../pitch/spell';
import type { PlanOf } from './plan';
import type { ShapeNote } from './shapes';
import type { Placing } from './strokes';
import type { HandPosition } from './voice-leading';

/** The left hand of cells that give it a bar of its own. */
export interface LeftPlan {
  /** True for bars whose cell has a left hand. */
  readonly has: (bar: HarmonyBar) => boolean;
  readonly strokes: (placing: Placing) => PianoStroke[];
}

/** Where the root of a left hand of its own lies: C3 to B3, over the bass. Fifths of high roots go below them. */
const LOWEST_ROOT = 48;
const HIGH_ROOT = 53;

/** Plans the left hand of style cells: roots, fifths and tenths on the beats, or the octave line an octave down. */
export function planLeft(timeline: HarmonicTimeline, planOf: PlanOf, positions: readonly HandPosition[], stretch: Stretch): LeftPlan {
  const rolesAt = (bar: HarmonyBar, step: number): string => {
    const { pattern } = planOf(bar);
    return (sideOfStep(bar, step) === 3 ? pattern.three : pattern.two).left?.[stepInSide(bar, step)] ?? '.';
  };
  const has = (bar: HarmonyBar): boolean =>
    bar.kind === 'groove' && (planOf(bar).pattern.two.left ?? planOf(bar).pattern.three.left) !== undefined;
  const octaves = new Map<HarmonySpan, ShapeNote>();
  for (const { span, shape } of positions) if (!octaves.has(span)) octaves.set(span, shape.octave);
  return {
    has,
    strokes: (placing) =>
      timeline.bars.filter(has).flatMap((bar) => {
        let rooted: number | undefined;
        return Array.from({ length: bar.ticks / TICKS_PER_STEP }, (_, step) => step).flatMap((step) => {
          const role = rolesAt(bar, step);
          if (role === '.') return [];
          // A chord on a new root that begins within the bar is told by its root, not by its fifth.
          const root = spanAt(timeline, bar.tick + step * TICKS_PER_STEP)?.chord?.rootPc;
          const stroke = leftStroke(timeline, placing, bar, step, role === 'f' && root !== rooted ? 'r' : role, octaves, stretch);
          rooted = root;
          return stroke ? [stroke] : [];
        });
      }),
  };
}

function leftStroke(
  timeline: HarmonicTimeline,
  placing: Placing,
  bar: HarmonyBar,
  step: number,
  role: string,
  octaves: ReadonlyMap<HarmonySpan, ShapeNote>,
  stretch: Stretch,
): PianoStroke | undefined {
  const tick = bar.tick + step * TICKS_PER_STEP;
  const lead = pianoLead(timeline, tick, { offbeat: step % 2 === 1, endsOnFour: false });
  const chord = lead?.span.chord;
  if (!lead || !chord) return undefined;
  const notes = notesOf(role, chord, octaves.get(lead.span), placing, stretch);
  const next = role === 'o' ? 240 : 480;
  const midi = notes.map(({ midi: note }) => note);
  return {
    tick,
    durationTicks: next,
    soundingTicks: role === 'o' ? 180 : 440,
    midi,
    names: notes.map(({ midi: note, degree }) => spellMidi(note, degreeName(chord.root, degree).name)),
    velocity: step === 0 ? 84 : 74,
    role: notes.length > 1 ? 'chord' : 'single',
    chord: lead.span.symbol,
    degrees: notes.map(({ degree }) => degree),
    leadTicks: lead.ticks,
    lift: 0,
    line: null,
    device: null,
    firstPassOnly: false,
    reason: {
      step,
      side: sideOfStep(bar, step),
      anticipatesBar: null,
      anticipatesWithinBar: lead.ticks > 0,
      move: null,
      claveStroke: strokeName(placing.claveKind, '3-2', stepFromThreeSide(bar, step)),
      fallback: null,
    },
  };
}

function notesOf(
  role: string,
  chord: Chord,
  octave: ShapeNote | undefined,
  placing: Placing,
  stretch: Stretch,
): { readonly midi: number; readonly degree: Degree }[] {
  if (role === 'o' && octave) return [{ midi: placing.tonicMidi + octave.pitch - 12, degree: octave.degree }];
  const root = LOWEST_ROOT + mod12(chord.rootPc - LOWEST_ROOT);
  const fifth = chord.tones.find(({ degree }) => degree === '5' || degree === 'b5' || degree === '#5');
  if (role === 'f' && fifth) return [{ midi: root + fifth.semitones - (root >= HIGH_ROOT ? 12 : 0), degree: fifth.degree }];
  const low = { midi: root, degree: '1' as Degree };
  const third = chord.tones.find(({ degree }) => degree === '3' || degree === 'b3');
  return role === 'T' && third && stretch === 'tenth' ? [low, { midi: root + 12 + third.semitones, degree: third.degree }] : [low];
}
