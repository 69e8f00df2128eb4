import { assert, countLeading } from '../vocabulary';
import type { Performance, PerformedEvent } from './performance';

/*
 * A performance unrolled: play ticks run on for ever, score ticks go round. The sound and the assessment both ask
 * here what starts in a window, so what is heard and what is judged cannot differ. Windows are half-open, so
 * windows laid end to end hold every sound exactly once, whatever their sizes.
 */

/** A performance entered at a place, going round from there (or once through, when it is open). */
export interface Unrolled {
  readonly performance: Performance;
  /** Score tick at play tick 0, within the performance. */
  readonly startTick: number;
  /** Ticks (0 or less) by which feel may put the first sounds before the start; 0 when missing: they sound at the start. */
  readonly early?: number;
}

/** One sound of one pass. */
export interface Occurrence {
  readonly event: PerformedEvent;
  /** Where it sounds, feel included, in ticks since the start; never before `early`. */
  readonly playTick: number;
  /** Times the loop has gone round before it, from 0. */
  readonly pass: number;
}

/** Where a play tick lies in the score. */
export interface Place {
  /** Score tick, fractional when the play tick is. */
  readonly tick: number;
  readonly pass: number;
}

/** Where `playTick` (0 or later) lies. An open performance goes on counting past its end. */
export function placeAt({ performance, startTick }: Unrolled, playTick: number): Place {
  const length = performance.toTick - performance.fromTick;
  const travelled = startTick - performance.fromTick + playTick;
  const pass = performance.closed ? Math.floor(travelled / length) : 0;
  return { tick: performance.fromTick + travelled - pass * length, pass };
}

/** The play tick at which an open performance is over, or null when it goes round. */
export function endOf({ performance, startTick }: Unrolled): number | null {
  return performance.closed ? null : performance.toTick - startTick;
}

/**
 * What starts in [from, to), ascending by place, then by id. A sound belongs to the pass of its notated place;
 * feel may move it over the loop start. One that feel would put before the very start sounds at the start, unless `early` gives it room.
 */
export function occurrencesIn(unrolled: Unrolled, from: number, to: number): Occurrence[] {
  const { performance, startTick } = unrolled;
  const { events, fromTick, toTick, closed } = performance;
  const length = toTick - fromTick;
  assert(length > 0, `a performance must have a length, got [${fromTick}, ${toTick})`);
  assert(startTick >= fromTick && startTick < toTick, `a start must lie in [${fromTick}, ${toTick}), got ${startTick}`);
  const earliest = unrolled.early ?? 0;
  if (to <= from || to <= earliest || events.length === 0) return [];
  const { early, late } = reach(performance);
  const lastPass = closed ? Math.floor((startTick - fromTick + to - early) / length) : 0;
  const firstPass = closed ? Math.max(0, Math.floor((startTick - fromTick + from - late) / length)) : 0;
  const found: Occurrence[] = [];
  for (let pass = firstPass; pass <= lastPass; pass += 1) {
    const passStart = pass * length - (startTick - fromTick);
    const firstPlace = from <= earliest ? Number.NEGATIVE_INFINITY : from - passStart + fromTick;
    for (let index = countLeading(events, ({ tick, offsetTicks }) => tick + offsetTicks < firstPlace); index < events.length; index += 1) {
      const event = events[index];
      if (event === undefined) break;
      const place = passStart + event.tick + event.offsetTicks - fromTick;
      if (place >= to) break;
      const notated = passStart + event.tick - fromTick;
      const playTick = Math.max(earliest, place);
      if (notated < 0 || playTick < from || (event.firstPassOnly && pass > 0)) continue;
      found.push({ event, playTick, pass });
    }
  }
  return late === early ? found : found.sort((a, b) => a.playTick - b.playTick || a.pass - b.pass || a.event.id - b.event.id);
}

/** The play tick at which an occurrence is notated, feel left out. */
export function notatedPlayTick({ performance, startTick }: Unrolled, { event, pass }: Occurrence): number {
  return pass * (performance.toTick - performance.fromTick) - startTick + event.tick;
}

/** The largest offsets that feel makes, early (0 or less) and late (0 or more). */
export function reach(performance: Performance): { readonly early: number; readonly late: number } {
  const known = reaches.get(performance);
  if (known !== undefined) return known;
  let early = 0;
  let late = 0;
  for (const { offsetTicks } of performance.events) {
    early = Math.min(early, offsetTicks);
    late = Math.max(late, offsetTicks);
  }
  const found = { early, late };
  reaches.set(performance, found);
  return found;
}
const reaches = new WeakMap<Performance, { readonly early: number; readonly late: number }>();
