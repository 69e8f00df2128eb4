import type { Score } from '../music/score';
import { assert, type BassStroke, fullBarTicks, LONGEST_LEAD_TICKS, type PianoStroke, stepsInCycle, TICKS_PER_STEP } from '../vocabulary';
import type { DraftEvent } from './draft-event';
import type { Feel } from './feel';
import { barOf, offsetTicks, STRAIGHT, stepFromTwoSide, voiceOf } from './feel';
import { finalStrokes } from './final-stroke';
import { percussionEvents } from './percussion-touch';
import type { PartName, Performance, PerformedEvent, Vamp } from './performance';
import { PARTS } from './performance';

/** How a score is to be played. */
export interface PerformOptions {
  /** Which hands of the piano sound. */
  readonly sounding: { readonly right: boolean; readonly left: boolean };
  /** What the pulse lane marks: 1 and 3, or all four. In 6/8 it marks the dotted beats either way. */
  readonly pulse: 'halves' | 'quarters';
  /** True adds a last stroke for everyone on the first tick after the last bar, and plays the form once. */
  readonly ending: boolean;
  /** Straight when missing. */
  readonly feel?: Feel;
  /** The open vamps of the score that are held until cued, each as one round (`roundOf`), ascending; none when missing. */
  readonly rounds?: readonly Score[];
}

/** How loud the unpitched parts are struck, 1 to 127 (common practice, no source: set by ear against the piano). */
const CLAVE_VELOCITY = 100;
const PULSE_VELOCITY = { high: 96, low: 80 } as const;
/** Unpitched sounds ring out by themselves; the step is their nominal length. */
const DRUM_TICKS = TICKS_PER_STEP;

/**
 * A score made into single sounds, one event a note, with the pulse lane added. Ids follow notated place, part and
 * pitch, so the same score always gives the same ids. Throws when a stroke lies outside the score's ticks.
 */
export function perform(score: Score, options: PerformOptions): Performance {
  const cycleSteps = stepsInCycle(score.meter);
  const drafts: DraftEvent[] = [
    ...(options.sounding.right ? pitched('piano right', score.parts.rightHand) : []),
    ...(options.sounding.left ? pitched('piano left', score.parts.leftHand) : []),
    ...pitched('bass', score.parts.bass),
    ...score.parts.clave.map((stroke) => drum('clave', stroke.tick, 'clave', CLAVE_VELOCITY)),
    ...pulse(score, options.pulse),
    ...Object.entries(score.parts.percussion).flatMap(([instrument, strokes]) =>
      percussionEvents(instrument, strokes, DRUM_TICKS, score.toTick),
    ),
  ];
  for (const { part, tick } of drafts)
    assert(tick >= score.fromTick && tick < score.toTick, `${part} stroke must lie in [${score.fromTick}, ${score.toTick}), got ${tick}`);
  const lastBarTicks = fullBarTicks(score.meter);
  if (options.ending) drafts.push(...finalStrokes(score, drafts, lastBarTicks));
  return {
    events: withIds(score, drafts, options.feel ?? STRAIGHT),
    fromTick: score.fromTick,
    toTick: score.toTick + (options.ending ? lastBarTicks : 0),
    closed: score.closed && !options.ending,
    cycleStarts: cycleStarts(score, cycleSteps),
    bars: score.bars.map(({ tick, ticks, cycleStep }) => ({ tick, ticks, cycleStep })),
    clave: { steps: claveSteps(score, cycleSteps), cycleSteps },
    tempo: score.tempo,
    ...(options.rounds?.length ? { vamps: options.rounds.map((round) => vampOf(round, options)) } : {}),
  };
}

function vampOf(round: Score, { rounds: _, ...options }: PerformOptions): Vamp {
  const last = round.bars.at(-1);
  assert(round.closed && last !== undefined, 'a round must be a closed score');
  const { fromTick, toTick } = round;
  const seam = toTick - LONGEST_LEAD_TICKS;
  return { fromTick, toTick, turns: [Math.min(last.tick, seam), seam], round: perform(round, { ...options, ending: false }) };
}

function pitched(part: PartName, strokes: readonly (PianoStroke | BassStroke)[]): DraftEvent[] {
  return strokes.flatMap(({ tick, soundingTicks, midi, velocity, firstPassOnly }) =>
    midi.map((note) => ({ part, tick, soundingTicks, midi: note, drum: null, velocity, firstPassOnly })),
  );
}

function drum(part: PartName, tick: number, name: string, velocity: number): DraftEvent {
  return { part, tick, soundingTicks: DRUM_TICKS, midi: null, drum: name, velocity, firstPassOnly: false };
}

function pulse(score: Score, lane: PerformOptions['pulse']): DraftEvent[] {
  const beat = score.meter === '6/8' ? 720 : lane === 'halves' ? 960 : 480;
  return score.bars.flatMap(({ tick, ticks }) =>
    Array.from({ length: Math.ceil(ticks / beat) }, (_, index) =>
      index === 0
        ? drum('pulse', tick, 'pulse high', PULSE_VELOCITY.high)
        : drum('pulse', tick + index * beat, 'pulse low', PULSE_VELOCITY.low),
    ),
  );
}

/** Where a clave cycle begins; after a short bar that may be inside a bar. */
function cycleStarts(score: Score, cycleSteps: number): number[] {
  return score.bars.flatMap(({ tick, ticks, cycleStep }) => {
    const first = tick + ((cycleSteps - cycleStep) % cycleSteps) * TICKS_PER_STEP;
    return first < tick + ticks ? [first] : [];
  });
}

/** The steps of the cycle that the clave strikes, read off the score so that any clave is right. */
function claveSteps(score: Score, cycleSteps: number): number[] {
  const steps = new Set<number>();
  for (const stroke of score.parts.clave) {
    const step = cycleStepAt(score, stroke.tick, cycleSteps);
    if (step !== null) steps.add(step);
  }
  return [...steps].sort((a, b) => a - b);
}

function cycleStepAt(score: Score, tick: number, cycleSteps: number): number | null {
  const bar = barOf(score.bars, tick);
  return bar === undefined ? null : (bar.cycleStep + Math.round((tick - bar.tick) / TICKS_PER_STEP)) % cycleSteps;
}

function withIds(score: Score, drafts: readonly DraftEvent[], feel: Feel): PerformedEvent[] {
  const partOrder = (part: PartName) => PARTS.indexOf(part);
  return drafts
    .toSorted((a, b) => a.tick - b.tick || partOrder(a.part) - partOrder(b.part) || (a.midi ?? 0) - (b.midi ?? 0))
    .map((draft, id) => ({
      id,
      ...draft,
      offsetTicks: feel === STRAIGHT ? 0 : offsetTicks(feel, voiceOf(draft.part, draft.drum), stepFromTwoSide(score, draft.tick)),
    }))
    .sort((a, b) => a.tick + a.offsetTicks - (b.tick + b.offsetTicks) || a.id - b.id);
}
