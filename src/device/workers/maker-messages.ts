import type { Job, Pages } from '../../exchange/pack/job';

/** What the page says to the maker: begin, give the next piece, here are the pages you asked for (or why there are none). */
export type ToMaker =
  | { readonly kind: 'begin'; readonly job: Job }
  | { readonly kind: 'next' }
  | { readonly kind: 'pages'; readonly pages: Pages }
  | { readonly kind: 'no pages'; readonly reason: string };

/** What the maker says: a piece, the end, pages are wanted, how far it is, why it cannot go on. */
export type FromMaker =
  | { readonly kind: 'piece'; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly kind: 'end' }
  | { readonly kind: 'pages wanted'; readonly key: number }
  | { readonly kind: 'progress'; readonly share: number; readonly name: string }
  | { readonly kind: 'failed'; readonly reason: string };
