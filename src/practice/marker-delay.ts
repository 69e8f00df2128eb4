import { medianOf } from './statistics';

/*
 * How long the band's own clicks take from the audio clock, through loudspeaker and air, into the microphone: told from the very
 * recording that the claps are found in (the idea of recording stimulus and player together: Anglada-Tort, Harrison & Jacoby 2022,
 * Behavior Research Methods, doi 10.3758/s13428-021-01722-2).
 *
 * Every click is known sample by sample. It is laid over the recording at every delay that can be, and compared: the likeness is the
 * square of the correlation, 0 to 1. A clap is loud but not like a click; a note that sounds on is not either, because the silence
 * before the click belongs to the likeness. The traces of all clicks are laid over each other: the
 * direct sound is at the same delay in all of them, so it is the first place that is about as loud as the loudest (what comes later is
 * an echo). Clicks that are found near that place measure the delay; if they are few, or do not agree, there is none, and that is said.
 */

/** Delays that are looked at, in milliseconds. Clocks that a browser tells roughly can make a short delay seem a little negative. */
export const MARKER_WINDOW_MS = { from: -40, to: 320 } as const;
/** How much of a click is compared, and how much of the silence before it. */
export const MARKER_MS = { before: 12, of: 30 } as const;

const LIMITS = {
  /** A click less alike than this was not heard. Of noise, one delay in some thousands is more alike. Chosen on synthesised rooms. */
  leastLike: 0.2,
  /** The loudness that the direct sound has at least, against its loudest echo in a room where they meet. */
  direct: 0.28,
  /** Two places are told apart from this distance on: half of the time in which a click dies away. */
  apartMs: 2.5,
  /** What is as loud as this, and further away than echoes of that loudness, is another click that fits as well. */
  elsewhereMs: 60,
  elsewhereLoud: 0.8,
  /** A click this close to the common place is the direct sound. */
  nearMs: 4,
  /** Fewer clicks than this are no measurement, nor is a smaller share of those that sounded. */
  leastClicks: 4,
  leastHeard: 1 / 3,
  /** From how long before a clap to how long after it nothing is taken for a click: a resonant clap is a little like one. */
  clapMs: { before: 3, after: 12 },
  /** Of the clicks that were heard at all, at least this share agrees. */
  leastShare: 0.4,
  /** Half the range of the middle two thirds; more is no measurement (the limit of a research tool for the same purpose, three runs within 5 ms). */
  mostSpreadMs: 5,
} as const;

/** What was found of the clicks. */
export type MarkerDelay =
  | { readonly kind: 'measured'; readonly latencyMs: number; readonly spreadMs: number; readonly clicks: number }
  /** Too few clicks were heard, of so many that sounded. */
  | { readonly kind: 'not found'; readonly sounded: number }
  /** They came at delays that do not agree. */
  | { readonly kind: 'scattered' };

/**
 * How loud one click is heard at every delay of the window, where it is alike enough; 0 elsewhere, and −1 where a clap covers it. `heard` is the recording from
 * `MARKER_WINDOW_MS.from − MARKER_MS.before` milliseconds after the moment of the click on, at `rate` samples a second, up to the end
 * of the window and the click; `click` its own samples at the same rate; `clapsMs` the claps found in it, in milliseconds after the
 * moment of the click.
 */
export function traceOf(heard: Float32Array, click: Float32Array, rate: number, clapsMs: readonly number[]): Float32Array {
  const trace = loudnessWhereAlike(whitened(heard), clickToCompare(click, rate));
  const place = (ms: number): number => Math.max(0, Math.round(((ms - MARKER_WINDOW_MS.from) * rate) / 1000));
  for (const clap of clapsMs) trace.fill(COVERED, place(clap - LIMITS.clapMs.before), place(clap + LIMITS.clapMs.after));
  return trace;
}

const COVERED = -1;

/** The delay that the traces of all clicks, at `rate` samples a second, add up to. */
export function delayOfTraces(traces: readonly Float32Array[], rate: number): MarkerDelay {
  const frames = (ms: number): number => Math.round((ms * rate) / 1000);
  const heard = traces.flatMap((trace) => {
    const top = loudest(trace);
    return top > 0 ? [{ trace, top }] : [];
  });
  if (heard.length < Math.max(LIMITS.leastClicks, LIMITS.leastHeard * traces.length)) return { kind: 'not found', sounded: traces.length };
  const all = new Float32Array(heard[0]?.trace.length ?? 0);
  const open = new Float32Array(all.length);
  // A soft click counts as much as a loud one; a place less alike in one click than its neighbours is filled by them.
  for (const { trace, top } of heard)
    for (let at = 0; at < all.length; at += 1) {
      if (trace[at] === COVERED) continue;
      all[at] = (all[at] ?? 0) + Math.max(trace[at - 1] ?? 0, trace[at] ?? 0, trace[at + 1] ?? 0) / top;
      open[at] = (open[at] ?? 0) + 1;
    }
  // Where claps cover most of them, the others count for all.
  for (let at = 0; at < all.length; at += 1) all[at] = (all[at] ?? 0) / Math.max(LIMITS.leastClicks, open[at] ?? 0);
  const direct = firstPeak(all, frames(LIMITS.apartMs));
  if (loudest(all.subarray(direct + frames(LIMITS.elsewhereMs))) > LIMITS.elsewhereLoud * loudest(all)) return { kind: 'scattered' };
  const near = frames(LIMITS.nearMs);
  const delays = heard.flatMap(({ trace }) => {
    const from = Math.max(0, direct - near);
    const around = trace.subarray(from, direct + near + 1);
    return loudest(around) > 0 ? [MARKER_WINDOW_MS.from + (1000 * (from + firstPeak(around, frames(LIMITS.apartMs)))) / rate] : [];
  });
  const uncovered = heard.filter(({ trace }) => trace[direct] !== COVERED).length;
  if (delays.length < LIMITS.leastClicks || delays.length < LIMITS.leastShare * uncovered) return { kind: 'scattered' };
  const sorted = [...delays].sort((a, b) => a - b);
  const at = (share: number): number => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
  const spreadMs = (at(5 / 6) - at(1 / 6)) / 2;
  if (spreadMs > LIMITS.mostSpreadMs) return { kind: 'scattered' };
  return { kind: 'measured', latencyMs: medianOf(sorted) ?? 0, spreadMs, clicks: sorted.length };
}

const loudest = (trace: Float32Array): number => trace.reduce((most, each) => Math.max(most, each), 0);

/** The first place that is the loudest within `apart` frames and nearly the loudest of all. */
function firstPeak(trace: Float32Array, apart: number): number {
  const top = loudest(trace);
  return trace.findIndex(
    (each, at) => each >= LIMITS.direct * top && each >= loudest(trace.subarray(Math.max(0, at - apart), at + apart + 1)),
  );
}

/** The click with the silence before it, as loud in the heights as in the depths. */
function clickToCompare(click: Float32Array, rate: number): Float32Array {
  const [before, of] = [MARKER_MS.before, MARKER_MS.of].map((ms) => Math.round((ms * rate) / 1000)) as [number, number];
  const sound = new Float32Array(before + of);
  sound.set(click.subarray(0, of), before);
  return whitened(sound);
}

/** Piano, bass and rooms are louder the lower: twice the difference to the sample before evens that out. */
function whitened(sound: Float32Array): Float32Array {
  return sound.map((sample, index) => sample - 2 * (sound[index - 1] ?? sample) + (sound[index - 2] ?? sample));
}

/** How loud `click` is in `heard` at every place where it fits: its correlation where that is alike enough, 0 elsewhere. */
function loudnessWhereAlike(heard: Float32Array, click: Float32Array): Float32Array {
  const places = Math.max(0, heard.length - click.length + 1);
  const loud = new Float32Array(places);
  const own = energyOf(click);
  let energy = energyOf(heard.subarray(0, click.length));
  for (let place = 0; place < places; place += 1) {
    let sum = 0;
    for (let index = 0; index < click.length; index += 1) sum += (click[index] ?? 0) * (heard[place + index] ?? 0);
    const both = own * energy;
    if (both > TINY && sum * sum >= LIMITS.leastLike * both) loud[place] = Math.abs(sum);
    energy += (heard[place + click.length] ?? 0) ** 2 - (heard[place] ?? 0) ** 2;
  }
  return loud;
}

/** Products of energies below this are silence: about −100 dB of full scale against a click. */
const TINY = 1e-12;
const energyOf = (sound: Float32Array): number => sound.reduce((sum, sample) => sum + sample * sample, 0);
