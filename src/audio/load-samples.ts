import type { InstrumentName } from './sample-set';
import { BASS_SAMPLES, DRUM_SAMPLES, PIANO_SAMPLES } from './sample-set';
import type { BankSound } from './sound-bank';
import { bassTone, DRUM_NAMES, drumTone, pianoTone, SYNTHESISED_RATE } from './synthesised-set';

/** An instrument's recordings, or the first file that could not be used and why. */
export type LoadedBank =
  | { readonly kind: 'loaded'; readonly bank: readonly BankSound<AudioBuffer>[] }
  | { readonly kind: 'failed'; readonly file: string; readonly why: string };

/** Turns file bytes into sound; the browser's `decodeAudioData`. */
export type Decode = (bytes: ArrayBuffer) => Promise<AudioBuffer>;

interface Wanted {
  readonly file: string;
  readonly midi: number | null;
  readonly drum: string | null;
  readonly velocity: number;
}

const WANTED: Readonly<Record<InstrumentName, readonly Wanted[]>> = {
  piano: PIANO_SAMPLES.map((sample) => ({ ...sample, drum: null })),
  bass: BASS_SAMPLES.map((sample) => ({ ...sample, drum: null })),
  drums: DRUM_SAMPLES.map(({ file, drum }) => ({ file, drum, midi: null, velocity: 110 })),
};

const MADE_VELOCITY = 108;
const PIANO_MADE = [36, 42, 48, 54, 60, 66, 72, 78, 84, 90, 96];
const BASS_MADE = [28, 34, 40, 46, 52];

/** Fetches and decodes one instrument's files below `folder`. Never throws: what goes wrong names the file. */
export async function loadBank(instrument: InstrumentName, folder: string, decode: Decode): Promise<LoadedBank> {
  try {
    const bank = await Promise.all(
      WANTED[instrument].map(async ({ file, midi, drum, velocity }) => ({
        buffer: await loadFile(folder, file, decode),
        midi,
        drum,
        velocity,
      })),
    );
    return { kind: 'loaded', bank: instrument === 'drums' ? [...bank, ...pulseOf(bank)] : bank };
  } catch (error) {
    return error instanceof BadFile
      ? { kind: 'failed', file: error.file, why: error.message }
      : { kind: 'failed', file: folder, why: String(error) };
  }
}

/** An instrument made by rule, ready at once. */
export function makeBank(instrument: InstrumentName): readonly BankSound<AudioBuffer>[] {
  if (instrument === 'drums') return DRUM_NAMES.map(drumSound);
  const [pitches, tone] = instrument === 'piano' ? [PIANO_MADE, pianoTone] : [BASS_MADE, bassTone];
  return pitches.map((midi) => ({ buffer: bufferOf(tone(midi)), midi, drum: null, velocity: MADE_VELOCITY }));
}

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

function pulseOf(bank: readonly BankSound<AudioBuffer>[]): BankSound<AudioBuffer>[] {
  return DRUM_NAMES.filter((name) => !bank.some(({ drum }) => drum === name)).map(drumSound);
}

const drumSound = (drum: string): BankSound<AudioBuffer> => ({ buffer: bufferOf(drumTone(drum)), midi: null, drum, velocity: 110 });

function bufferOf(frames: Float32Array): AudioBuffer {
  const buffer = new AudioBuffer({ length: frames.length, numberOfChannels: 1, sampleRate: SYNTHESISED_RATE });
  buffer.getChannelData(0).set(frames);
  return buffer;
}
