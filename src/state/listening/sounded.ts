import type { Span } from '../../performance/programme';
import type { TempoMap } from '../../performance/tempo';
import { secondsAt, tickAt } from '../../performance/tempo';
import { type AudioSeconds, audioSeconds, songSeconds } from '../../vocabulary';
import type { SoundingMusic } from './ports';

/*
 * Everything that has sounded since Play was pressed. The player forgets what is some seconds old; a pass may last a minute, so its
 * tempo and spans are joined here to one account.
 */

/** A run of play ticks inside one span and one pass: what is judged at once. */
export interface Stretch {
  readonly span: Span;
  readonly fromPlayTick: number;
  /** Exclusive. */
  readonly toPlayTick: number;
  /** Passes of the music completed before it. */
  readonly pass: number;
  /** True when it is a whole pass from the first tick of the loop to its last. */
  readonly wholePass: boolean;
}

/** One press of Play as it has sounded so far. */
export interface Sounded {
  readonly songZero: AudioSeconds;
  readonly tempo: TempoMap;
  readonly spans: readonly Span[];
}

/** A pass longer than this many bars is judged in pieces, so that no player waits a whole form for a word. */
const LONGEST_BARS = 8;

/** `before` with what the player now says joined on; a new press of Play begins a new account. */
export function joinSounded(before: Sounded | null, { songZero, tempo, spans }: SoundingMusic): Sounded {
  if (before === null || before.songZero !== songZero) return { songZero, tempo, spans };
  const [first, ...rest] = [...before.tempo.filter(({ fromTick }) => fromTick < tempo[0].fromTick), ...tempo];
  const known = new Set(spans.map(({ serial }) => serial));
  const joined = [...before.spans.filter(({ serial, fromPlay }) => !known.has(serial) && fromPlay < (spans[0]?.fromPlay ?? 0)), ...spans];
  return { songZero, tempo: first === undefined ? tempo : [first, ...rest], spans: joined };
}

/** The play tick that is heard at a moment of the audio clock. */
export const playTickAt = (sounded: Sounded, at: AudioSeconds): number => tickAt(sounded.tempo, songSeconds(at - sounded.songZero));

/** The moment of the audio clock at which a play tick is heard. */
export const momentOf = (sounded: Sounded, playTick: number): AudioSeconds =>
  audioSeconds(sounded.songZero + secondsAt(sounded.tempo, playTick));

/** The stretch that begins at `fromPlayTick` (0 or later): to the end of its pass, of its span, or of eight bars, whichever comes first. */
export function stretchFrom({ spans }: Sounded, fromPlayTick: number): Stretch | null {
  const index = spans.findLastIndex(({ fromPlay }) => fromPlay <= fromPlayTick);
  const span = spans[index];
  if (span === undefined) return null;
  const { performance, startTick, fromPlay } = span;
  const length = performance.toTick - performance.fromTick;
  const travelled = startTick - performance.fromTick + fromPlayTick - fromPlay;
  const pass = Math.floor(travelled / length);
  if (!performance.closed && pass > 0) return null;
  const passStart = fromPlayTick - (travelled - pass * length);
  const ends = [passStart + length, spans[index + 1]?.fromPlay ?? Number.POSITIVE_INFINITY];
  if (performance.bars.length > LONGEST_BARS) ends.push(passStart + pieceEnd(performance, travelled - pass * length));
  const toPlayTick = Math.min(...ends);
  return {
    span,
    fromPlayTick,
    toPlayTick,
    pass: span.passesBefore + pass,
    wholePass: fromPlayTick === passStart && toPlayTick === passStart + length,
  };
}

/** Ticks from the start of the pass at which the piece that holds `within` ends: at a clave cycle, about eight bars on. */
function pieceEnd(performance: Span['performance'], within: number): number {
  const { bars, cycleStarts, fromTick, toTick } = performance;
  const bar = bars.findLastIndex(({ tick }) => tick - fromTick <= within);
  const wanted = bars[bar + LONGEST_BARS]?.tick ?? toTick;
  // A last piece of a bar or two is joined to the one before.
  if (bar + LONGEST_BARS + 2 >= bars.length) return toTick - fromTick;
  return (cycleStarts.find((tick) => tick >= wanted) ?? toTick) - fromTick;
}
