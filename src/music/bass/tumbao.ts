import { type BassRole, type BassStroke, type ClaveKind, type Degree, TICKS_PER_STEP } from '../../vocabulary';
import type { Chord } from '../chord/chord';
import { strokeName } from '../clave/patterns';
import { sideOfStep, stepFromThreeSide } from '../harmony/bar-steps';
import { cheapestPath, FORBIDDEN } from '../harmony/cheapest-path';
import { barAt, type HarmonicTimeline, type HarmonyBar, type HarmonySpan, silenceAfter } from '../harmony/timeline';
import { diatonicPcs, nameInKey } from '../pitch/key';
import { degreeName, mod12, simplestName, spellMidi } from '../pitch/spell';
import type { BassFeel } from './patterns';
import { type PlannedBass, planBass } from './plan-bass';

/**
 * The bass line: rhythm from a pattern, pitches by exact search. Range of the four-string bass with its open E1 to G3 (string
 * tuning, from memory); root, fifth or octave with least motion, leaps over an octave never.
 */
const BASS_RANGE = { from: 28, to: 55 } as const;

/** What the search pays for, in whole points (common practice, no source). */
const COSTS = {
  leap: [6, 0, 0, 1, 1, 1, 4, 2, 10, 12, 16, 18, 8],
  longDrop: 24,
  /** Comfortable part of the range, and the cost of each semitone outside it. */
  comfortable: { from: 33, to: 48 },
  perSemitoneOutside: 2,
  role: { root: 0, fifth: 0, octave: 5, third: 9, approach: 4 } satisfies Record<BassRole, number>,
} as const;

interface Candidate {
  readonly midi: number;
  readonly role: BassRole;
  readonly degree: Degree;
}

/** The bass part over a timeline. `feelOf` says how a bar is accompanied. */
export function bassLine(timeline: HarmonicTimeline, claveKind: ClaveKind, feelOf: (bar: HarmonyBar) => BassFeel): BassStroke[] {
  const planned = planBass(timeline, feelOf);
  const repeated = planned.filter((stroke) => !stroke.firstPassOnly);
  const layers = repeated.map(candidates);
  const { choice } = cheapestPath<Candidate>({ layers, cost: unaryCost, step: stepCost, closed: timeline.closed });
  const chosen = new Map(repeated.map((stroke, index) => [stroke, layers[index]?.[choice[index] ?? 0]]));
  const pitched = planned.map((stroke, index) => ({
    stroke,
    candidate: chosen.get(stroke) ?? opening(stroke, planned[index + 1], chosen),
  }));
  return pitched.flatMap(({ stroke, candidate }, index): BassStroke[] => {
    if (!candidate) return [];
    const before = pitched[index - 1];
    return [
      bassStroke(
        stroke,
        candidate,
        before?.candidate ? { stroke: before.stroke, candidate: before.candidate } : undefined,
        lengthOf(planned, index, timeline),
        timeline,
        claveKind,
      ),
    ];
  });
}

function candidates({ span, aim, next }: PlannedBass): Candidate[] {
  const chord = span.chord;
  if (!chord) return [];
  const wanted: { readonly pc: number; readonly role: BassRole; readonly degree: Degree }[] = [
    { pc: chord.bassPc, role: aim === 'root' ? 'root' : 'octave', degree: bassDegree(chord) },
  ];
  if (aim !== 'root') {
    // Over a written bass nothing leaves it but for its own fifth, and that only where the chord holds it.
    const written = chord.bass !== null;
    const fifth = chord.tones.find(({ degree, pc }) => (written ? pc === mod12(chord.bassPc + 7) : degree === '5' || degree === 'b5'));
    if (fifth && fifth.pc !== chord.bassPc) wanted.unshift({ pc: fifth.pc, role: 'fifth', degree: fifth.degree });
    const third = chord.tones.find(({ degree }) => degree === '3' || degree === 'b3');
    if (third && !written && fifth && third.pc !== chord.bassPc) wanted.push({ pc: third.pc, role: 'third', degree: third.degree });
  }
  if (aim === 'fifth or approach' && next?.chord && next.chord.bassPc !== chord.bassPc) wanted.push(...approaches(next, span));
  const all: Candidate[] = [];
  for (const { pc, role, degree } of wanted) {
    for (let midi = BASS_RANGE.from; midi <= BASS_RANGE.to; midi++) if (mod12(midi) === pc) all.push({ midi, role, degree });
  }
  return all;
}

/** Notes that step into the next root: the half step below it, and steps of the key above and below (common practice, no source). */
function approaches(next: HarmonySpan, here: HarmonySpan): { readonly pc: number; readonly role: BassRole; readonly degree: Degree }[] {
  const goal = next.chord?.bassPc ?? 0;
  const scale = diatonicPcs(here.key);
  return [-1, -2, 1, 2].flatMap((step) => {
    const pc = mod12(goal + step);
    if (step !== -1 && !scale.has(pc)) return [];
    return [{ pc, role: 'approach' as const, degree: DEGREES[mod12(pc - (here.chord?.rootPc ?? 0))] ?? '1' }];
  });
}

const DEGREES: readonly Degree[] = ['1', 'b9', '9', 'b3', '3', '4', '#4', '5', '#5', '6', 'b7', '7'];

/** The degree that the written bass is above the root. */
function bassDegree(chord: Chord): Degree {
  const semitones = mod12(chord.bassPc - chord.rootPc);
  return chord.tones.find((tone) => tone.semitones === semitones)?.degree ?? DEGREES[semitones] ?? '1';
}

function unaryCost({ midi, role }: Candidate): number {
  const { from, to } = COSTS.comfortable;
  const outside = Math.max(from - midi, midi - to, 0);
  return COSTS.role[role] + outside * COSTS.perSemitoneOutside;
}

function stepCost(from: Candidate, to: Candidate): number {
  const leap = Math.abs(to.midi - from.midi);
  if (leap > 12) return FORBIDDEN;
  return (COSTS.leap[leap] ?? 20) + (from.midi - to.midi > 7 ? COSTS.longDrop : 0);
}

/** The pitch of a root that is struck the first time only: the one nearest to what follows. */
function opening(
  stroke: PlannedBass,
  next: PlannedBass | undefined,
  chosen: ReadonlyMap<PlannedBass, Candidate | undefined>,
): Candidate | undefined {
  const goal = (next && chosen.get(next)?.midi) ?? 40;
  return candidates(stroke).sort((a, b) => Math.abs(a.midi - goal) - Math.abs(b.midi - goal) || a.midi - b.midi)[0];
}

function lengthOf(planned: readonly PlannedBass[], index: number, timeline: HarmonicTimeline): number {
  const stroke = planned[index];
  if (!stroke) return TICKS_PER_STEP;
  const round = timeline.closed ? planned.find((other) => !other.firstPassOnly) : undefined;
  const next = planned[index + 1]?.tick ?? (round ? round.tick + timeline.toTick - timeline.fromTick : timeline.toTick);
  const silence = silenceAfter(timeline, stroke.tick) ?? Number.POSITIVE_INFINITY;
  return Math.max(TICKS_PER_STEP, Math.min(next, silence, stroke.tick + 1920) - stroke.tick);
}

/** A little air before the next note; the note on 4 rings through the silent downbeat (Manuel, 1985, for the tie). */
const GAP_TICKS = 40;

function bassStroke(
  planned: PlannedBass,
  candidate: Candidate,
  before: { readonly stroke: PlannedBass; readonly candidate: Candidate } | undefined,
  durationTicks: number,
  timeline: HarmonicTimeline,
  kind: ClaveKind,
): BassStroke {
  const { tick, bar, step, span, leadTicks } = planned;
  const { midi, role, degree } = candidate;
  const name = nameOf(planned, candidate);
  const at = tick + leadTicks;
  return {
    tick,
    durationTicks,
    soundingTicks: Math.max(durationTicks - GAP_TICKS, 120),
    midi: [midi],
    names: [spellMidi(midi, name)],
    velocity: role === 'root' ? 96 : 86,
    role,
    chord: span.symbol,
    degrees: [degree],
    leadTicks,
    lift: 0,
    line: null,
    device: null,
    firstPassOnly: planned.firstPassOnly,
    reason: {
      step,
      side: sideOfStep(bar, step),
      anticipatesBar: leadTicks > 0 ? (barAt(timeline, at)?.index ?? null) : null,
      anticipatesWithinBar: leadTicks > 0 && at < bar.tick + bar.ticks,
      move: before
        ? {
            semitones: midi - before.candidate.midi,
            fromName: nameOf(before.stroke, before.candidate),
            fromDegree: before.candidate.degree,
            fromChord: before.stroke.span.symbol,
          }
        : null,
      claveStroke: strokeName(kind, '3-2', stepFromThreeSide(bar, step)),
      fallback: null,
    },
  };
}

function nameOf({ span }: PlannedBass, { midi, role, degree }: Candidate): string {
  const chord = span.chord;
  if (!chord) return 'C';
  if (role === 'approach') {
    const pc = mod12(midi);
    // Outside the key only the half step below the next root is used, so it rises.
    const name = diatonicPcs(span.key).has(pc) ? nameInKey(pc, span.key) : simplestName(pc, 'sharp');
    return chord.tones.find((tone) => tone.pc === pc)?.name ?? name;
  }
  if (chord.bass && degree === bassDegree(chord)) return chord.bass;
  return degreeName(chord.root, degree).name;
}
