import { type InputMillis, inputMillis } from '../vocabulary';

/*
 * Events carry the time at which they happened, on the page's own clock. Some stacks leave it out, repeat it, round it to
 * 16 or 100 ms (a privacy setting), or jump. A stamp that cannot be right is replaced by the moment at which the page heard
 * of it, and marked coarse: a take with coarse times is not judged on time.
 */

/** Further than this from now, or from the stamp before backwards, no stamp is believed. */
const FURTHEST_MS = 1000;
const BACKWARDS_MS = 50;
/** A stamp seen before belongs to the same chord if it is heard of within this; later it is a stamp that stands still. */
const SAME_CHORD_MS = 30;
/** Roundings that browsers apply on purpose, coarse to fine. */
const ROUNDINGS_MS = [100, 50, 1000 / 60, 16, 10] as const;
/** Different stamps that must all lie on a rounding's marks before it is believed. */
const WITNESSES = 8;

/** A time of an event, and whether it is only known roughly. */
export interface Stamp {
  readonly at: InputMillis;
  readonly coarse: boolean;
}

/** Reads the stamps of one device, in the order in which they come. */
export interface Stamps {
  /** `stamped` as the event gives it, `now` as the page's clock shows it. */
  read(stamped: number | undefined, now: number): Stamp;
  /** Milliseconds to which the device's stamps are rounded; null as long as they seem exact. */
  rounding(): number | null;
}

/** A reader that has seen nothing. */
export function createStamps(): Stamps {
  let last = Number.NEGATIVE_INFINITY;
  let lastHeard = Number.NEGATIVE_INFINITY;
  let rounding: number | null = null;
  const seen: number[] = [];

  const believable = (stamped: number | undefined, now: number): stamped is number =>
    stamped !== undefined &&
    Number.isFinite(stamped) &&
    stamped > 0 &&
    Math.abs(now - stamped) <= FURTHEST_MS &&
    stamped >= last - BACKWARDS_MS &&
    !(stamped === last && now - lastHeard > SAME_CHORD_MS);

  return {
    read(stamped, now) {
      const good = believable(stamped, now);
      if (good && stamped !== last) {
        seen.push(stamped);
        if (seen.length > WITNESSES) seen.shift();
        rounding = seen.length < WITNESSES ? null : (ROUNDINGS_MS.find((mark) => seen.every((each) => liesOn(each, mark))) ?? null);
      }
      // After a jump of the clock the old stamps say nothing about the new ones.
      last = good ? stamped : now;
      lastHeard = now;
      return { at: inputMillis(good ? stamped : now), coarse: !good || rounding !== null };
    },
    rounding: () => rounding,
  };
}

const liesOn = (stamped: number, mark: number): boolean => Math.abs(stamped - Math.round(stamped / mark) * mark) < 0.06;
