import { changeProgramme, changeProgrammeAt } from '../performance/live-change';
import type { Performance, PerformedEvent } from '../performance/performance';
import { firstPlayTick, forgetSpansBefore, lastPlayTick, programmeAt, soundsIn, startProgramme } from '../performance/programme';
import { forgetBefore, nearestTick, secondsAt, steadyTempo, tickAt, withTempo } from '../performance/tempo';
import type { Heard, PlayRequest } from '../state/ports';
import type { AudioSeconds, HalfNotesPerMinute } from '../vocabulary';
import { audioSeconds, songSeconds } from '../vocabulary';

/*
 * The scheduler, without any sound: it walks a programme in play ticks and gives every sound its absolute time on
 * the audio clock, once. Whoever has a clock (the player, the recorder, a test) asks it every few milliseconds for
 * what starts until a little after now. What has been handed over is never taken back except by stopping; changes
 * of tempo and music begin where nothing has been handed over.
 */

/** One sound on its way, with its moment on the audio clock. */
export interface ScheduledSound {
  /** Unlike any other sound's since Play was pressed. */
  readonly key: string;
  readonly at: AudioSeconds;
  readonly seconds: number;
  readonly event: PerformedEvent;
  readonly pass: number;
  readonly countIn: boolean;
}

/** One press of Play, walked through once. */
export interface LookAhead {
  /** Hands over everything that starts before `until` and was not handed over yet, ascending. */
  advance(until: AudioSeconds): readonly ScheduledSound[];
  /** As `Player.change`. */
  change(performance: Performance): number | null;
  /** As `Player.changeAt`. */
  changeAt(performance: Performance, atTick: number, withinTicks: number): number | null;
  /** From the first tick that has not been handed over. */
  setTempo(tempo: HalfNotesPerMinute): void;
  /** What is heard at a moment of the audio clock. */
  heardAt(at: AudioSeconds): Heard;
  /** When everything is over, or null while the music goes round. */
  endsAt(): AudioSeconds | null;
}

/** How long what was heard is remembered, in seconds: longer than any output latency and look-ahead together. */
const MEMORY_SECONDS = 5;

/** Begins `request` so that its first tick (of the count-in, if there is one) falls at `firstAt`. */
export function startLookAhead(request: PlayRequest, firstAt: AudioSeconds): LookAhead {
  let programme = startProgramme(request.performance, request.fromTick, request.countInBars);
  let handedTo = firstPlayTick(programme);
  let tempo = steadyTempo(request.tempo, handedTo);
  const momentOf = (playTick: number) => audioSeconds(firstAt + secondsAt(tempo, playTick));
  const songTime = (at: AudioSeconds) => songSeconds(at - firstAt);

  return {
    advance(until) {
      const to = nearestTick(tempo, songTime(until));
      if (to <= handedTo) return [];
      const sounds = soundsIn(programme, handedTo, to).map(({ key, playTick, event, pass, countIn }) => {
        const at = momentOf(playTick);
        return { key, at, seconds: momentOf(playTick + event.soundingTicks) - at, event, pass, countIn };
      });
      handedTo = to;
      const memory = Math.floor(tickAt(tempo, songTime(audioSeconds(until - MEMORY_SECONDS))));
      programme = forgetSpansBefore(programme, memory);
      tempo = forgetBefore(tempo, memory);
      return sounds;
    },
    change(performance) {
      const landing = changeProgramme(programme, performance, handedTo);
      if (landing === null) return null;
      programme = landing.programme;
      return landing.tick;
    },
    changeAt(performance, atTick, withinTicks) {
      const landing = changeProgrammeAt(programme, performance, atTick, handedTo, withinTicks);
      if (landing === null) return null;
      programme = landing.programme;
      return landing.tick;
    },
    setTempo(next) {
      tempo = withTempo(tempo, handedTo, next);
    },
    heardAt(at) {
      const playTick = Math.max(firstPlayTick(programme), tickAt(tempo, songTime(at)));
      const end = lastPlayTick(programme);
      return programmeAt(programme, end === null ? playTick : Math.min(playTick, end));
    },
    endsAt() {
      const end = lastPlayTick(programme);
      return end === null ? null : momentOf(end);
    },
  };
}
