import type { DrumStroke } from '../../vocabulary';
import { type BarFrame, WRITTEN_GRID } from './note-values';
import { NO_MARKS, type Span } from './strokes-to-events';

/**
 * Strokes of a clave as written lengths. A stroke is a short sound, so it is written for reading, without ties: up to the next stroke or to the
 * middle of the bar (end of the group), at most two steps when nothing follows (`♩. ♪ 𝄽 ♩ | 𝄽 ♩ ♩ 𝄽` in 3-2 son). `barTick` and lengths are written ticks, strokes score ticks. Common practice, no source.
 */
export function claveSpans(strokes: readonly DrumStroke[], barTick: number, frame: BarFrame, scale: 1 | 2 = 1): Span[] {
  const inBar = strokes
    .map((stroke) => Math.round((stroke.tick / scale - barTick) / WRITTEN_GRID) * WRITTEN_GRID)
    .filter((tick) => tick >= 0 && tick < frame.ticks);
  const ticks = [...new Set(inBar)].toSorted((a, b) => a - b);
  return ticks.map((tick, i) => {
    const halfEnd = Math.min(frame.ticks, (Math.floor((tick + frame.shift) / frame.half) + 1) * frame.half - frame.shift);
    const next = ticks[i + 1];
    const to = next !== undefined && next <= halfEnd ? next : Math.min(halfEnd, tick + 2 * frame.step);
    return { from: barTick + tick, to: barTick + to, pitches: [], ...NO_MARKS, firstPassOnly: false, ringsOn: false };
  });
}
