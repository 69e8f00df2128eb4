import { type ClockMap, toInput } from '../../performance/clock-map';
import type { PerformedEvent } from '../../performance/performance';
import { delayOfTraces, MARKER_MS, MARKER_WINDOW_MS, type MarkerDelay, traceOf } from '../../practice/marker-delay';
import { keptRate, thinned } from '../../practice/thin';
import type { AudioSeconds, InputMillis } from '../../vocabulary';
import type { Mix } from '../ports';
import type { ClickSound, HeardSound } from './ports';

/*
 * The band's clicks out of the loudspeaker, looked for in what the microphone hears of the very take that is judged. A few seconds of
 * thinned sound are kept until the clicks in them have been looked for, and then forgotten.
 */

/** True for a sound that delays can be measured by, and that is not muted: clave and pulse, and all of the count-in. */
export function isAudibleClick({ part }: PerformedEvent, countIn: boolean, balance: Mix['parts']): boolean {
  if (countIn) return true;
  return (part === 'clave' || part === 'pulse') && !balance[part].muted && balance[part].level > 0;
}

/** Clicks of one press of Play, and where they were heard. */
export interface Markers {
  /** A click that is on its way: its moment, and the samples that sound then. Another `play` begins anew. */
  expect(click: ClickSound, at: AudioSeconds, play: number): void;
  /** What the microphone heard next. */
  hear(heard: HeardSound): void;
  /** A clap that was found in it; claps are handed over within a tenth of a second. */
  clap(at: InputMillis): void;
  /** Looks for every click whose time is over; gives what all of them say so far, or null when none has been looked for yet. */
  settle(clocks: ClockMap): MarkerDelay | null;
  begin(): void;
}

/** Sound older than this is forgotten: clicks are handed over less than two seconds ahead and looked for as soon as they are over. */
const KEPT_MS = 4000;
/** The newest clicks decide; at the slowest tempo that is about a minute. */
const MOST_TRACES = 40;
/** Two pieces are one stretch of sound when the second begins this close to the end of the first. */
const SEAM_MS = 8;

interface Expected {
  readonly click: ClickSound;
  readonly at: AudioSeconds;
}

/** Nothing sounded, nothing heard. */
export function createMarkers(): Markers {
  let pieces: HeardSound[] = [];
  let expected: Expected[] = [];
  let claps: InputMillis[] = [];
  let traces: Float32Array[] = [];
  let current: number | null = null;
  /** What the traces say, until there are more. */
  let said: MarkerDelay | null = null;
  const clicks = new Map<string, Float32Array>();

  const begin = (): void => {
    expected = [];
    traces = [];
    said = null;
    current = null;
  };
  const thinClick = ({ name, samples, rate }: ClickSound, forRate: number): Float32Array => {
    const key = `${name} ${samples.length} ${rate} ${forRate}`;
    const known = clicks.get(key) ?? thinned(samples, rate, forRate);
    clicks.set(key, known);
    return known;
  };
  /** Null when the microphone was not listening to all of it. */
  const look = ({ click, at }: Expected, clocks: ClockMap, forRate: number): Float32Array | null => {
    const rate = keptRate(forRate);
    const moment = toInput(clocks, at);
    const sound = cut(pieces, moment + MARKER_WINDOW_MS.from - MARKER_MS.before, Math.ceil((windowMs * rate) / 1000));
    const clapsMs = claps.map((clap) => clap - moment);
    return sound && traceOf(sound, thinClick(click, forRate), rate, clapsMs);
  };

  return {
    begin,
    expect(click, at, play) {
      if (play !== current) begin();
      current = play;
      expected.push({ click, at });
    },
    hear(heard) {
      // Another device, or another rate: what was found before cannot be laid over what comes.
      if (pieces.length > 0 && pieces[0]?.rate !== heard.rate) {
        pieces = [];
        traces = [];
        said = null;
      }
      pieces.push(heard);
      pieces = pieces.filter(({ at }) => at > heard.at - KEPT_MS);
      claps = claps.filter((at) => at > heard.at - KEPT_MS);
    },
    clap: (at) => claps.push(at),
    settle(clocks) {
      const last = pieces.at(-1);
      if (last) {
        const over = (each: Expected): boolean => toInput(clocks, each.at) + MARKER_WINDOW_MS.from + windowMs < endOf(last);
        for (const each of expected.filter(over)) {
          const trace = look(each, clocks, last.rate);
          if (trace) {
            traces.push(trace);
            said = null;
          }
        }
        expected = expected.filter((each) => !over(each));
        traces = traces.slice(-MOST_TRACES);
      }
      if (current === null || !last || traces.length === 0) return null;
      said ??= delayOfTraces(traces, keptRate(last.rate));
      return said;
    },
  };
}

const windowMs = MARKER_WINDOW_MS.to - MARKER_WINDOW_MS.from + MARKER_MS.before + MARKER_MS.of;
const endOf = ({ at, samples, rate }: HeardSound): number => at + (1000 * samples.length) / keptRate(rate);

/** `many` samples from a moment on, or null where a part of them was not heard. */
function cut(pieces: readonly HeardSound[], from: number, many: number): Float32Array | null {
  const first = pieces.findIndex((piece) => piece.at <= from && endOf(piece) > from);
  const start = pieces[first];
  if (start === undefined) return null;
  const sound = new Float32Array(many);
  let skip = Math.round(((from - start.at) * keptRate(start.rate)) / 1000);
  let filled = 0;
  let due = start.at as number;
  for (const piece of pieces.slice(first)) {
    if (Math.abs(piece.at - due) > SEAM_MS) return null;
    const part = piece.samples.subarray(skip, skip + many - filled);
    sound.set(part, filled);
    filled += part.length;
    if (filled === many) return sound;
    skip = 0;
    due = endOf(piece);
  }
  return null;
}
