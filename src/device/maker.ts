import type { MakeFiles } from '../state/take-along/ports';
import type { FromMaker, ToMaker } from './workers/maker-messages';

/** Makes files in a worker; each call has a thread of its own, which ends with it. */
export const makeInWorker: MakeFiles = async function* (job, pages, onProgress, signal) {
  const worker = new Worker(new URL('./workers/maker-worker.ts', import.meta.url), { type: 'module' });
  const say = (message: ToMaker): void => worker.postMessage(message);
  let heard: ((message: FromMaker) => void) | null = null;
  let broken: ((error: Error) => void) | null = null;
  worker.addEventListener('message', ({ data }: MessageEvent<FromMaker>) => {
    if (data.kind === 'progress') onProgress(data.share, data.name);
    else if (data.kind === 'pages wanted')
      pages(data.key).then(
        (drawn) => say({ kind: 'pages', pages: drawn }),
        (error: unknown) => say({ kind: 'no pages', reason: error instanceof Error ? error.message : String(error) }),
      );
    else heard?.(data);
  });
  worker.addEventListener('error', () => broken?.(new Error('a part of the program could not be run')));
  const abort = (): void => broken?.(new DOMException('cancelled', 'AbortError'));
  signal.addEventListener('abort', abort);
  const next = (): Promise<FromMaker> =>
    new Promise((resolve, reject) => {
      heard = resolve;
      broken = reject;
      if (signal.aborted) abort();
      else say({ kind: 'next' });
    });
  try {
    say({ kind: 'begin', job });
    for (let message = await next(); message.kind !== 'end'; message = await next()) {
      if (message.kind === 'failed') throw new Error(message.reason);
      if (message.kind === 'piece') yield message.bytes;
    }
  } finally {
    signal.removeEventListener('abort', abort);
    worker.terminate();
  }
};
