import { type Ensemble, FULL_BAND, isLeftOut } from '../performance/ensemble';
import { changeProgramme } from '../performance/live-change';
import type { Performance } from '../performance/performance';
import { firstPlayTick, forgetSpansBefore, lastPlayTick, programmeAt, soundsIn, startProgramme } from '../performance/programme';
import { forgetBefore, nearestTick, secondsAt, steadyTempo, tickAt, withTempo } from '../performance/tempo';
import { decideUntil, landingOf, NO_WISHES, type VampState, vampAt } from '../performance/vamps';
import type { SoundingMusic, SoundOnItsWay } from '../state/listening/ports';
import type { Heard, PlayRequest, SoundingVamp } from '../state/ports';
import type { AudioSeconds, HalfNotesPerMinute } from '../vocabulary';
import { audioSeconds, songSeconds } from '../vocabulary';

/*
 * The scheduler, without any sound: it walks a programme in play ticks and gives every sound its absolute time on
 * the audio clock, once. Whoever has a clock (the player, the recorder, a test) asks it every few milliseconds for
 * what starts until a little after now. What has been handed over is never taken back except by stopping; changes
 * of tempo and music begin where nothing has been handed over.
 */

/** How far a player in sight looks ahead, in seconds: more than the 300 ms that a busy page may be held up, and a tick. What is not on its way by then would come late. */
export const AHEAD_SECONDS = 0.4;
/** How often a player asks for what is next, in milliseconds. */
export const TICK_MS = 25;

/** One press of Play, walked through once. */
export interface LookAhead {
  /** Hands over everything that starts before `until` and was not handed over yet, ascending. */
  advance(until: AudioSeconds): readonly SoundOnItsWay[];
  /** As `Player.change`. */
  change(performance: Performance): number | null;
  /** Asks to leave the open vamp that is heard at a moment of the audio clock; as `Player.cue`. */
  cueAt(at: AudioSeconds): Exclude<VampState, 'holding'> | null;
  /** As `Player.vamp`, at a moment of the audio clock. */
  vampAt(at: AudioSeconds): SoundingVamp | null;
  /** From the first tick that has not been handed over. */
  setTempo(tempo: HalfNotesPerMinute): void;
  /** As `Player.setEnsemble`. */
  setEnsemble(ensemble: Ensemble): void;
  /** What is heard at a moment of the audio clock. */
  heardAt(at: AudioSeconds): Heard;
  /** What is heard at a moment of the audio clock, or the form that it is an open vamp of. */
  formAt(at: AudioSeconds): Performance;
  /** As `Player.music`. */
  music(): SoundingMusic;
  /** When everything is over, or null while the music goes round. */
  endsAt(): AudioSeconds | null;
}

/** How long what was heard is remembered, in seconds: longer than any output latency and look-ahead together. */
const MEMORY_SECONDS = 5;

/** Begins `request` so that its first tick (of the count-in, if there is one) falls at `firstAt`. */
export function startLookAhead(request: PlayRequest, firstAt: AudioSeconds): LookAhead {
  let programme = startProgramme(request.performance, request.fromTick, request.countInBars);
  let wishes = NO_WISHES;
  let ensemble = FULL_BAND;
  let handedTo = firstPlayTick(programme);
  let tempo = steadyTempo(request.tempo, handedTo);
  const momentOf = (playTick: number) => audioSeconds(firstAt + secondsAt(tempo, playTick));
  const songTime = (at: AudioSeconds) => songSeconds(at - firstAt);

  const heardTick = (at: AudioSeconds): number => {
    const playTick = Math.max(firstPlayTick(programme), tickAt(tempo, songTime(at)));
    return Math.min(playTick, lastPlayTick(programme) ?? playTick);
  };
  const vampHeard = (at: AudioSeconds): SoundingVamp | null => {
    const found = vampAt({ programme, wishes }, heardTick(at), handedTo);
    return found && { fromTick: found.vamp.fromTick, toTick: found.vamp.toTick, state: found.state };
  };

  return {
    advance(until) {
      const to = nearestTick(tempo, songTime(until));
      if (to <= handedTo) return [];
      ({ programme, wishes } = decideUntil({ programme, wishes }, handedTo, to));
      const sounding = soundsIn(programme, handedTo, to).filter(
        ({ event, pass, playTick, countIn }) =>
          countIn || !isLeftOut(ensemble, event, pass, programmeAt(programme, Math.max(0, playTick)).performance),
      );
      const sounds = sounding.map(({ key, playTick, event, pass, countIn }) => {
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
      // Before anything has sounded the new music is there at once; else it waits for its cycle.
      if (landing.programme.spans.length === 1) {
        programme = landing.programme;
        return landing.tick;
      }
      wishes = { ...wishes, change: performance };
      return landingOf({ programme, wishes }, handedTo);
    },
    cueAt(at) {
      if (vampHeard(at)?.state === 'holding') wishes = { ...wishes, cued: true };
      const state = vampHeard(at)?.state ?? null;
      return state === 'holding' ? null : state;
    },
    vampAt: vampHeard,
    setTempo(next) {
      tempo = withTempo(tempo, handedTo, next);
    },
    setEnsemble(next) {
      ensemble = next;
    },
    heardAt: (at) => programmeAt(programme, heardTick(at)),
    formAt(at) {
      return programmeAt(programme, heardTick(at)).form;
    },
    music: () => ({ songZero: firstAt, tempo, spans: programme.spans, handedTo }),
    endsAt() {
      const end = lastPlayTick(programme);
      return end === null ? null : momentOf(end);
    },
  };
}
