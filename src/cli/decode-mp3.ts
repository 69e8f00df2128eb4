import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { assert } from '../vocabulary';

/*
 * Decodes the recordings where no browser does it: with minimp3 as WebAssembly, then cutting off what encoder and decoder put before
 * the first frame, as the file's own tag says, so that onsets lie where a browser has them.
 */

/** Decodes one file's bytes to frames of one channel at `rate`. Throws on anything but a tagged file of one channel. */
export type DecodeMp3 = (bytes: Uint8Array) => { readonly frames: Float32Array; readonly rate: number };

/** What the module in the package gives to the outside. */
interface Minimp3 {
  readonly memory: { readonly buffer: ArrayBuffer };
  decoder_init(): void;
  decoder_set_mp3_data_size(bytes: number): void;
  decoder_mp3_data_offset(): number;
  decoder_seek(seconds: number): void;
  decoder_decode(seconds: number): void;
  decoder_pcm_data_offset(): number;
  decoder_pcm_data_size(): number;
  decode_results_sampling_rate(): number;
  decode_results_num_channels(): number;
}

/** Frames of an MPEG-1 layer III frame; the tag takes one, which decodes to silence. */
const TAG_FRAMES = 1152;
/** What a layer III decoder adds before the first frame (common practice: 528 and one). */
const DECODER_DELAY = 529;
/** Longer than any recording. */
const ALL_SECONDS = 60;

/** Loads the decoder. */
export async function loadMp3Decoder(): Promise<DecodeMp3> {
  const path = createRequire(import.meta.url).resolve('minimp3-wasm/dist/decoder.opt.wasm');
  const module = await WebAssembly.compile(readFileSync(path));
  return (bytes) => {
    // A fresh one for each file: it keeps bits of the last.
    const decoder = new WebAssembly.Instance(module, {}).exports as unknown as Minimp3;
    decoder.decoder_init();
    decoder.decoder_set_mp3_data_size(bytes.length);
    new Uint8Array(decoder.memory.buffer, decoder.decoder_mp3_data_offset(), bytes.length).set(bytes);
    decoder.decoder_seek(0);
    decoder.decoder_decode(ALL_SECONDS);
    assert(decoder.decode_results_num_channels() === 1, 'recordings have one channel');
    const whole = new Int16Array(decoder.memory.buffer, decoder.decoder_pcm_data_offset(), decoder.decoder_pcm_data_size() / 2);
    const { delay, padding } = delaysOf(bytes);
    const from = TAG_FRAMES + DECODER_DELAY + delay;
    const frames = Float32Array.from(whole.subarray(from, whole.length - Math.max(0, padding - DECODER_DELAY)), (value) => value / 32_768);
    return { frames, rate: decoder.decode_results_sampling_rate() };
  };
}

/** Frames that the encoder put before and after the sound, from the tag in the file's first frame (LAME tag, revision 1). */
function delaysOf(bytes: Uint8Array): { readonly delay: number; readonly padding: number } {
  const head = Buffer.from(bytes.subarray(0, 200)).toString('latin1');
  const tag = Math.max(head.indexOf('Info'), head.indexOf('Xing'));
  assert(tag >= 0, 'a recording must hold the tag that says where its sound begins');
  const at = tag + 120 + 21;
  const [a = 0, b = 0, c = 0] = bytes.subarray(at, at + 3);
  return { delay: (a << 4) | (b >> 4), padding: ((b & 15) << 8) | c };
}
