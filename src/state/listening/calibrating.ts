import type { ClockMap } from '../../performance/clock-map';
import { toInput } from '../../performance/clock-map';
import type { Performance } from '../../performance/performance';
import { halfNotesPerMinute, type InputMillis, TICKS_PER_QUARTER } from '../../vocabulary';
import type { Played, SoundingMusic } from './ports';
import { joinSounded, momentOf, type Sounded } from './sounded';

/*
 * Sixteen clicks, tapped along with: the middle of the differences is the delay of the device together with the player's own way of
 * tapping. People tap a little early on the whole (Repp 2005, Psychonomic Bulletin & Review 12, 969–992), and that is left in: it is
 * theirs in every take.
 */

/** Clicks, half a second apart, after two that only show the tempo. */
const CLICKS = 16;
const FIRST_COUNTED = 2;
/** Fewer taps than this are no measurement. */
const LEAST = 10;
/** Taps that spread more than this (half the range of the middle two thirds) are no measurement. Design value. */
const MOST_SPREAD_MS = 30;
const TEMPO = halfNotesPerMinute(60);
const FURTHEST_MS = 240;
/** Nobody taps further ahead of a click than this on the whole, and no delay is negative: what was tapped was not the clicks. Design value. */
const MOST_AHEAD_MS = 90;

/** What came of the clicks. */
export type CalibrationOutcome =
  | { readonly ok: true; readonly latencyMs: number; readonly spreadMs: number }
  | { readonly ok: false; readonly why: 'too few' | 'too uneven' | 'off the clicks' };

/** One round of clicks after another. */
export interface Calibrating {
  /** The clicks, as music to be played once: clicks to tap along with, or strokes that the microphone hears by itself. */
  start(by: 'tapping' | 'loudspeaker'): Performance;
  hear(played: Played): void;
  meet(music: SoundingMusic): void;
  result(clocks: ClockMap): CalibrationOutcome;
}

/** Nothing clicked yet. */
export function createCalibrating(): Calibrating {
  let taps: InputMillis[] = [];
  let sounded: Sounded | null = null;
  return {
    start(by) {
      taps = [];
      sounded = null;
      return by === 'tapping' ? CLICK_TRACK : STROKE_TRACK;
    },
    hear(played) {
      if (played.kind === 'note on' || played.kind === 'onset') taps.push(played.at);
    },
    meet(music) {
      sounded = joinSounded(sounded, music);
    },
    result(clocks) {
      const account = sounded;
      if (account === null) return { ok: false, why: 'too few' };
      const clicks = CLICK_TRACK.events.slice(FIRST_COUNTED).map(({ tick }) => toInput(clocks, momentOf(account, tick)));
      return delayOf(clicks, taps);
    },
  };
}

/** The delay of `taps` after `clicks`, each tap taken for the click that it is nearest to. */
export function delayOf(clicks: readonly number[], taps: readonly number[]): CalibrationOutcome {
  const late = clicks.flatMap((click) => {
    const nearest = taps.reduce<number | null>(
      (best, tap) => (best === null || Math.abs(tap - click) < Math.abs(best - click) ? tap : best),
      null,
    );
    return nearest === null || Math.abs(nearest - click) > FURTHEST_MS ? [] : [nearest - click];
  });
  if (late.length < LEAST) return { ok: false, why: 'too few' };
  const sorted = late.sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
  const middle = sorted.length % 2 === 1 ? at(0.5) : (at(0.5) + (sorted[sorted.length / 2 - 1] ?? 0)) / 2;
  const spreadMs = (at(5 / 6) - at(1 / 6)) / 2;
  if (spreadMs <= MOST_SPREAD_MS && middle < -MOST_AHEAD_MS) return { ok: false, why: 'off the clicks' };
  return spreadMs > MOST_SPREAD_MS ? { ok: false, why: 'too uneven' } : { ok: true, latencyMs: middle, spreadMs };
}

const track = (part: 'pulse' | 'percussion', drum: (index: number) => string): Performance => ({
  events: Array.from({ length: CLICKS + FIRST_COUNTED }, (_, index) => ({
    id: index,
    part,
    tick: index * TICKS_PER_QUARTER,
    offsetTicks: 0,
    soundingTicks: 60,
    midi: null,
    drum: drum(index),
    velocity: 100,
    firstPassOnly: false,
  })),
  fromTick: 0,
  toTick: 5 * 4 * TICKS_PER_QUARTER,
  closed: false,
  cycleStarts: [0],
  bars: Array.from({ length: 5 }, (_, bar) => ({
    tick: bar * 4 * TICKS_PER_QUARTER,
    ticks: 4 * TICKS_PER_QUARTER,
    cycleStep: (bar % 2) * 8,
  })),
  clave: { steps: [], cycleSteps: 16 },
  tempo: TEMPO,
});
const CLICK_TRACK = track('pulse', (index) => (index % 4 === 0 ? 'pulse high' : 'pulse low'));
/** The shell is broad-band like a clap: the detector finds it, two milliseconds after its beginning, where it does not find clicks and claves. */
const STROKE_TRACK = track('percussion', () => 'cascara accent');
