import { madeBank, RECORDINGS, recordedBank } from '../performance/sounds/recordings';
import type { InstrumentName } from '../performance/sounds/sample-set';
import type { BankSound } from '../performance/sounds/sound-bank';

/** An instrument's recordings, or the first file that could not be used and why. */
export type LoadedBank =
  | { readonly kind: 'loaded'; readonly bank: readonly BankSound<AudioBuffer>[] }
  | { readonly kind: 'failed'; readonly file: string; readonly why: string };

/** Turns file bytes into sound; the browser's `decodeAudioData`. */
export type Decode = (bytes: ArrayBuffer) => Promise<AudioBuffer>;

/** Fetches and decodes one instrument's files below `folder`. Never throws: what goes wrong names the file. */
export async function loadBank(instrument: InstrumentName, folder: string, decode: Decode): Promise<LoadedBank> {
  try {
    const decoded = await Promise.all(
      RECORDINGS[instrument].map(async ({ file, midi, drum, velocity }) => ({
        buffer: await loadFile(folder, file, decode),
        midi,
        drum,
        velocity,
      })),
    );
    return { kind: 'loaded', bank: recordedBank(instrument, decoded, bufferOf) };
  } catch (error) {
    return error instanceof BadFile
      ? { kind: 'failed', file: error.file, why: error.message }
      : { kind: 'failed', file: folder, why: String(error) };
  }
}

/** An instrument made by rule, ready at once. */
export const makeBank = (instrument: InstrumentName): readonly BankSound<AudioBuffer>[] => madeBank(instrument, bufferOf);

class BadFile extends Error {
  constructor(
    readonly file: string,
    why: string,
  ) {
    super(why);
  }
}

async function loadFile(folder: string, file: string, decode: Decode): Promise<AudioBuffer> {
  const response = await fetch(new URL(file, folder)).catch((error: unknown) => {
    throw new BadFile(file, error instanceof Error ? error.message : String(error));
  });
  if (!response.ok) throw new BadFile(file, `the server answered ${response.status}`);
  const type = response.headers.get('content-type') ?? '';
  // Servers that answer every address with their start page do so with status 200.
  if (/^text\/|html|json/.test(type)) throw new BadFile(file, `the server sent ${type} instead of sound`);
  const bytes = await response.arrayBuffer();
  return decode(bytes).catch(() => {
    throw new BadFile(file, `its ${bytes.byteLength} bytes are no sound that this browser can read`);
  });
}

function bufferOf(frames: Float32Array, sampleRate: number): AudioBuffer {
  const buffer = new AudioBuffer({ length: frames.length, numberOfChannels: 1, sampleRate });
  buffer.getChannelData(0).set(frames);
  return buffer;
}
