import type { PageDrawing } from '../../layout/sheet/page-drawing';
import type { Chart } from '../../music/chart/chart';
import { type ArrangeOptions, arrange } from '../../music/score';
import type { OutlineFont } from '../pdf/outline-font';
import { readOutlineFont } from '../pdf/outline-font';
import { writePdf } from '../pdf/write-pdf';
import { type Speech, speakAs } from '../speech';
import type { SoundSet } from '../wav/pcm';
import { type OnProgress, type Pieces, packEntries, zipPack } from './make-pack';
import type { PackOrder } from './pack-order';

/** A pack before anything is arranged: the chart, and how to arrange it for each key. Small, and plain data. */
export interface PackPlan extends Omit<PackOrder, 'scores' | 'sounding'> {
  readonly chart: Chart;
  readonly keys: readonly ArrangeOptions[];
  /** As `keys`, for the play-alongs. */
  readonly sounding: readonly ArrangeOptions[];
}

/** The order of a plan: everything arranged. */
function arranged({ chart, keys, sounding, ...order }: PackPlan): PackOrder {
  const all = (options: readonly ArrangeOptions[]) => options.map((option) => arrange(chart, option));
  return { ...order, scores: all(keys), sounding: all(sounding) };
}

/** What a worker is asked to make. Plain data. */
export interface Job {
  /** A pack as a zip, or the one file of an order that holds one. */
  readonly kind: 'pack' | 'file';
  readonly order: PackPlan;
  /** Decoded sounds, where play-alongs are asked for. */
  readonly sounds: SoundSet | null;
  /** Font files by name, where sheets are asked for. */
  readonly fonts: readonly { readonly name: string; readonly bytes: ArrayBuffer }[];
  /** Milliseconds since 1970 that the files in a zip carry. */
  readonly madeAt: number;
  /** How the files speak; as this thread speaks when missing. */
  readonly speech?: Speech;
}

/** The pages of one sheet. */
export type Pages = readonly PageDrawing[];

/** Does a job: its bytes as they come. `pages` draws the sheet of the key with an index. */
export async function* runJob(
  job: Job,
  pages: (key: number) => Promise<Pages>,
  onProgress: OnProgress,
): AsyncGenerator<Uint8Array, void, undefined> {
  const { sounds } = job;
  await speakAs(job.speech);
  const order = arranged(job.order);
  let fonts: ReadonlyMap<string, OutlineFont> | null = null;
  const entries = packEntries(
    order,
    {
      sounds: () => {
        if (sounds === null) throw new Error('play-alongs need sounds');
        return sounds;
      },
      sheet: async (key) => {
        fonts ??= new Map(job.fonts.map(({ name, bytes }) => [name, readOutlineFont(name, bytes)]));
        return writePdf(await pages(key), fonts, order.scores[key]?.title ?? '');
      },
    },
    onProgress,
  );
  const only = entries[1];
  const pieces: Pieces = job.kind === 'pack' || only === undefined ? zipPack(entries, new Date(job.madeAt)) : await only.pieces();
  yield* pieces;
}
