import { assert } from '../vocabulary';
import type { CountIn } from './count-in';
import { countInTo } from './count-in';
import type { Unrolled } from './occurrences';
import { endOf, notatedPlayTick, occurrencesIn, placeAt } from './occurrences';
import type { Performance, PerformedEvent, Vamp } from './performance';

/*
 * A programme is what one press of Play leads to: a count-in, then a performance from some bar on, then, after each
 * live change, another performance from the cycle boundary where the change lands. Play ticks count from the first
 * tick of the music; the count-in lies below 0. `live-change.ts` and `vamps.ts` add the spans.
 */

/** One performance sounding from a play tick on, until the next span. */
export interface Span extends Unrolled {
  readonly fromPlay: number;
  /** Passes completed before this span began. */
  readonly passesBefore: number;
  /** Ids of the `firstPassOnly` events that sound in this span's first pass. */
  readonly firsts: ReadonlySet<number>;
  /** Counts the spans of the programme, from 0: part of a sound's key. */
  readonly serial: number;
  /** Where music that goes round in an open vamp comes from and goes back to; missing everywhere else. */
  readonly home?: Home;
}

/** The form that an open vamp belongs to. */
export interface Home {
  readonly performance: Performance;
  readonly vamp: Vamp;
  /** Passes of the form completed. */
  readonly passes: number;
  /** Ids of its `firstPassOnly` events that are still to sound. */
  readonly firsts: ReadonlySet<number>;
}

/** What one press of Play leads to. */
export interface Programme {
  readonly countIn: CountIn;
  readonly spans: readonly [Span, ...Span[]];
}

/** A sound on its way: where it sounds in play ticks, and a key that no other sound of the programme has. */
export interface ProgrammeSound {
  readonly key: string;
  readonly playTick: number;
  readonly event: PerformedEvent;
  readonly pass: number;
  readonly countIn: boolean;
}

/** Where the programme is at a play tick. */
export interface ProgrammePlace {
  readonly performance: Performance;
  /** The performance itself, or the form that it is an open vamp of. */
  readonly form: Performance;
  /** Score tick; during the count-in the tick where the music will start. */
  readonly tick: number;
  readonly pass: number;
  /** Beats of the count-in that are left, the sounding one included, or null. */
  readonly countIn: number | null;
}

/** The programme of one press of Play. Throws when `startTick` is not the start of a bar of the performance. */
export function startProgramme(performance: Performance, startTick: number, countInBars: 0 | 1 | 2): Programme {
  assert(
    startTick >= performance.fromTick && startTick < performance.toTick,
    `a start must lie in [${performance.fromTick}, ${performance.toTick}), got ${startTick}`,
  );
  const firsts = new Set(performance.events.filter(({ firstPassOnly }) => firstPassOnly).map(({ id }) => id));
  const span: Span = { performance, startTick, fromPlay: 0, passesBefore: 0, firsts, serial: 0 };
  return { countIn: countInTo(performance, startTick, countInBars), spans: [span] };
}

/** The programme with one more span at its end. */
export function appended({ spans, ...programme }: Programme, span: Omit<Span, 'serial'>): Programme {
  const [first, ...rest] = spans;
  return { ...programme, spans: [first, ...rest, { ...span, serial: Math.max(...spans.map(({ serial }) => serial)) + 1 }] };
}

/** The play tick of the first tick of the count-in, or 0. */
export const firstPlayTick = (programme: Programme): number => (programme.countIn.ticks === 0 ? 0 : -programme.countIn.ticks);

/** The play tick at which everything is over, or null when the last span goes round. */
export function lastPlayTick({ spans }: Programme): number | null {
  const span = spans[spans.length - 1] ?? spans[0];
  const end = endOf(span);
  return end === null ? null : span.fromPlay + end;
}

/** What starts in the play ticks [from, to), ascending. Windows laid end to end hold every sound exactly once. */
export function soundsIn(programme: Programme, from: number, to: number): ProgrammeSound[] {
  const sounds: ProgrammeSound[] = [];
  for (const event of programme.countIn.events)
    if (event.tick >= from && event.tick < to)
      sounds.push({ key: `count:${event.id}`, playTick: event.tick, event, pass: 0, countIn: true });
  programme.spans.forEach((span, index) => {
    const length = (programme.spans[index + 1]?.fromPlay ?? Number.POSITIVE_INFINITY) - span.fromPlay;
    for (const occurrence of occurrencesIn(span, from - span.fromPlay, to - span.fromPlay)) {
      const { event, pass, playTick } = occurrence;
      if (notatedPlayTick(span, occurrence) >= length || (event.firstPassOnly && !span.firsts.has(event.id))) continue;
      sounds.push({
        key: `${span.serial}:${pass}:${event.id}`,
        playTick: span.fromPlay + playTick,
        event,
        pass: span.passesBefore + pass,
        countIn: false,
      });
    }
  });
  return programme.spans.length === 1 ? sounds : sounds.sort((a, b) => a.playTick - b.playTick);
}

/** Where the programme is at `playTick` (fractional for a playhead). Before the count-in counts as its start. */
export function programmeAt(programme: Programme, playTick: number): ProgrammePlace {
  if (playTick < 0) {
    const { performance, startTick } = programme.spans[0];
    const { ticks, beatTicks } = programme.countIn;
    const left = Math.min(ticks / beatTicks, Math.ceil(-playTick / beatTicks));
    return { performance, form: performance, tick: startTick, pass: 0, countIn: left > 0 ? left : null };
  }
  const span = programme.spans.findLast(({ fromPlay }) => fromPlay <= playTick) ?? programme.spans[0];
  const place = placeAt(span, Math.max(0, playTick - span.fromPlay));
  const { performance, home, passesBefore } = span;
  return { performance, form: home?.performance ?? performance, tick: place.tick, pass: passesBefore + place.pass, countIn: null };
}

/** The programme without the spans that were over before `playTick`. */
export function forgetSpansBefore(programme: Programme, playTick: number): Programme {
  const first = programme.spans.findLastIndex(({ fromPlay }) => fromPlay <= playTick);
  const [head, ...rest] = programme.spans.slice(Math.max(0, first));
  return first <= 0 || head === undefined ? programme : { ...programme, spans: [head, ...rest] };
}
