/**
 * A figure of the bench: what was measured, beside the limit that the machine, the audio clock or the display sets.
 *
 * Two kinds of limit. A `floor` is the least time in which this machine could do anything of the size (it copies the bytes, or writes them as
 * JSON); the share is floor ÷ measured, and 1 cannot be beaten. A `budget` is the most that may pass before somebody sees or hears it
 * (a frame, an audio quantum); the share is measured ÷ budget, and above 1 it is missed.
 */
export interface Figure {
  readonly value: number;
  readonly limit: number;
  readonly kind: 'floor' | 'budget';
  /** What the limit is. */
  readonly is: string;
}

/** Named results of a part: figures with their limits, plain numbers, or groups of them. */
export interface Results {
  readonly [key: string]: Figure | number | string | null | Readonly<Record<string, number>>;
}

/** The least that the machine allows. */
export const overFloor = (value: number, limit: number, is: string): Figure => ({ value, limit, kind: 'floor', is });

/** The most that a person or the audio clock allows. */
export const ofBudget = (value: number, limit: number, is: string): Figure => ({ value, limit, kind: 'budget', is });

/** One picture of a display that draws sixty a second, in milliseconds. */
export const FRAME_MS = 1000 / 60;
/** From here on work on the page's thread counts as a long task (W3C, Long Tasks API). */
export const LONG_TASK_MS = 50;
/** Frames that an audio worklet is handed at a time (W3C, Web Audio API: render quantum). */
export const QUANTUM_FRAMES = 128;

/** The middle value; of two, the upper. NaN of none. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

/** Median milliseconds of `runs` runs after `warmUp` that are not counted. */
export function medianMs(run: () => unknown, runs: number, warmUp = Math.ceil(runs / 4)): number {
  for (let count = 0; count < warmUp; count += 1) run();
  const times = Array.from({ length: runs }, () => {
    const from = performance.now();
    run();
    return performance.now() - from;
  });
  return median(times);
}

/** Median milliseconds of two things measured in turns, so that whatever else the machine does falls on both. */
export function mediansMs(one: () => unknown, other: () => unknown, runs: number, warmUp = Math.ceil(runs / 4)): readonly [number, number] {
  const times: [number[], number[]] = [[], []];
  for (let count = -warmUp; count < runs; count += 1)
    for (const [index, run] of [one, other].entries()) {
      const from = performance.now();
      run();
      if (count >= 0) times[index]?.push(performance.now() - from);
    }
  return [median(times[0]), median(times[1])];
}

/** The exponent with which `value` grows with `size`: the slope of a straight line through their logarithms, by least squares. */
export function growthExponent(points: readonly (readonly [size: number, value: number])[]): number {
  const logs = points.map(([size, value]) => [Math.log(size), Math.log(value)] as const);
  const mean = (pick: 0 | 1): number => logs.reduce((sum, point) => sum + point[pick], 0) / logs.length;
  const [x, y] = [mean(0), mean(1)];
  const across = logs.reduce((sum, point) => sum + (point[0] - x) ** 2, 0);
  return logs.reduce((sum, point) => sum + (point[0] - x) * (point[1] - y), 0) / across;
}

/** Milliseconds in which memory of so many bytes is copied here. */
export function copyMs(bytes: number): number {
  const from = new Uint8Array(bytes).fill(7);
  const to = new Uint8Array(bytes);
  return medianMs(() => to.set(from), 15);
}
