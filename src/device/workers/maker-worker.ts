import { type Pages, runJob } from '../../exchange/pack/job';
import type { FromMaker, ToMaker } from './maker-messages';

/*
 * Makes files in a thread of its own, so that the page stays awake. It gives a piece only when asked for the next, so no more lies
 * in memory than the disk takes; to stop it, end the thread.
 */

/** Small pieces are collected to this many bytes before they are handed over. */
const PIECE_BYTES = 1 << 20;
/** Share of the work between two words about it. */
const PROGRESS_STEP = 0.002;

let pieces: AsyncGenerator<Uint8Array, void, undefined> | null = null;
let answer: { readonly here: (pages: Pages) => void; readonly none: (error: Error) => void } | null = null;
let told = -1;

const say = (message: FromMaker, transfer: Transferable[] = []): void => postMessage(message, { transfer });

addEventListener('message', ({ data }: MessageEvent<ToMaker>) => {
  switch (data.kind) {
    case 'begin':
      pieces = runJob(data.job, pagesOf, (share, name) => {
        if (share - told < PROGRESS_STEP && share < 1) return;
        told = share;
        say({ kind: 'progress', share, name });
      });
      break;
    case 'next':
      void next();
      break;
    case 'pages':
      answer?.here(data.pages);
      break;
    case 'no pages':
      answer?.none(new Error(data.reason));
      break;
  }
});

/** The page draws; this thread has no document. */
function pagesOf(key: number): Promise<Pages> {
  return new Promise((here, none) => {
    answer = { here, none };
    say({ kind: 'pages wanted', key });
  });
}

async function next(): Promise<void> {
  try {
    const collected: Uint8Array[] = [];
    let length = 0;
    let over = false;
    while (length < PIECE_BYTES && !over && pieces !== null) {
      const { value, done } = await pieces.next();
      over = done === true;
      if (value) {
        collected.push(value);
        length += value.length;
      }
    }
    const bytes = new Uint8Array(length);
    let at = 0;
    for (const piece of collected) {
      bytes.set(piece, at);
      at += piece.length;
    }
    if (length > 0) say({ kind: 'piece', bytes }, [bytes.buffer]);
    else say({ kind: 'end' });
  } catch (error) {
    say({ kind: 'failed', reason: error instanceof Error ? error.message : String(error) });
  }
}
