import type { AudioSeconds } from '../vocabulary';
import { audioSeconds } from '../vocabulary';

/** What a context says about its clock at one moment. */
export interface ClockReading {
  /** Seconds already computed. */
  readonly currentTime: number;
  /** Seconds; null where the browser does not tell. */
  readonly outputLatency: number | null;
  readonly baseLatency: number | null;
  /** What `getOutputTimestamp` gave, or null where it is missing. */
  readonly timestamp: { readonly contextTime: number; readonly performanceTime: number } | null;
  /** `performance.now()`, in milliseconds. */
  readonly nowMs: number;
}

/** A timestamp older than this says nothing about now. */
const STALE_MS = 1000;
/** No output is later than this; a larger gap is a bad reading. */
const LARGEST_LATENCY_SECONDS = 1.5;

/**
 * The moment of the audio clock that comes out of the loudspeaker now: from the output timestamp where it is sane,
 * else the computed time less the latency that the browser admits to. Never later than what is computed, never negative.
 */
export function heardTime({ currentTime, outputLatency, baseLatency, timestamp, nowMs }: ClockReading): AudioSeconds {
  const plain = currentTime - (outputLatency ?? baseLatency ?? 0);
  if (timestamp === null) return audioSeconds(Math.max(0, plain));
  const { contextTime, performanceTime } = timestamp;
  const age = nowMs - performanceTime;
  const stamped = contextTime + age / 1000;
  const sane =
    contextTime > 0 &&
    performanceTime > 0 &&
    age >= 0 &&
    age < STALE_MS &&
    stamped <= currentTime + 0.02 &&
    stamped >= currentTime - LARGEST_LATENCY_SECONDS;
  return audioSeconds(Math.max(0, sane ? Math.min(stamped, currentTime) : plain));
}

/** Reads a live context's clock. */
export function readClock(context: AudioContext): ClockReading {
  const stamp = typeof context.getOutputTimestamp === 'function' ? context.getOutputTimestamp() : null;
  return {
    currentTime: context.currentTime,
    outputLatency: typeof context.outputLatency === 'number' ? context.outputLatency : null,
    baseLatency: typeof context.baseLatency === 'number' ? context.baseLatency : null,
    timestamp: stamp === null ? null : { contextTime: stamp.contextTime ?? 0, performanceTime: stamp.performanceTime ?? 0 },
    nowMs: performance.now(),
  };
}
