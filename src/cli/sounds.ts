import { readFileSync } from 'node:fs';
import { pcmOf, type SoundSet } from '../exchange/wav/pcm';
import { RECORDINGS, recordedBank } from '../performance/sounds/recordings';
import type { InstrumentName } from '../performance/sounds/sample-set';
import { failed, ok, type Result } from '../vocabulary';
import { loadMp3Decoder } from './decode-mp3';

/** Where the recordings lie: beside the program, or in the built page. */
const FOLDERS = ['../../public/samples/', '../../dist/samples/'];

/** Reads and decodes every recording; a file that cannot be used is one line. */
export async function loadSounds(folders: readonly string[] = FOLDERS): Promise<Result<SoundSet, string>> {
  const decode = await loadMp3Decoder();
  const read = (file: string): Uint8Array => {
    for (const folder of folders) {
      try {
        return readFileSync(new URL(file, new URL(folder, import.meta.url)));
      } catch {
        // The next folder may have it.
      }
    }
    throw new Error('no such file');
  };
  let at = '';
  const bank = (instrument: InstrumentName) =>
    recordedBank(
      instrument,
      RECORDINGS[instrument].map(({ file, ...rest }) => {
        at = file;
        const { frames, rate } = decode(read(file));
        return { ...rest, buffer: pcmOf(frames, rate) };
      }),
      pcmOf,
    );
  try {
    return ok({ piano: bank('piano'), bass: bank('bass'), drums: bank('drums') });
  } catch (error) {
    return failed(`cannot use the recording ${at}: ${error instanceof Error ? error.message : String(error)}`);
  }
}
