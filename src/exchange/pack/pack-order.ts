import type { Score } from '../../music/score';
import type { Feel } from '../../performance/feel';
import { secondsOf } from '../../performance/tempo';
import type { HalfNotesPerMinute } from '../../vocabulary';
import { fileStem } from '../file-name';
import { type PartLevels, type PlayAlong, type PlayAlongForm, RING_SECONDS } from '../wav/play-along';
import { WAV_FRAME_BYTES, type WavRate } from '../wav/wav-header';

/** What a pack may hold. */
export const PACK_KINDS = ['sheet', 'midi', 'musicxml', 'wav'] as const;
export type PackKind = (typeof PACK_KINDS)[number];

/** What is to be packed. Plain data, so that a worker can be handed it. */
export interface PackOrder {
  /** The whole form in every key asked for, in the order of the pack. */
  readonly scores: readonly Score[];
  /** The same, arranged as the play-alongs go (round, or to an end). */
  readonly sounding: readonly Score[];
  readonly tempi: readonly HalfNotesPerMinute[];
  readonly kinds: readonly PackKind[];
  readonly playAlongs: readonly PlayAlong[];
  readonly form: PlayAlongForm;
  readonly levels: PartLevels;
  readonly rate: WavRate;
  /** Timing of the notes in MIDI files and play-alongs; as written when missing. */
  readonly feel?: Feel;
  /** The day it is made, as `2026-11-25`. */
  readonly date: string;
}

/** One file of a pack before it is made. */
export interface PackFile {
  /** Path inside the pack. */
  readonly name: string;
  readonly kind: PackKind;
  /** Index into `PackOrder.scores`. */
  readonly key: number;
  readonly tempo: HalfNotesPerMinute;
  readonly playAlong: PlayAlong | null;
}

/** Every file of a pack but its contents page, in order: a folder for each key, in it the sheet, the notes, the sounds. */
export function packFiles(order: PackOrder): PackFile[] {
  const [first] = order.tempi;
  if (first === undefined) return [];
  return order.scores.flatMap((score, key) => {
    const stem = fileStem(score);
    const folder = `${String(key + 1).padStart(2, '0')}_${stem.split('_')[1] ?? key}`;
    const file = (kind: PackKind, name: string, tempo: HalfNotesPerMinute, playAlong: PlayAlong | null = null): PackFile[] =>
      order.kinds.includes(kind) ? [{ name: `${folder}/${name}`, kind, key, tempo, playAlong }] : [];
    return [
      ...file('sheet', `${stem}.pdf`, first),
      ...file('musicxml', `${stem}.musicxml`, first),
      ...order.tempi.flatMap((tempo) => [
        ...file('midi', `${stem}_half-${tempo}.mid`, tempo),
        ...order.playAlongs.flatMap((kind) => file('wav', `${stem}_half-${tempo}_${kind}.wav`, tempo, kind)),
      ]),
    ];
  });
}

/** Bytes that a file takes: to the byte for sounds, by experience for the rest. */
export function bytesOf(file: PackFile, order: PackOrder): number {
  const score = (file.kind === 'wav' ? order.sounding : order.scores)[file.key];
  if (score === undefined) return 0;
  if (file.kind === 'sheet') return 60_000 + score.bars.length * 1500;
  if (file.kind !== 'wav') return 10_000 + score.bars.length * (file.kind === 'midi' ? 300 : 6000);
  return Math.round(playAlongSeconds(score, file.tempo, order.form) * order.rate) * WAV_FRAME_BYTES;
}

function playAlongSeconds(score: Score, tempo: HalfNotesPerMinute, form: PlayAlongForm): number {
  const music = secondsOf(score.toTick - score.fromTick, tempo);
  // Two bars of count-in, one for the last stroke.
  return form === 'loop' ? music : music + secondsOf(3 * 1920, tempo) + RING_SECONDS;
}
