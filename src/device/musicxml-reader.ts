import type { ReadScore, ScoreMessage } from './workers/musicxml-messages';

/** What a reading ended with: what the thread found, or that it had to be stopped. */
export type ScoreReading =
  | { readonly kind: 'read'; readonly result: Extract<ScoreMessage, { kind: 'done' }>['result'] }
  | { readonly kind: 'too long' }
  | { readonly kind: 'failed'; readonly reason: string };

/** The part of a worker that the reader needs. */
export type ScoreThread = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onerror'>;

/** The longest that a file is read, in milliseconds; the largest that is admitted takes about a second. */
const LONGEST_READING_MS = 20_000;

const startThread = (): ScoreThread => new Worker(new URL('./workers/read-musicxml.ts', import.meta.url), { type: 'module' });

/**
 * Reads a score file in a thread that ends with the reading. `progress` is told the share that is done, 0 to 1. A thread that takes longer than
 * `longestMs`, or cannot be started, is stopped and said to have been.
 */
export function readScoreInThread(
  file: ReadScore,
  progress: (share: number) => void = () => {},
  longestMs: number = LONGEST_READING_MS,
  start: () => ScoreThread = startThread,
): Promise<ScoreReading> {
  return new Promise((resolve) => {
    let thread: ScoreThread;
    try {
      thread = start();
    } catch (error) {
      resolve({ kind: 'failed', reason: error instanceof Error ? error.message : '' });
      return;
    }
    const end = (reading: ScoreReading): void => {
      clearTimeout(timer);
      thread.terminate();
      resolve(reading);
    };
    const timer = setTimeout(() => end({ kind: 'too long' }), longestMs);
    thread.onmessage = ({ data }: MessageEvent<ScoreMessage>) => {
      if (data.kind === 'progress') progress(data.share);
      else end({ kind: 'read', result: data.result });
    };
    thread.onerror = (event) =>
      end({ kind: 'failed', reason: typeof event !== 'string' && 'message' in event ? String(event.message) : '' });
    thread.postMessage(file);
  });
}
