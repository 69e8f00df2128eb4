import type { Score } from '../../music/score';
import { type ClockMap, toInput } from '../../performance/clock-map';
import type { PartName, Performance } from '../../performance/performance';
import { notesInSong, onsetsInSong, type Take, type TakenNote, type TimingTrust } from '../../practice/take';
import { type InputMillis, inputMillis, TICKS_PER_STEP } from '../../vocabulary';
import { createClockTrack } from './clock-track';
import { createPlayedNotes } from './played-notes';
import type { OutputClock, Played, SoundingMusic } from './ports';
import { joinSounded, momentOf, playTickAt, type Sounded, type Stretch, stretchFrom } from './sounded';

/*
 * Turns what is played to the band into takes, one for every stretch (a pass, or eight bars of a long one). Playing only adds to a
 * list; everything else is done here, a few times a second, after a stretch is over.
 */

/** What a stretch was played under. */
export interface TakeTerms {
  readonly parts: readonly PartName[];
  readonly pitched: boolean;
  /** Delay of the input device, in milliseconds. */
  readonly latencyMs: number;
  /** Before coarse stamps are looked at. */
  readonly trust: TimingTrust;
  readonly scoreOf: (performance: Performance) => Score | null;
}

/** Why a stretch does not count. */
export type Interruption = 'clock jumped' | 'page was away' | 'microphone was away';

/** A stretch that is over. */
export interface Recorded {
  readonly take: Take;
  /** The same with the passes before it, up to four clave cycles: what one pass is too short to tell. `take` itself where there is nothing before. */
  readonly wide: Take;
  readonly stretch: Stretch;
  readonly interrupted: Interruption | null;
  /** Notes and claps heard during the stretch. */
  readonly heard: number;
}

/** Takes, as they come to an end. */
export interface Takes {
  hear(played: Played): void;
  /** Listens from now on: a stretch that is under way is not judged. */
  begin(): void;
  /** Says that the player was kept from playing. */
  interrupt(why: Interruption): void;
  /** Call it a few times a second; gives the stretches that ended since. A stretch cut off by Stop ends with the last bar that was played in. */
  tick(music: SoundingMusic | null, clock: OutputClock | null, terms: TakeTerms): readonly Recorded[];
  clocks: ReturnType<typeof createClockTrack>;
}

/** A stroke this little before a stretch belongs to it, one this little before its end to the next. */
export const EARLY_TICKS = TICKS_PER_STEP / 2;
/** A late note still belongs to the stretch that was just over. */
const SETTLE_SECONDS = 0.3;
/** A share of stamps above which the whole stretch counts as coarse. */
const COARSE_SHARE = 0.1;
/** Clave cycles that are looked at together. */
const WIDE_CYCLES = 4;
/** Notes this long before and after what is judged are handed on with it. */
const MARGIN_MS = 1000;
/** Notes older than this are no longer wanted: longer than four clave cycles at the slowest tempo. */
const KEPT_MS = 60_000;
/** A stretch cut off by Stop is worth a report of its own from this many bars on, or when there is no other. */
const WORTH_BARS = 4;
const BAR_OF_STEPS = 8;

/** Nothing taken yet. */
export function createTakes(): Takes {
  const clocks = createClockTrack();
  const played = createPlayedNotes();
  let sounded: Sounded | null = null;
  let judgedTo: number | null = null;
  let heardTick = 0;
  let interrupted: Interruption | null = null;
  /** True until music is met that was already going when listening began. */
  let fromTheStart = true;
  /** Play tick from which on everything was played and judged without a break, and how much was judged. */
  let unbrokenFrom = 0;
  let judgedStretches = 0;

  const inputMoment = (account: Sounded, playTick: number): InputMillis | null => {
    const map = clocks.map();
    return map && toInput(map, momentOf(account, playTick));
  };

  const notesBetween = (account: Sounded, map: ClockMap, from: number, to: number, terms: TakeTerms): readonly TakenNote[] => {
    const clock = { clocks: map, songZero: account.songZero, latencyMs: terms.latencyMs };
    const [first, last] = [toInput(map, momentOf(account, from)) - MARGIN_MS, toInput(map, momentOf(account, to)) + MARGIN_MS];
    const inside = <Event extends { readonly at: InputMillis }>(events: readonly Event[]) =>
      events.filter(({ at }) => at >= first && at <= last);
    const notes = notesInSong(inside(played.notes()), clock);
    if (terms.pitched) return notes;
    return [...notes.map((note) => ({ ...note, midi: null })), ...onsetsInSong(inside(played.onsets()), clock)].sort((a, b) => a.at - b.at);
  };

  const take = (stretch: Stretch, terms: TakeTerms, account: Sounded): Recorded => {
    const map = clocks.map();
    const from = inputMoment(account, stretch.fromPlayTick - EARLY_TICKS) ?? inputMillis(0);
    const to = inputMoment(account, stretch.toPlayTick - EARLY_TICKS) ?? from;
    const { heard, coarse } = played.count(from, to);
    const rough = heard > 0 && coarse / heard > COARSE_SHARE;
    const { performance, startTick, early = 0, fromPlay } = stretch.span;
    const timing = terms.trust === 'off' ? 'off' : rough || interrupted !== null ? 'coarse' : terms.trust;
    if (heard === 0 || interrupted !== null) unbrokenFrom = stretch.toPlayTick;
    const passTicks = performance.toTick - performance.fromTick;
    const passes = Math.max(0, Math.floor((WIDE_CYCLES * performance.clave.cycleSteps * TICKS_PER_STEP) / passTicks) - 1);
    const earliest = Math.max(unbrokenFrom, fromPlay, stretch.toPlayTick - (passes + 1) * passTicks);
    const wideFrom = stretch.wholePass ? Math.min(stretch.fromPlayTick, earliest) : stretch.fromPlayTick;
    const takeFrom = (fromPlayTick: number): Take => ({
      music: { performance, startTick, early, fromPlay },
      score: terms.scoreOf(performance),
      tempo: account.tempo,
      fromPlayTick,
      toPlayTick: stretch.toPlayTick,
      parts: terms.parts,
      notes: map ? notesBetween(account, map, fromPlayTick, stretch.toPlayTick, terms) : [],
      pitched: terms.pitched,
      timing,
    });
    const last = takeFrom(stretch.fromPlayTick);
    const recorded = {
      take: last,
      wide: wideFrom < stretch.fromPlayTick ? takeFrom(wideFrom) : last,
      stretch,
      interrupted,
      heard,
    };
    judgedStretches += 1;
    interrupted = null;
    return recorded;
  };

  /** The first clave cycle that starts after `playTick`. */
  const nextCycle = (account: Sounded, playTick: number): number => {
    const stretch = stretchFrom(account, playTick);
    if (!stretch) return playTick;
    const { performance, startTick, fromPlay } = stretch.span;
    const length = performance.toTick - performance.fromTick;
    const travelled = startTick - performance.fromTick + playTick - fromPlay;
    const passStart = playTick - (travelled % length);
    const start = performance.cycleStarts.find((tick) => tick - performance.fromTick >= travelled % length);
    return start === undefined ? passStart + length : passStart + start - performance.fromTick;
  };

  /** What was played of a stretch before Stop: up to the end of the last bar with a note in it, or null. */
  const cutOff = (account: Sounded, terms: TakeTerms): Recorded | null => {
    if (judgedTo === null || heardTick - judgedTo < BAR_OF_STEPS * TICKS_PER_STEP) return null;
    const stretch = stretchFrom(account, judgedTo);
    const map = clocks.map();
    if (!stretch || !map) return null;
    const bar = BAR_OF_STEPS * TICKS_PER_STEP;
    const end = Math.floor((Math.min(heardTick, stretch.toPlayTick) - stretch.fromPlayTick) / bar) * bar + stretch.fromPlayTick;
    if (end <= stretch.fromPlayTick || (judgedStretches > 0 && end - stretch.fromPlayTick < WORTH_BARS * bar)) return null;
    const recorded = take({ ...stretch, toPlayTick: end, wholePass: stretch.wholePass && end === stretch.toPlayTick }, terms, account);
    return recorded.heard > 0 ? recorded : null;
  };

  return {
    clocks,
    hear: played.hear,
    begin() {
      sounded = null;
      judgedTo = null;
      fromTheStart = false;
    },
    interrupt(why) {
      interrupted = why;
    },
    tick(music, clock, terms) {
      if (clock && clocks.read(clock.pair) === 'jumped') interrupted = 'clock jumped';
      if (music === null) {
        const last = sounded && cutOff(sounded, terms);
        sounded = null;
        judgedTo = null;
        fromTheStart = true;
        return last ? [last] : [];
      }
      const fresh = sounded === null || sounded.songZero !== music.songZero;
      sounded = joinSounded(sounded, music);
      if (!clock) return [];
      heardTick = playTickAt(sounded, clock.pair.audio);
      if (fresh) {
        interrupted = null;
        judgedStretches = 0;
        judgedTo = fromTheStart || heardTick <= 0 ? 0 : nextCycle(sounded, heardTick);
        unbrokenFrom = judgedTo;
        fromTheStart = true;
      }
      if (judgedTo === null) return [];
      const over: Recorded[] = [];
      for (;;) {
        const stretch = stretchFrom(sounded, judgedTo);
        // The end of a span is known only when the next has been handed over.
        if (!stretch || clock.pair.audio < momentOf(sounded, stretch.toPlayTick) + SETTLE_SECONDS) break;
        over.push(take(stretch, terms, sounded));
        judgedTo = stretch.toPlayTick;
        const end = inputMoment(sounded, stretch.toPlayTick);
        if (end !== null) played.forgetBefore(inputMillis(end - KEPT_MS));
      }
      return over;
    },
  };
}
