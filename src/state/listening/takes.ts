import type { Score } from '../../music/score';
import { toInput } from '../../performance/clock-map';
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
  readonly trust: Exclude<TimingTrust, 'coarse'>;
  readonly scoreOf: (performance: Performance) => Score | null;
}

/** Why a stretch does not count. */
export type Interruption = 'clock jumped' | 'page was away';

/** A stretch that is over. */
export interface Recorded {
  readonly take: Take;
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

/** A late note still belongs to the stretch that was just over. */
const SETTLE_SECONDS = 0.3;
/** A share of stamps above which the whole stretch counts as coarse. */
const COARSE_SHARE = 0.1;
/** Notes older than this before a stretch are no longer wanted. */
const KEPT_BEFORE_MS = 3000;
/** A stroke may come this much before the stretch that it belongs to. */
const EARLY_MS = 250;
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

  const take = (stretch: Stretch, from: InputMillis, terms: TakeTerms, account: Sounded): Recorded => {
    const map = clocks.map();
    const heard = played.countSince(from);
    const coarse = heard > 0 && played.coarseSince(from) / heard > COARSE_SHARE;
    const clock = map && { clocks: map, songZero: account.songZero, latencyMs: terms.latencyMs };
    const notes: readonly TakenNote[] = clock
      ? [
          ...(terms.pitched
            ? notesInSong(played.notes(), clock)
            : notesInSong(played.notes(), clock).map((note) => ({ ...note, midi: null }))),
          ...(terms.pitched ? [] : onsetsInSong(played.onsets(), clock)),
        ].sort((a, b) => a.at - b.at)
      : [];
    const { performance, startTick, early = 0, fromPlay } = stretch.span;
    const timing = terms.trust === 'off' ? 'off' : coarse || interrupted !== null ? 'coarse' : terms.trust;
    const recorded: Recorded = {
      take: {
        music: { performance, startTick, early, fromPlay },
        score: terms.scoreOf(performance),
        tempo: account.tempo,
        fromPlayTick: stretch.fromPlayTick,
        toPlayTick: stretch.toPlayTick,
        parts: terms.parts,
        notes,
        pitched: terms.pitched,
        timing,
      },
      stretch,
      interrupted,
      heard,
    };
    interrupted = null;
    return recorded;
  };

  const inputMoment = (account: Sounded, playTick: number): InputMillis | null => {
    const map = clocks.map();
    return map && toInput(map, momentOf(account, playTick));
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
    const from = inputMoment(account, stretch.fromPlayTick) ?? inputMillis(0);
    const bar = BAR_OF_STEPS * TICKS_PER_STEP;
    const end = Math.floor((Math.min(heardTick, stretch.toPlayTick) - stretch.fromPlayTick) / bar) * bar + stretch.fromPlayTick;
    if (end <= stretch.fromPlayTick) return null;
    const recorded = take(
      { ...stretch, toPlayTick: end, wholePass: stretch.wholePass && end === stretch.toPlayTick },
      from,
      terms,
      account,
    );
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
        judgedTo = fromTheStart ? 0 : nextCycle(sounded, heardTick);
        fromTheStart = true;
      }
      if (judgedTo === null) return [];
      const over: Recorded[] = [];
      for (;;) {
        const stretch = stretchFrom(sounded, judgedTo);
        // The end of a span is known only when the next has been handed over.
        if (!stretch || clock.pair.audio < momentOf(sounded, stretch.toPlayTick) + SETTLE_SECONDS) break;
        const from = inputMoment(sounded, stretch.fromPlayTick) ?? inputMillis(0);
        over.push(take(stretch, inputMillis(from - EARLY_MS), terms, sounded));
        judgedTo = stretch.toPlayTick;
        const end = inputMoment(sounded, stretch.toPlayTick);
        if (end !== null) played.forgetBefore(inputMillis(end - KEPT_BEFORE_MS));
      }
      return over;
    },
  };
}
