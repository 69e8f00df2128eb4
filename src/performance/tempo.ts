import type { HalfNotesPerMinute, SongSeconds } from '../vocabulary';
import { assert, songSeconds, TICKS_PER_QUARTER } from '../vocabulary';

/*
 * The one place where ticks become seconds and back. A tempo map is a list of stretches, each with a steady tempo;
 * within a stretch the seconds are one product of whole ticks, so a loop that has gone round 500 times is as exact
 * as its first pass. A live tempo change adds a stretch at the first tick that has not been handed to the sound yet.
 */

/** A stretch of steady tempo: from this tick, at this moment of the song, until the next stretch. */
export interface TempoSegment {
  readonly fromTick: number;
  readonly atSeconds: SongSeconds;
  readonly tempo: HalfNotesPerMinute;
}

/** Stretches of steady tempo, at least one, ascending by tick. Ticks before the first have the first's tempo. */
export type TempoMap = readonly [TempoSegment, ...TempoSegment[]];

/** Ticks in a half note, the beat that tempo counts. */
export const TICKS_PER_HALF_NOTE = 2 * TICKS_PER_QUARTER;

/** A map of one steady tempo in which `fromTick` falls at `atSeconds` (0 when missing). */
export function steadyTempo(tempo: HalfNotesPerMinute, fromTick = 0, atSeconds: SongSeconds = songSeconds(0)): TempoMap {
  return [{ fromTick, atSeconds, tempo }];
}

/** Seconds that `ticks` last at a steady tempo: at 60 half notes a minute, 960 ticks last one second. */
export function secondsOf(ticks: number, tempo: HalfNotesPerMinute): number {
  return (ticks * 60) / (TICKS_PER_HALF_NOTE * tempo);
}

/** When `tick` (whole or fractional) falls, in seconds of the song. */
export function secondsAt(map: TempoMap, tick: number): SongSeconds {
  const segment = lastWhere(map, (candidate) => candidate.fromTick <= tick);
  return songSeconds(segment.atSeconds + secondsOf(tick - segment.fromTick, segment.tempo));
}

/** The fractional tick that falls at `seconds`: for a playhead. For anything that decides, use `nearestTick`. */
export function tickAt(map: TempoMap, seconds: SongSeconds): number {
  const segment = lastWhere(map, (candidate) => candidate.atSeconds <= seconds);
  return segment.fromTick + ((seconds - segment.atSeconds) * TICKS_PER_HALF_NOTE * segment.tempo) / 60;
}

/** The whole tick nearest to `seconds`: rounded, never floored, so that a tick's own moment gives that tick. */
export function nearestTick(map: TempoMap, seconds: SongSeconds): number {
  return Math.round(tickAt(map, seconds));
}

/** The tempo in force at `tick`. */
export function tempoAt(map: TempoMap, tick: number): HalfNotesPerMinute {
  return lastWhere(map, (candidate) => candidate.fromTick <= tick).tempo;
}

/**
 * The map with `tempo` from `fromTick` on; what lies before keeps its moments.
 * Throws when `fromTick` lies before the last change, because that stretch may already have sounded.
 */
export function withTempo(map: TempoMap, fromTick: number, tempo: HalfNotesPerMinute): TempoMap {
  const last = map[map.length - 1] ?? map[0];
  assert(fromTick >= last.fromTick, `a tempo change must not precede the last one at tick ${last.fromTick}, got ${fromTick}`);
  if (last.tempo === tempo) return map;
  const segment: TempoSegment = { fromTick, atSeconds: secondsAt(map, fromTick), tempo };
  const [first, ...rest] = last.fromTick === fromTick ? map.slice(0, -1) : map;
  return first === undefined ? [segment] : [first, ...rest, segment];
}

/** The map without the stretches that ended before `tick`, so that an evening of tempo changes stays small. */
export function forgetBefore(map: TempoMap, tick: number): TempoMap {
  const current = lastWhere(map, (candidate) => candidate.fromTick <= tick);
  const [first, ...rest] = map.slice(map.indexOf(current));
  return first === undefined ? map : [first, ...rest];
}

/** The last segment that fits, or the first when none does. */
function lastWhere(map: TempoMap, fits: (segment: TempoSegment) => boolean): TempoSegment {
  for (let index = map.length - 1; index > 0; index -= 1) {
    const segment = map[index];
    if (segment !== undefined && fits(segment)) return segment;
  }
  return map[0];
}
