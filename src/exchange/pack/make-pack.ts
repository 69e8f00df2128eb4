import { makeZip } from 'client-zip';
import { strToU8 } from 'fflate';
import { STRAIGHT } from '../../performance/feel';
import { assert } from '../../vocabulary';
import { writeMidi } from '../midi/write-midi';
import { writeMusicXml } from '../musicxml/write-musicxml';
import type { BentSounds } from '../wav/mix-wav';
import { mixWav } from '../wav/mix-wav';
import type { SoundSet } from '../wav/pcm';
import { levelsFor, playAlongOptions, playAlongPerformance } from '../wav/play-along';
import { contentsPage } from './contents-page';
import { bytesOf, type PackFile, type PackOrder, packFiles } from './pack-order';

/** Bytes as they come. */
export type Pieces = Iterable<Uint8Array> | AsyncIterable<Uint8Array>;

/** What making a pack asks of its surroundings. */
export interface PackMakers {
  /** Decoded sounds; asked for only where there are play-alongs. */
  readonly sounds: () => SoundSet;
  /** The sheet of the score with this index, as a PDF file. */
  readonly sheet: (key: number) => Promise<Uint8Array>;
}

/** One file that is ready to be written. */
export interface PackEntry {
  readonly name: string;
  readonly pieces: () => Promise<Pieces>;
}

/** How far a pack is: share from 0 to 1, and the file in hand. */
export type OnProgress = (share: number, name: string) => void;

/** Every file of a pack, its contents page first. Files are made one after another, only when their turn comes. */
export function packEntries(order: PackOrder, makers: PackMakers, onProgress: OnProgress = () => {}): PackEntry[] {
  const files = packFiles(order);
  const total = files.reduce((sum, file) => sum + costOf(file, order), 0);
  const kept: BentSounds = new Map();
  let past = 0;
  const made = files.map((file): PackEntry => {
    const cost = costOf(file, order);
    return {
      name: file.name,
      pieces: async () => {
        const before = past;
        past += cost;
        onProgress(before / total, file.name);
        if (file.kind !== 'wav') return [await bytesFor(file, order, makers)];
        const stream = wavOf(file, order, makers.sounds(), kept);
        return counted(stream.chunks, stream.bytes, (share) => onProgress((before + share * cost) / total, file.name));
      },
    };
  });
  const contents = strToU8(contentsPage(order, files));
  return [{ name: 'contents.html', pieces: async () => [contents] }, ...made];
}

/** A pack as one zip file, piece by piece. */
export async function* zipPack(entries: readonly PackEntry[], date: Date): AsyncGenerator<Uint8Array, void, undefined> {
  // Stored, not packed: sounds do not get smaller, and storing keeps up with the mixer.
  const stream = makeZip(inputs(entries, date)) as unknown as ZipStream;
  const reader = stream.getReader();
  try {
    for (let read = await reader.read(); !read.done; read = await reader.read()) if (read.value) yield read.value;
  } finally {
    // Broken off before its end, the library answers with an error of no meaning.
    await reader.cancel().catch(() => undefined);
  }
}

interface ZipStream {
  getReader(): { read(): Promise<{ readonly done: boolean; readonly value?: Uint8Array }>; cancel(): Promise<void> };
}

async function* inputs(entries: readonly PackEntry[], date: Date) {
  for (const { name, pieces } of entries) yield { name, lastModified: date, input: asynchronous(await pieces()) };
}

async function* asynchronous(pieces: Pieces): AsyncGenerator<Uint8Array<ArrayBuffer>, void, undefined> {
  for await (const piece of pieces) yield piece as Uint8Array<ArrayBuffer>;
}

function* counted(chunks: Iterable<Uint8Array>, bytes: number, onShare: (share: number) => void): Generator<Uint8Array, void, undefined> {
  let past = 0;
  for (const chunk of chunks) {
    past += chunk.length;
    onShare(past / bytes);
    yield chunk;
  }
}

function wavOf({ key, tempo, playAlong }: PackFile, order: PackOrder, sounds: SoundSet, kept: BentSounds) {
  const options = {
    ...playAlongOptions(order.form),
    rate: order.rate,
    tempo,
    levels: levelsFor(playAlong ?? 'full', order.levels),
  };
  return mixWav(playAlongPerformance(scoreAt(order.sounding, key), order.form, order.feel), options, sounds, kept);
}

async function bytesFor({ kind, key, tempo }: PackFile, order: PackOrder, makers: PackMakers): Promise<Uint8Array> {
  if (kind === 'sheet') return makers.sheet(key);
  const score = scoreAt(order.scores, key);
  if (kind === 'midi') return writeMidi(score, { tempo, feel: order.feel ?? STRAIGHT });
  return strToU8(writeMusicXml(score, { encodingDate: order.date }));
}

function scoreAt(scores: PackOrder['scores'], key: number) {
  const score = scores[key];
  assert(score !== undefined, `key must be one of ${scores.length}, got ${key}`);
  return score;
}

/** What making a file costs, in bytes of sound: a sheet takes about as long as five megabytes of it. */
function costOf(file: PackFile, order: PackOrder): number {
  return file.kind === 'sheet' ? 5e6 : file.kind === 'wav' ? bytesOf(file, order) : 2e5;
}
