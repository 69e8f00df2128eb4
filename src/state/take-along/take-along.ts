import { createStore, type StoreApi } from 'zustand/vanilla';
import { fileStem } from '../../exchange/file-name';
import { MIDI_TYPE } from '../../exchange/midi/write-midi';
import { MUSICXML_TYPE } from '../../exchange/musicxml/write-musicxml';
import { MXL_TYPE, writeMxl } from '../../exchange/musicxml/write-mxl';
import type { PackPlan } from '../../exchange/pack/job';
import { PDF_TYPE } from '../../exchange/pdf/write-pdf';
import { speechNow } from '../../exchange/speech';
import { WAV_TYPE } from '../../exchange/wav/wav-header';
import type { Key } from '../../music/chart/chart';
import type { DeskState } from '../desk-state';
import { type Choices, FIRST_CHOICES, type FileKind, PACK_STEPS } from './choices';
import { keyAbove, planFor, sheetScores, sizeOf } from './orders';
import type { OpenFile, TakeAlongPorts } from './ports';

/** What take-along is doing, or how the last file went. */
export type Work =
  | { readonly kind: 'idle' }
  /** `stage` is what is waited for; `share` goes from 0 to 1, `file` is the one in hand inside a pack. */
  | { readonly kind: 'working'; readonly what: FileKind; readonly stage: 'sounds' | 'files'; readonly share: number; readonly file: string }
  | { readonly kind: 'done'; readonly what: FileKind; readonly name: string; readonly bytes: number }
  | { readonly kind: 'cancelled'; readonly what: FileKind }
  | { readonly kind: 'disk refused' | 'no sounds' | 'failed'; readonly what: FileKind; readonly reason: string };

/** What the panel shows. */
export interface TakeAlongState {
  readonly choices: Choices;
  readonly work: Work;
}

/** Makes files of what lies on the desk. One at a time. */
export interface TakeAlong {
  readonly store: StoreApi<TakeAlongState>;
  readonly choose: (choices: Partial<Choices>) => void;
  /** The twelve keys of a pack, from the desk's own upwards; none without music. */
  readonly keys: () => readonly { readonly semitones: number; readonly key: Key }[];
  /** How many files a pack would hold and how large it would be; null when nothing is chosen. */
  readonly estimate: () => { readonly files: number; readonly bytes: number } | null;
  /** Makes and saves a file; call it inside a gesture. Does nothing while another is being made. */
  readonly save: (kind: FileKind) => Promise<void>;
  /** Gives up what is being made; nothing of it remains. */
  readonly cancel: () => void;
}

const ENDINGS: Readonly<Record<FileKind, readonly [ending: string, type: string]>> = {
  sheet: ['.pdf', PDF_TYPE],
  midi: ['.mid', MIDI_TYPE],
  musicxml: ['.musicxml', MUSICXML_TYPE],
  mxl: ['.mxl', MXL_TYPE],
  wav: ['.wav', WAV_TYPE],
  pack: ['_pack.zip', 'application/zip'],
};

/** A refusal of the disk, kept apart from faults of the music. */
class DiskRefused extends Error {}
class NoSounds extends Error {}

/** Take-along on a desk. */
export function createTakeAlong(desk: StoreApi<DeskState>, ports: TakeAlongPorts): TakeAlong {
  const store = createStore<TakeAlongState>(() => ({ choices: FIRST_CHOICES, work: { kind: 'idle' } }));
  let stop: AbortController | null = null;
  // From the question where to put a file until it is there or given up.
  let busy = false;
  const today = (): string => new Date(ports.now()).toISOString().slice(0, 10);
  const plan = (kind: FileKind): PackPlan | null => planFor(desk.getState(), kind, store.getState().choices, today());

  const save = async (what: FileKind): Promise<void> => {
    const { music } = desk.getState();
    const asked = busy ? null : plan(what);
    if (asked === null || music === null) return;
    busy = true;
    const stopping = new AbortController();
    const { signal } = stopping;
    stop = stopping;
    const name = `${fileStem(music.whole)}${what === 'wav' ? playAlongName(asked) : ''}${ENDINGS[what][0]}`;
    let file: OpenFile | null = null;
    const tell = (work: Work): void => {
      if (stop === stopping) store.setState({ work });
    };
    try {
      file = await disk(ports.openFile(name, ENDINGS[what][1], what === 'wav' || what === 'pack'));
      if (file === null) return;
      tell({ kind: 'working', what, stage: asked.kinds.includes('wav') ? 'sounds' : 'files', share: 0, file: '' });
      const [sounds, fonts] = await Promise.all([
        asked.kinds.includes('wav') ? ports.sounds(asked.rate).catch(noSounds) : null,
        asked.kinds.includes('sheet') ? ports.fonts() : [],
      ]);
      signal.throwIfAborted();
      const pages = async (key: number) => ports.draw(...sheetScores(asked, key));
      const kind = what === 'pack' ? ('pack' as const) : ('file' as const);
      const job = { kind, order: asked, sounds, fonts, madeAt: ports.now(), speech: speechNow() };
      const pieces = ports.make(
        job,
        pages,
        (share, inHand) => tell({ kind: 'working', what, stage: 'files', share, file: inHand }),
        signal,
      );
      let bytes = 0;
      for await (const piece of what === 'mxl' ? compressed(pieces) : pieces) {
        signal.throwIfAborted();
        await disk(file.write(piece));
        bytes += piece.length;
      }
      signal.throwIfAborted();
      await disk(file.close());
      tell({ kind: 'done', what, name, bytes });
    } catch (error) {
      await file?.abort().catch(() => undefined);
      tell(signal.aborted ? { kind: 'cancelled', what } : failure(what, error));
    } finally {
      busy = false;
    }
  };

  return {
    store,
    save,
    choose: (choices) => store.setState((state) => ({ choices: { ...state.choices, ...choices } })),
    keys: () =>
      PACK_STEPS.flatMap((semitones) => {
        const key = keyAbove(desk.getState(), semitones);
        return key === null ? [] : [{ semitones, key }];
      }),
    estimate() {
      const { music } = desk.getState();
      const asked = plan('pack');
      return asked && music && sizeOf(asked, music.whole);
    },
    cancel: () => stop?.abort(),
  };
}

/** `_half-92_without-piano`. */
const playAlongName = ({ tempi, playAlongs }: PackPlan): string => `_half-${tempi[0]}_${playAlongs[0]}`;

async function* compressed(pieces: AsyncIterable<Uint8Array<ArrayBuffer>>): AsyncGenerator<Uint8Array<ArrayBuffer>, void, undefined> {
  const decoder = new TextDecoder();
  let text = '';
  for await (const piece of pieces) text += decoder.decode(piece, { stream: true });
  yield new Uint8Array(writeMxl(text));
}

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

async function disk<Answer>(answer: Promise<Answer>): Promise<Answer> {
  try {
    return await answer;
  } catch (error) {
    const full = error instanceof Error && error.name === 'QuotaExceededError';
    throw new DiskRefused(full ? 'the disk is full' : reasonOf(error));
  }
}

function noSounds(error: unknown): never {
  throw new NoSounds(reasonOf(error));
}

function failure(what: FileKind, error: unknown): Work {
  const kind = error instanceof DiskRefused ? 'disk refused' : error instanceof NoSounds ? 'no sounds' : 'failed';
  return { kind, what, reason: reasonOf(error) };
}
