import { changeProgramme } from './live-change';
import { placeAt, reach } from './occurrences';
import type { Performance, PerformedEvent, Vamp } from './performance';
import { appended, type Programme, type Span } from './programme';

/*
 * Open vamps. The form holds a vamp as one pass; while it plays, the music passes into the vamp's round at a turn (the start of its last
 * bar) and goes round, leading back to its own first chord, until it is cued. Then it passes back to the form at the next turn, so that
 * fill, bass and anticipations lead on. Nothing is decided before the sound must have it: a wish (a cue, other music) waits until the
 * window in which it falls is handed over, so a cue may come as late as that, and what was asked for last counts.
 */

/** What a player has asked for that has not begun to sound. */
export interface Wishes {
  /** Music to change to on the next cycle, or null. */
  readonly change: Performance | null;
  /** True when the vamp that goes round is to be left. */
  readonly cued: boolean;
}
/** Nothing asked for. */
export const NO_WISHES: Wishes = { change: null, cued: false };

/** A programme and what still waits to become part of it. */
export interface Decided {
  readonly programme: Programme;
  readonly wishes: Wishes;
}

/** What a vamp does: goes round, is left at the end of this round, or (the cue came too late) goes round once more before it is left. */
export type VampState = 'holding' | 'leaving' | 'one more round';

/** The programme with everything decided that sounds before play tick `to`; what lies before `handedTo` has been handed to the sound. */
export function decideUntil(decided: Decided, handedTo: number, to: number): Decided {
  return decide(decided, handedTo, ({ fromPlay, early }) => fromPlay + early < to);
}

/** Where the change that is asked for will land as things stand: score tick in the new performance, or null when it will not. */
export function landingOf({ programme, wishes }: Decided, handedTo: number): number | null {
  const { change } = wishes;
  if (change === null) return null;
  const landed = decide({ programme, wishes }, handedTo, (_, waits) => waits);
  return landed.programme.spans.findLast(({ performance }) => performance === change)?.startTick ?? null;
}

/** The state of the vamp in which `playTick` lies as it is heard, or null outside of vamps. */
export function vampAt(
  { programme, wishes }: Decided,
  playTick: number,
  handedTo: number,
): { readonly vamp: Vamp; readonly state: VampState } | null {
  if (playTick < 0) return null;
  const span = spanAt(programme, playTick);
  const { tick } = placeAt(span, playTick - span.fromPlay);
  const vamp = span.home?.vamp ?? vampOver(span.performance, tick);
  if (vamp === undefined) return null;
  // A playhead is fractional, a turn is not.
  const turn = Math.round(playTick + (vamp.turns[1] - tick));
  const early = earlyOf(span.home?.performance ?? span.performance, vamp.round);
  if (turn + early >= handedTo) return { vamp, state: wishes.cued ? 'leaving' : 'holding' };
  if (spanAt(programme, turn).home === undefined) return { vamp, state: 'leaving' };
  return { vamp, state: wishes.cued ? 'one more round' : 'holding' };
}

/** A step that is due: a turn of a vamp, or the landing of a change. */
interface Step {
  readonly fromPlay: number;
  /** How much earlier than `fromPlay` feel may put a sound of either side. */
  readonly early: number;
  readonly take: () => Decided;
}

/** Takes step after step while `wanted`; it is asked with whether a change still waits. */
function decide(start: Decided, handedTo: number, wanted: (step: Step, waits: boolean) => boolean): Decided {
  let decided = start;
  let cursor = handedTo;
  for (;;) {
    const turn = nextTurn(decided, cursor);
    const landing = nextLanding(decided, cursor);
    const step = landing !== null && (turn === null || landing.fromPlay < turn.fromPlay) ? landing : turn;
    if (step === null || !wanted(step, decided.wishes.change !== null)) return decided;
    decided = step.take();
    cursor = Math.max(cursor, step.fromPlay + 1);
  }
}

function nextLanding({ programme, wishes }: Decided, cursor: number): Step | null {
  if (wishes.change === null) return null;
  const landing = changeProgramme(programme, wishes.change, cursor);
  if (landing === null) return null;
  const early = earlyOf(lastOf(programme).performance, wishes.change);
  // A cue is for the vamp that sounds; music that has none there forgets it.
  const cued = wishes.cued && vampOver(wishes.change, landing.tick) !== undefined;
  return { fromPlay: landing.playTick, early, take: () => ({ programme: landing.programme, wishes: { change: null, cued } }) };
}

/** The next turn of a vamp that has not been handed over. */
function nextTurn({ programme, wishes }: Decided, cursor: number): Step | null {
  const span = lastOf(programme);
  const vamps = span.home ? [span.home.vamp] : (span.performance.vamps ?? []);
  let next: { readonly fromPlay: number; readonly early: number; readonly vamp: Vamp; readonly tick: number } | null = null;
  for (const vamp of vamps) {
    const early = earlyOf(span.home?.performance ?? span.performance, vamp.round);
    for (const tick of vamp.turns) {
      const fromPlay = nextTime(span, tick, Math.max(cursor - early, span.fromPlay + 1));
      if (fromPlay !== null && (next === null || fromPlay < next.fromPlay)) next = { fromPlay, early, vamp, tick };
    }
  }
  if (next === null) return null;
  const { fromPlay, early, vamp, tick } = next;
  const take = (): Decided => {
    const left = wishes.cued && tick === vamp.turns[1];
    return { programme: turned(programme, span, vamp, tick, fromPlay, wishes.cued), wishes: left ? { ...wishes, cued: false } : wishes };
  };
  return { fromPlay, early, take };
}

/** The programme after a turn: in the round unless cued, in the form if so; unchanged where it is there already. */
function turned(programme: Programme, span: Span, vamp: Vamp, tick: number, fromPlay: number, cued: boolean): Programme {
  if (cued !== (span.home !== undefined)) return programme;
  const early = earlyOf(span.home?.performance ?? span.performance, vamp.round);
  if (span.home) {
    const { performance, passes, firsts } = span.home;
    return appended(programme, { performance, startTick: tick, fromPlay, early, passesBefore: passes, firsts });
  }
  const place = placeAt(span, fromPlay - span.fromPlay);
  const passes = span.passesBefore + place.pass;
  const { performance } = span;
  const ahead = performance.events.filter(({ id, tick: at }) => place.pass === 0 && at >= tick && span.firsts.has(id));
  const home = { performance, vamp, passes, firsts: idsOf(ahead.filter((event) => event.tick >= vamp.toTick)) };
  const still = new Set(ahead.map((event) => event.tick));
  const firsts = idsOf(vamp.round.events.filter((event) => event.firstPassOnly && still.has(event.tick)));
  return appended(programme, { performance: vamp.round, startTick: tick, fromPlay, early, passesBefore: passes, firsts, home });
}

const idsOf = (events: readonly PerformedEvent[]): ReadonlySet<number> => new Set(events.map(({ id }) => id));

/** The first play tick from `earliest` on at which score tick `tick` comes, or null when it is not to come again. */
function nextTime({ performance, startTick, fromPlay }: Span, tick: number, earliest: number): number | null {
  const { fromTick, toTick, closed } = performance;
  const first = fromPlay + tick - startTick;
  if (first >= earliest) return first;
  if (!closed) return null;
  const length = toTick - fromTick;
  return first + Math.ceil((earliest - first) / length) * length;
}

const vampOver = (performance: Performance, tick: number): Vamp | undefined =>
  performance.vamps?.find(({ fromTick, toTick }) => tick >= fromTick && tick < toTick);
const earlyOf = (one: Performance, other: Performance): number => Math.min(reach(one).early, reach(other).early);
const lastOf = ({ spans }: Programme): Span => spans[spans.length - 1] ?? spans[0];
const spanAt = ({ spans }: Programme, playTick: number): Span => spans.findLast(({ fromPlay }) => fromPlay <= playTick) ?? spans[0];
