import { seeded } from '../../src/practice/seeded';

/** One reader that meets hostile input: how an input is made, and what must hold whatever comes. */
export interface FuzzTarget<Input = unknown> {
  readonly name: string;
  readonly make: (random: () => number) => Input;
  /** True when the input was read; throws when anything about the answer is not as it must be. */
  readonly check: (input: Input) => boolean;
}

/** A target without its input's type, so that all stand in one table. */
export interface AnyTarget {
  readonly name: string;
  readonly run: (options: FuzzOptions) => TargetReport;
}

/** Which inputs, and how many. */
export interface FuzzOptions {
  readonly seed: number;
  readonly count: number;
}

/** What a run over one target saw. */
export interface TargetReport {
  readonly target: string;
  readonly inputs: number;
  /** Inputs that were read; the others were refused as they should be. */
  readonly read: number;
  readonly slowestMs: number;
  /** How far the memory in use rose above where it stood before, in MB. */
  readonly memoryRiseMegabytes: number;
  readonly failures: readonly { readonly input: string; readonly message: string }[];
}

/** Longer than this for one input counts as hanging, in milliseconds of processor time. */
export const HANGING_MS = 50;
/** Clearing memory away or translating code may fall into one run; a reader that hangs does so every time. */
const TRIES = 4;
const MOST_FAILURES = 10;

/** Gives a target its runner. */
export function target<Input>({ name, make, check }: FuzzTarget<Input>): AnyTarget {
  return {
    name,
    run({ seed, count }) {
      const random = seeded(seed);
      const failures: { input: string; message: string }[] = [];
      const before = process.memoryUsage().rss;
      let highest = before;
      let read = 0;
      let slowestMs = 0;
      for (let done = 0; done < count && failures.length < MOST_FAILURES; done += 1) {
        const input = make(random);
        try {
          const { took, answer } = leastTime(() => check(input));
          if (answer) read += 1;
          slowestMs = Math.max(slowestMs, took);
          if (took > HANGING_MS) failures.push({ input: shown(input), message: `took ${took.toFixed(0)} ms` });
        } catch (error) {
          failures.push({ input: shown(input), message: error instanceof Error ? (error.stack ?? error.message) : String(error) });
        }
        if (done % 256 === 0) highest = Math.max(highest, process.memoryUsage().rss);
      }
      return {
        target: name,
        inputs: count,
        read,
        slowestMs: Number(slowestMs.toFixed(1)),
        memoryRiseMegabytes: Math.round((highest - before) / 1e6),
        failures,
      };
    },
  };
}

/** What some work answers, and the milliseconds it took; work that seems to hang is done again, and the shortest run counts. */
export function leastTime<Answer>(work: () => Answer): { readonly took: number; readonly answer: Answer } {
  let { took, answer } = timed(work);
  for (let again = 1; again < TRIES && took > HANGING_MS; again += 1) took = Math.min(took, timed(work).took);
  return { took, answer };
}

/** Milliseconds of processor time, which other programs of a busy machine do not lengthen. */
function timed<Answer>(work: () => Answer): { took: number; answer: Answer } {
  const from = process.cpuUsage();
  const answer = work();
  const { user, system } = process.cpuUsage(from);
  return { took: (user + system) / 1000, answer };
}

/** An input as a line that can be put into a test. */
function shown(input: unknown): string {
  const text = input instanceof Uint8Array ? `base64 ${Buffer.from(input).toString('base64')}` : JSON.stringify(input);
  return text.length > 4000 ? `${text.slice(0, 4000)}…` : text;
}
