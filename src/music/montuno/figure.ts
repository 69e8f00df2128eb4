import type { BassStroke, ClaveKind, Colour, Compass, Device, Hands, Level, Stretch } from '../../vocabulary';
import { sideSteps } from '../harmony/bar-steps';
import type { Layers } from '../harmony/cheapest-path';
import { planLines } from '../harmony/plan-lines';
import type { HarmonicTimeline, HarmonyBar, HarmonySpan } from '../harmony/timeline';
import { applyDevices } from './devices';
import { applyEdits, type FigureEdit, type UnfitEdit } from './edits';
import { giveToHands, type TwoHands } from './hands';
import { planLeft } from './left-hand';
import { levelRow } from './levels';
import type { Pattern } from './patterns';
import { KEYBOARDS, octaveFor } from './place';
import { type PlannedStroke, type PlanOf, planStrokes } from './plan';
import type { Shape } from './shapes';
import { type Sketch, sketchStrokes } from './sketch';
import { type HandPosition, type LeadingOptions, leadVoices, type Opening, tonicOf, voiceSearch } from './voice-leading';

/** What is asked of the piano in one bar. */
export interface BarFigure {
  readonly level: Level;
  /** Patterns that may be played here, the usual one first; “another one” goes through them. Never empty. */
  readonly patterns: readonly Pattern[];
  readonly devices: readonly Device[];
  /** Louder or softer than usual, in velocity steps. */
  readonly loudness: number;
}

/** What a figure is made from. */
export interface FigureOptions {
  readonly barFigure: (bar: HarmonyBar) => BarFigure;
  readonly claveKind: ClaveKind;
  readonly colour: Colour;
  readonly hands: Hands;
  readonly stretch: Stretch;
  readonly compass: Compass;
  /** 0 is the figure that costs least; others differ from it and from each other in octave line or cell. */
  readonly seed: number;
  /** The bass, for a left hand that takes it over. */
  readonly bass: readonly BassStroke[];
  /** Changes made by hand, applied last. */
  readonly edits: readonly FigureEdit[];
  /** A part of its own in place of the figure, in bars where it plays: the solo. */
  readonly instead?: (
    planned: readonly PlannedStroke[],
    positions: readonly HandPosition[],
    sketches: readonly Sketch[],
  ) => readonly Sketch[];
}

/** Both hands, and the edits and devices that found nothing to change. */
export interface Figure extends TwoHands {
  readonly unfit: readonly UnfitEdit[];
  /** Devices that are on somewhere and found nothing to do anywhere. */
  readonly idle: readonly Device[];
}

/** The piano figure over a timeline: plan the strokes, lead the voices, apply devices and edits, place it on the keyboard, give it to the hands. */
export function buildFigure(timeline: HarmonicTimeline, options: FigureOptions): Figure {
  const { planned, positions, planOf } = leadSeed(timeline, options);
  const tonicPc = tonicOf(timeline);
  const drawn = sketchStrokes(planned, positions, timeline.closed, tonicPc);
  const figure = options.instead ? options.instead(planned, positions, drawn) : drawn;
  const { figure: changed, idle } = applyDevices(figure, (bar) => options.barFigure(bar).devices);
  const { sketches, unfit, placed } = applyEdits(changed, options.edits, timeline);
  // What sounds decides where the figure lies: riffs and octaves go further down than the hand's positions.
  const line = changed.filter(({ role }) => role !== 'inner' && role !== 'approach').map(({ octave, lift }) => octave.pitch - lift);
  const { from: lowest, to: highest } = KEYBOARDS[options.compass];
  const lifted = (bar: HarmonyBar): boolean => options.barFigure(bar).devices.includes('octave-up');
  const placing = {
    tonicMidi: octaveFor(
      line,
      tonicPc,
      // Lifted throughout, the right hand is two octaves above the left as it is, and need not lie high for it.
      options.hands === 'wide' && timeline.bars.every(lifted) ? 'double' : options.hands,
      options.compass,
      timeline.bars.some(lifted),
    ),
    timeline,
    claveKind: options.claveKind,
    lowest,
    highest,
  };
  const leftPlan = planLeft(timeline, planOf, positions, options.stretch);
  const onKeys = ({ pitch }: { readonly pitch: number }): boolean =>
    pitch + placing.tonicMidi >= lowest && pitch + placing.tonicMidi <= highest;
  const offKeys = placed.filter(
    (edit) => edit.change === 'pitch' && sketches.some((sketch) => isAt(sketch, edit) && !sketch.notes.every(onKeys)),
  );
  const hands = giveToHands(sketches, { hands: options.hands, stretch: options.stretch, bass: options.bass, leftPlan }, placing);
  return { ...hands, idle, unfit: [...unfit, ...offKeys.map((edit): UnfitEdit => ({ edit, why: 'outside the keys' }))] };
}

const isAt = ({ planned }: Sketch, { bar, step }: FigureEdit): boolean => planned.bar.index === bar && planned.step === step;

/** How many octave lines “another one” goes through before it takes other cells. */
const LINES_OFFERED = 3;

/** The kinds of degree on which an octave line may open, in the order in which other ones are offered. */
const OPENINGS = ['third', 'seventh', 'body'] as const;

interface Led {
  readonly planned: readonly PlannedStroke[];
  readonly positions: readonly HandPosition[];
  readonly planOf: PlanOf;
}

/**
 * The voices of a seed. Seed 0 is the plain search over the usual cells. Each of the next ones opens on another kind of degree, takes
 * another moving line where there is one, and keeps away from the octave notes of those before it; after three lines come the other cells.
 */
function leadSeed(timeline: HarmonicTimeline, options: FigureOptions): Led {
  const first = timeline.bars.find((bar) => bar.kind === 'groove');
  const rows = first ? options.barFigure(first).patterns.length : 1;
  const row = Math.floor(options.seed / LINES_OFFERED) % rows;
  const wanted = options.seed % LINES_OFFERED;
  const taken = new Map<HarmonySpan, number[]>();
  let led = leadLine(timeline, options, { row, line: 0, opening: null, taken });
  const natural = led.positions[0]?.shape.octaveKind;
  const others = OPENINGS.filter((kind) => kind !== natural);
  for (let line = 1; line <= wanted; line++) {
    for (const { span, shape } of led.positions) taken.set(span, [...(taken.get(span) ?? []), shape.octave.pitch]);
    led = leadLine(timeline, options, { row, line, opening: others[line - 1] ?? null, taken });
  }
  return led;
}

interface Variant {
  readonly row: number;
  readonly line: number;
  readonly opening: Opening;
  readonly taken: ReadonlyMap<HarmonySpan, readonly number[]>;
}

function leadLine(timeline: HarmonicTimeline, options: Asked, variant: Variant): Led {
  const { planned, planOf, leading } = lineQuestion(timeline, options, variant);
  return { planned, planOf, positions: leadVoices(planned, timeline, leading) };
}

/** Of all that is asked for, what the search hears of. */
type Asked = Pick<FigureOptions, 'barFigure' | 'colour'>;

/** The search that the figure of seed 0 comes from, for whoever wants to try every way instead. */
export function plainSearch(timeline: HarmonicTimeline, options: Asked): Layers<Shape> {
  const { planned, leading } = lineQuestion(timeline, options, { row: 0, line: 0, opening: null, taken: new Map() });
  return voiceSearch(planned, timeline, leading).search;
}

function lineQuestion(timeline: HarmonicTimeline, options: Asked, { row, line, opening, taken }: Variant) {
  const openings = openingBars(timeline);
  const planOf: PlanOf = (bar) => {
    const { patterns, level, loudness, devices } = options.barFigure(bar);
    const pattern = patterns[row % patterns.length];
    if (!pattern) throw new Error(`bar ${bar.index} has no pattern`);
    return { pattern, level, loudness, devices, opening: openings.has(bar.index) };
  };
  const planned = planStrokes(timeline, planOf);
  const first = timeline.bars[0];
  const pullAt = planLines(timeline, {
    // An arpeggio has too few strokes on each note of a line to say the chord as well.
    movingIn: (bar) => levelRow(options.barFigure(bar).level).movingLines && planOf(bar).pattern.two.onTime !== true,
    choice: line,
    halfBarTicks: first && sideSteps(first) === 6 ? 720 : 960,
    loops: line === 0,
  });
  const leading: LeadingOptions = { colour: options.colour, pullAt, opening, taken, tonicPc: tonicOf(timeline) };
  return { planned, planOf, leading };
}

/** Indexes of the first 2-side bar of each section's run, where a phrase opens. */
function openingBars({ bars }: HarmonicTimeline): ReadonlySet<number> {
  const found = new Set<number>();
  let visit: number | undefined;
  let open = false;
  for (const bar of bars) {
    if (bar.visit !== visit) {
      visit = bar.visit;
      open = true;
    }
    if (open && bar.side === 2) {
      found.add(bar.index);
      open = false;
    }
  }
  return found;
}
