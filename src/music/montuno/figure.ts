import type { BassStroke, ClaveKind, Colour, Device, Hands, Level } from '../../vocabulary';
import { sideSteps } from '../harmony/bar-steps';
import { planLines } from '../harmony/lines';
import type { HarmonicTimeline, HarmonyBar } from '../harmony/timeline';
import { LEVEL_PATTERNS, LEVELS, NEUTRAL_PATTERN, type Pattern, SAFE_PATTERN, SIX_EIGHT_PATTERN } from './cells';
import { applyDevices } from './devices';
import { giveToHands, type TwoHands } from './hands';
import { octaveFor } from './place';
import { planStrokes } from './plan';
import { sketchStrokes } from './sketch';
import { type HandPosition, leadVoices, type Opening, tonicOf } from './voice-leading';

/** What a figure is made from. */
export interface FigureOptions {
  readonly level: Level;
  readonly claveKind: ClaveKind;
  readonly colour: Colour;
  readonly devices: readonly Device[];
  readonly hands: Hands;
  /** 0 is the figure that costs least; others differ from it and from each other in octave line or cell. */
  readonly seed: number;
  /** True for bars whose rhythm is not built on this clave. */
  readonly outsideClave: (bar: HarmonyBar) => boolean;
  /** The bass, for a left hand that takes it over. */
  readonly bass: readonly BassStroke[];
}

/** The piano figure over a timeline: plan the strokes, lead the voices, apply devices, place it on the keyboard, give it to the hands. */
export function buildFigure(timeline: HarmonicTimeline, options: FigureOptions): TwoHands {
  const { pattern, opening, choice } = variantOf(timeline, options);
  const { planned, positions } = leadVariant(timeline, options, pattern, opening, choice);
  const tonicPc = tonicOf(timeline);
  const sketches = applyDevices(sketchStrokes(planned, positions, timeline.closed, tonicPc), options.devices);
  const tonicMidi = octaveFor(
    positions.map(({ shape }) => shape.octave.pitch),
    tonicPc,
    options.hands,
  );
  return giveToHands(sketches, options.hands, { tonicMidi, timeline, claveKind: options.claveKind }, options.bass);
}

interface Variant {
  readonly pattern: Pattern;
  readonly opening: Opening;
  /** Which of the moving lines that apply is taken. */
  readonly choice: number;
}

const OPENINGS = ['third', 'seventh', 'body'] as const;

/**
 * The variant of a seed. Seed 0 is the plain search over the level's usual cells. The others open on another kind of degree,
 * or use the level's other cells, or both, so that no two of them agree in octave line and cell.
 */
function variantOf(timeline: HarmonicTimeline, options: FigureOptions): Variant {
  const patterns = patternsFor(options);
  const usual = patterns[0] ?? NEUTRAL_PATTERN;
  if (options.seed === 0) return { pattern: usual, opening: null, choice: 0 };
  const natural = leadVariant(timeline, options, usual, null, 0).positions[0]?.shape.octaveKind;
  const openings: readonly Opening[] = [null, ...OPENINGS.filter((kind) => kind !== natural)];
  const variants = openings.flatMap((opening, at) => patterns.map((pattern, row): Variant => ({ pattern, opening, choice: at + row })));
  const steps = variants.length;
  // Neighbouring seeds differ in the octave line first, then in the cell.
  const index = ((options.seed % steps) * patterns.length) % steps;
  const turn = Math.floor(((options.seed % steps) * patterns.length) / steps);
  return variants[(index + turn) % steps] ?? { pattern: usual, opening: null, choice: 0 };
}

function leadVariant(
  timeline: HarmonicTimeline,
  options: FigureOptions,
  pattern: Pattern,
  opening: Opening,
  choice: number,
): { readonly planned: ReturnType<typeof planStrokes>; readonly positions: HandPosition[] } {
  const openings = openingBars(timeline);
  const planned = planStrokes(timeline, {
    patternOf: (bar) => ({ pattern: patternOfBar(bar, pattern, options), opening: openings.has(bar.index) }),
    everyChord: options.level === 1,
  });
  const halfBarTicks = timeline.bars[0] && sideSteps(timeline.bars[0]) === 6 ? 720 : 960;
  const moving = LEVELS.find((row) => row.level === options.level)?.movingLines ?? true;
  const pullAt = planLines(timeline, { movingLines: moving, choice, halfBarTicks, loops: opening === null });
  return { planned, positions: leadVoices(planned, timeline, { colour: options.colour, pullAt, opening, tonicPc: tonicOf(timeline) }) };
}

function patternOfBar(bar: HarmonyBar, pattern: Pattern, options: FigureOptions): Pattern {
  if (sideSteps(bar) === 6) return SIX_EIGHT_PATTERN;
  if (options.outsideClave(bar)) return SAFE_PATTERN;
  return options.devices.includes('one-bar-neutral') ? NEUTRAL_PATTERN : pattern;
}

function patternsFor({ level, claveKind }: FigureOptions): readonly Pattern[] {
  const rows = LEVEL_PATTERNS[level] ?? LEVEL_PATTERNS[4] ?? [];
  const kind = claveKind === 'bembe' ? 'son' : claveKind;
  return rows.filter(({ claves }) => claves.includes(kind));
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
