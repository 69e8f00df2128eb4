import { type ClaveKind, type DrumStroke, TICKS_PER_STEP } from '../../vocabulary';
import { cycleSteps } from '../clave/patterns';
import { sideSteps, stepFromThreeSide } from '../harmony/bar-steps';
import type { HarmonyBar } from '../harmony/timeline';
import { inCycle, kitOf } from './kits';
import {
  type PatternId,
  PERCUSSION_INSTRUMENTS,
  PERCUSSION_PATTERNS,
  type PercussionInstrument,
  type PercussionPattern,
  percussionPattern,
  strokeOnStep,
} from './patterns';

/*
 * Percussion over sounding bars. A groove is read off its grid by the step counted from the 3-side, so it is on the right side
 * whatever the bars do: odd sections, half bars, restarts. Three things break into the groove:
 * - a bar with hits sounds the hits alone, a push adds its stroke, a stop is silent;
 * - a fill takes the last bar before a coro or mambo away from all that its player plays there;
 * - the arrival of the fill is struck on the first beat of the section.
 */

/**
 * Which percussion sounds: what the style and role say, nothing, or these patterns throughout (those of the other meter left out; where
 * two of them strike one instrument at once, the later one counts).
 */
export type PercussionChoice = 'by style' | 'none' | readonly PatternId[];

/** What the percussion needs to know beside the bars. */
export interface PercussionOptions {
  /** Style of a bar, by the name charts know it by. */
  readonly styleOf: (bar: HarmonyBar) => string;
  /** `by style` when missing. */
  readonly choice?: PercussionChoice;
  /** True when the last bar leads to the first, so that a push on the first chord sounds at the end; false when missing. */
  readonly closed?: boolean;
}

/** How a player who sounds this instrument strikes a hit of the band or a push. */
interface HitStroke {
  readonly on: PercussionInstrument;
  readonly stroke: string;
}
const ON_TIMBALES: HitStroke = { on: 'timbales', stroke: 'accent' };
/** The drums and the bongo player strike hits (common practice, no source). */
const HITS: Readonly<Partial<Record<PercussionInstrument, HitStroke>>> = {
  cascara: ON_TIMBALES,
  'mambo bell': ON_TIMBALES,
  'cha-cha bell': ON_TIMBALES,
  timbales: ON_TIMBALES,
  'bongo bell': { on: 'bongo bell', stroke: 'mouth' },
  bongo: { on: 'bongo', stroke: 'accent' },
  conga: { on: 'conga', stroke: 'accent' },
};
/** Where no drum sounds, these do. */
const HITS_ALONE: Readonly<Partial<Record<PercussionInstrument, HitStroke>>> = {
  bell: { on: 'bell', stroke: 'accent' },
  guiro: { on: 'guiro', stroke: 'short scrape' },
  maracas: { on: 'maracas', stroke: 'accent' },
};
/** Every kind of stroke that can come on an instrument, in its order: from the grids, the arrivals of fills, and hits. */
export const STROKES_BY_INSTRUMENT: ReadonlyMap<PercussionInstrument, readonly string[]> = new Map(
  PERCUSSION_INSTRUMENTS.map((instrument) => {
    const rows = PERCUSSION_PATTERNS.filter((pattern) => pattern.instrument === instrument);
    const printed = rows.flatMap(({ grid, strokes, fill }) => [
      ...[...grid].flatMap((letter) => strokes[letter] ?? []),
      ...(fill ? [fill.arrival] : []),
    ]);
    const hits = [...Object.values(HITS), ...Object.values(HITS_ALONE)].flatMap(({ on, stroke }) => (on === instrument ? [stroke] : []));
    return [instrument, [...new Set([...printed, ...hits])]];
  }),
);

/** Roles whose beginning is announced. */
const ANNOUNCED: readonly HarmonyBar['role'][] = ['coro', 'mambo'];

/**
 * The percussion parts over sounding bars, keyed by the name of the instrument (`PERCUSSION_INSTRUMENTS`), each ascending by tick;
 * instruments that do not sound are left out. Onsets lie inside the bars. Pickups are silent but for their hits.
 * Example: in the first bar of a 2-3 verse of salsa, `cascara` is struck on steps 0 2 4 5 7.
 */
export function percussionParts(bars: readonly HarmonyBar[], kind: ClaveKind, options: PercussionOptions): Record<string, DrumStroke[]> {
  const cycle = cycleSteps(kind);
  const kits = bars.map((bar) => patternsOf(bar, cycle, options));
  const parts = new Map<PercussionInstrument, Map<number, string>>(PERCUSSION_INSTRUMENTS.map((name) => [name, new Map()]));
  const strike = (instrument: PercussionInstrument, tick: number, stroke: string) => parts.get(instrument)?.set(tick, stroke);

  bars.forEach((bar, index) => {
    if (bar.playing === 'nobody') return;
    const kit = kits[index] ?? [];
    if (bar.hits.length > 0) {
      for (const { step } of bar.hits) if (step * TICKS_PER_STEP < bar.ticks) strikeHit(kit, bar.tick + step * TICKS_PER_STEP, strike);
      return;
    }
    if (bar.kind === 'pickup') return;
    const next = bars[index + 1];
    const fills = next ? fillsBetween(bar, next, kits[index + 1] ?? []) : [];
    const filling = new Set(fills.map(({ player }) => player));
    for (const pattern of kit) if (!pattern.fill && !filling.has(pattern.player)) play(pattern, bar, strike);
    for (const fill of fills) {
      play(fill, bar, strike);
      if (next && fill.fill && beginsOnOne(next)) strike(fill.instrument, next.tick, fill.fill.arrival);
    }
  });
  for (const { tick, kit } of pushes(bars, kits, options.closed ?? false)) strikeHit(kit, tick, strike);

  return Object.fromEntries(
    [...parts].flatMap(([instrument, strokes]) =>
      strokes.size === 0
        ? []
        : [[instrument, [...strokes].map(([tick, stroke]) => ({ tick, stroke })).sort((one, other) => one.tick - other.tick)]],
    ),
  );
}

type Strike = (instrument: PercussionInstrument, tick: number, stroke: string) => void;

function patternsOf(bar: HarmonyBar, cycle: 16 | 12, options: PercussionOptions): readonly PercussionPattern[] {
  const choice = options.choice ?? 'by style';
  if (choice === 'none') return [];
  const ids = choice === 'by style' ? kitOf(options.styleOf(bar), bar.role, cycle) : inCycle(choice, cycle);
  return [...new Set(ids)].map(percussionPattern);
}

function play(pattern: PercussionPattern, bar: HarmonyBar, strike: Strike): void {
  for (let step = 0; step * TICKS_PER_STEP < bar.ticks; step++) {
    const stroke = strokeOnStep(pattern, stepFromThreeSide(bar, step));
    if (stroke !== null) strike(pattern.instrument, bar.tick + step * TICKS_PER_STEP, stroke);
  }
}

/** The fills that lead from a bar into the next: only into a new coro or mambo, and only in a whole side with nothing written in it. */
function fillsBetween(bar: HarmonyBar, next: HarmonyBar, kit: readonly PercussionPattern[]): readonly PercussionPattern[] {
  const begins = next.visit !== bar.visit && next.section !== bar.section && ANNOUNCED.includes(next.role);
  const wholeSide = bar.ticks === sideSteps(bar) * TICKS_PER_STEP && bar.cycleStep % sideSteps(bar) === 0;
  return begins && wholeSide && bar.kind !== 'hit' ? kit.filter((pattern) => pattern.fill !== null) : [];
}

function strikeHit(kit: readonly PercussionPattern[], tick: number, strike: Strike): void {
  const drums = kit.flatMap(({ instrument }) => HITS[instrument] ?? []);
  const hits = drums.length > 0 ? drums : kit.flatMap(({ instrument }) => HITS_ALONE[instrument] ?? []);
  for (const { on, stroke } of hits) strike(on, tick, stroke);
}

/** False where the band is silent, has hits of its own or has struck the first chord early. */
const beginsOnOne = (bar: HarmonyBar): boolean =>
  bar.playing !== 'nobody' && bar.hits.length === 0 && !bar.chords.some(({ tick, push }) => push && tick === bar.tick);

/** Where a written push is struck: an eighth before its chord, in the bar that sounds there, unless that bar is silent. */
function pushes(
  bars: readonly HarmonyBar[],
  kits: readonly (readonly PercussionPattern[])[],
  closed: boolean,
): readonly { readonly tick: number; readonly kit: readonly PercussionPattern[] }[] {
  return bars.flatMap((bar, index) =>
    bar.chords.flatMap((chord) => {
      if (!chord.push || bar.playing === 'nobody') return [];
      const inside = chord.tick > bar.tick;
      const at = inside ? index : index > 0 ? index - 1 : closed ? bars.length - 1 : -1;
      const sounding = bars[at];
      if (!sounding || sounding.playing === 'nobody') return [];
      const tick = (inside ? chord.tick : sounding.tick + sounding.ticks) - TICKS_PER_STEP;
      return [{ tick, kit: kits[at] ?? [] }];
    }),
  );
}
