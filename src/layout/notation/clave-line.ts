import type { DrumStroke } from '../../vocabulary';
import { type BarFrame, WRITTEN_GRID } from './note-values';
import type { Span } from './strokes-to-events';

/** The longest value a stroke is written with when nothing follows it in its half of the bar: a quarter. */
const LONGEST_ALONE = 480;

/**
 * Strokes of a clave as written lengths. A stroke is a short sound, so it is written for reading, without ties: up to the next stroke or to the
 * middle of the bar, at most a quarter when nothing follows (`♩. ♪ 𝄽 ♩ | 𝄽 ♩ ♩ 𝄽` in 3-2 son). Common practice, no source.
 */
export function claveSpans(strokes: readonly DrumStroke[], barTick: number, frame: BarFrame): Span[] {
  const inBar = strokes
    .map((stroke) => Math.round((stroke.tick - barTick) / WRITTEN_GRID) * WRITTEN_GRID)
    .filter((tick) => tick >= 0 && tick < frame.ticks);
  const ticks = [...new Set(inBar)].toSorted((a, b) => a - b);
  return ticks.map((tick, i) => {
    const halfEnd = Math.min(frame.ticks, (Math.floor((tick + frame.shift) / frame.half) + 1) * frame.half - frame.shift);
    const next = ticks[i + 1];
    const to = next !== undefined && next <= halfEnd ? next : Math.min(halfEnd, tick + LONGEST_ALONE);
    return { from: barTick + tick, to: barTick + to, pitches: [], firstPassOnly: false, ringsOn: false };
  });
}
