import { assert } from '../../vocabulary';

/** Frames a second that are written. */
export type WavRate = 44_100 | 48_000;

/** Bytes before the first frame. */
export const WAV_HEADER_BYTES = 44;
/** Bytes of a frame: two channels of 16 bits. */
export const WAV_FRAME_BYTES = 4;
/** The type of the file, for saving it. */
export const WAV_TYPE = 'audio/wav';

/**
 * The head of a WAV file of `frames` frames, 16-bit stereo. Throws when the file would pass 4 GB, which its length fields cannot hold.
 * Source: Multimedia Programming Interface and Data Specifications 1.0 (IBM and Microsoft, 1991), RIFF WAVE with the PCM format.
 */
export function wavHeader(frames: number, rate: WavRate): Uint8Array {
  const data = frames * WAV_FRAME_BYTES;
  assert(data + WAV_HEADER_BYTES < 2 ** 32, `a WAV file holds at most 4 GB, asked for ${frames} frames`);
  const bytes = new Uint8Array(WAV_HEADER_BYTES);
  const view = new DataView(bytes.buffer);
  const text = (at: number, word: string) =>
    bytes.set(
      [...word].map((sign) => sign.charCodeAt(0)),
      at,
    );
  text(0, 'RIFF');
  view.setUint32(4, WAV_HEADER_BYTES - 8 + data, true);
  text(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 2, true);
  view.setUint32(24, rate, true);
  view.setUint32(28, rate * WAV_FRAME_BYTES, true);
  view.setUint16(32, WAV_FRAME_BYTES, true);
  view.setUint16(34, 16, true);
  text(36, 'data');
  view.setUint32(40, data, true);
  return bytes;
}
