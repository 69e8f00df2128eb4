import { placeAt, reach } from './occurrences';
import type { Performance, PerformedEvent } from './performance';
import { appended, type Programme, type Span } from './programme';

/** A change that has found its place. */
export interface Landing {
  readonly programme: Programme;
  /** Score tick in the new performance where it lands. */
  readonly tick: number;
  /** Play tick at which it lands. */
  readonly playTick: number;
}

/**
 * The programme with `performance` in place of what sounds, from the next clave cycle that has not been handed to
 * the sound (everything before play tick `handedTo` has). A change made before an earlier one landed takes its
 * place. It lands on the same tick of the form, or on the new range's start when that no longer holds the tick.
 * Null when the form is played out before another cycle begins.
 */
export function changeProgramme(programme: Programme, performance: Performance, handedTo: number): Landing | null {
  const open = ({ fromPlay, early = 0 }: Span, index: number) => index > 0 && fromPlay + early >= handedTo;
  const pending = programme.spans.find(open);
  const kept = programme.spans.filter((span, index) => !open(span, index));
  const last = kept[kept.length - 1] ?? programme.spans[0];
  if (kept.length === 1 && handedTo <= 0 && sameClave(last.performance, performance)) return restart(programme, performance);
  const playTick = pending?.fromPlay ?? nextBoundary(last, performance, handedTo);
  if (playTick === null) return null;
  const place = placeAt(last, playTick - last.fromPlay);
  const tick = landingTick(performance, place.tick);
  // Rounds of an open vamp are no passes of the form.
  const passes = last.home?.passes ?? last.passesBefore + place.pass;
  const [first, ...rest] = kept;
  const next = appended(
    { ...programme, spans: [first ?? programme.spans[0], ...rest] },
    {
      performance,
      startTick: tick,
      fromPlay: playTick,
      early: earlyOf(last.performance, performance),
      passesBefore: passes,
      firsts: firstsAfterChange(last.performance, place.tick, performance, tick, passes === 0),
    },
  );
  return { programme: next, tick, playTick };
}

/** Nothing of the music has been handed over: the new performance simply takes the first one's place. */
function restart(programme: Programme, performance: Performance): Landing {
  const [old] = programme.spans;
  const tick = performance.bars.some((bar) => bar.tick === old.startTick) ? old.startTick : performance.fromTick;
  const firsts = new Set(performance.events.filter(({ firstPassOnly }) => firstPassOnly).map(({ id }) => id));
  return {
    programme: { ...programme, spans: [{ ...old, performance, startTick: tick, firsts, serial: old.serial + 1 }] },
    tick,
    playTick: 0,
  };
}

/** How much earlier than its place feel may put a sound of either, in ticks, 0 or less. */
const earlyOf = (one: Performance, other: Performance): number => Math.min(reach(one).early, reach(other).early);

function sameClave(a: Performance, b: Performance): boolean {
  return a.clave.cycleSteps === b.clave.cycleSteps && a.clave.steps.join() === b.clave.steps.join();
}

/** The first cycle start of the span from which nothing has been handed over, in play ticks. */
function nextBoundary(span: Span, next: Performance, handedTo: number): number | null {
  const { performance, startTick, fromPlay } = span;
  const { fromTick, toTick, closed, cycleStarts, bars } = performance;
  // A stroke that feel puts early may be on its way although its cycle has not begun.
  const earliest = Math.max(fromPlay + 1, 1, handedTo - earlyOf(performance, next)) - fromPlay;
  const length = toTick - fromTick;
  const entered = startTick - fromTick;
  const starts = cycleStarts.length > 0 ? cycleStarts : [fromTick];
  const formEnd = bars.at(-1);
  const candidates = closed || formEnd === undefined || !next.closed ? starts : [...starts, formEnd.tick + formEnd.ticks];
  const firstPass = closed ? Math.max(0, Math.floor((entered + earliest) / length)) : 0;
  for (let pass = firstPass; pass <= (closed ? firstPass + 1 : 0); pass += 1)
    for (const start of candidates) {
      const local = pass * length - entered + (start - fromTick);
      if (local >= earliest) return fromPlay + local;
    }
  return null;
}

/** The musically corresponding cycle start in the new performance. */
function landingTick(performance: Performance, oldTick: number): number {
  const { cycleStarts, fromTick, toTick } = performance;
  if (oldTick < fromTick || oldTick >= toTick) return fromTick;
  return cycleStarts.find((start) => start >= oldTick) ?? fromTick;
}

/**
 * Which `firstPassOnly` strokes still sound after a change: on the landing itself those whose note is not already
 * ringing from an anticipation, and later ones only while the form is heard for the first time.
 */
function firstsAfterChange(
  old: Performance,
  oldTick: number,
  next: Performance,
  tick: number,
  firstTimeRound: boolean,
): ReadonlySet<number> {
  const place = oldTick === old.fromTick && old.closed ? old.toTick : oldTick;
  const rings = (event: PerformedEvent) => {
    const last = old.events.findLast((candidate) => candidate.part === event.part && candidate.tick < place);
    return last !== undefined && last.midi !== null && event.midi !== null && (last.midi - event.midi) % 12 === 0;
  };
  return new Set(
    next.events.filter((event) => event.firstPassOnly && (event.tick === tick ? !rings(event) : firstTimeRound)).map(({ id }) => id),
  );
}
