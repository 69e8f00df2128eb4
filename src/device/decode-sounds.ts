import { RECORDINGS, recordedBank } from '../performance/sounds/recordings';
import type { InstrumentName } from '../performance/sounds/sample-set';
import type { BankSound } from '../performance/sounds/sound-bank';

/** A decoded sound of one channel. */
interface Frames {
  readonly frames: Float32Array;
  readonly rate: number;
}

/** Every recording below `folder`, fetched and decoded to `rate` frames a second. Rejects with the file and the reason. */
export async function decodeSounds(folder: string, rate: number): Promise<Readonly<Record<InstrumentName, readonly BankSound<Frames>[]>>> {
  const decoder = new OfflineAudioContext(1, 1, rate);
  const decoded = async (file: string): Promise<Frames> => {
    const response = await fetch(new URL(file, folder)).catch(() => {
      throw new Error(`${file} could not be fetched`);
    });
    if (!response.ok) throw new Error(`${file}: the server answered ${response.status}`);
    const buffer = await decoder.decodeAudioData(await response.arrayBuffer()).catch(() => {
      throw new Error(`${file} is no sound that this browser can read`);
    });
    return { frames: buffer.getChannelData(0), rate };
  };
  const bank = async (instrument: InstrumentName) =>
    recordedBank(
      instrument,
      await Promise.all(RECORDINGS[instrument].map(async ({ file, ...rest }) => ({ ...rest, buffer: await decoded(file) }))),
      (frames, made) => ({ frames, rate: made }),
    );
  const [piano, bass, drums] = await Promise.all([bank('piano'), bank('bass'), bank('drums')]);
  return { piano, bass, drums };
}
