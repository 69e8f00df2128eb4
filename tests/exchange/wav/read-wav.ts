/** Reads a WAV file by its chunks, as the published format describes them, for tests: nothing of the writer is used. */
export function readWav(bytes: Uint8Array): { rate: number; channels: number; bits: number; left: Int16Array; right: Int16Array } {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const word = (at: number) => String.fromCharCode(...bytes.subarray(at, at + 4));
  if (word(0) !== 'RIFF' || word(8) !== 'WAVE') throw new Error('no RIFF WAVE');
  if (view.getUint32(4, true) !== bytes.length - 8) throw new Error(`RIFF length ${view.getUint32(4, true)} in a file of ${bytes.length}`);
  let format = { rate: 0, channels: 0, bits: 0 };
  for (let at = 12; at < bytes.length; ) {
    const size = view.getUint32(at + 4, true);
    if (word(at) === 'fmt ') {
      if (view.getUint16(at + 8, true) !== 1) throw new Error('not PCM');
      format = { channels: view.getUint16(at + 10, true), rate: view.getUint32(at + 12, true), bits: view.getUint16(at + 22, true) };
    }
    if (word(at) === 'data') {
      const frames = size / 4;
      const side = (offset: number) => Int16Array.from({ length: frames }, (_, index) => view.getInt16(at + 8 + index * 4 + offset, true));
      return { ...format, left: side(0), right: side(2) };
    }
    at += 8 + size + (size % 2);
  }
  throw new Error('no data');
}

/** All pieces of a stream as one file. */
export function whole(chunks: Iterable<Uint8Array>): Uint8Array {
  const pieces = [...chunks];
  const bytes = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    bytes.set(piece, at);
    at += piece.length;
  }
  return bytes;
}

/** Frames at which sound begins after silence, or that stand alone: onsets of click-like sounds. */
export const onsetsOf = (channel: Int16Array): number[] =>
  [...channel.keys()].filter((frame) => (channel[frame] ?? 0) !== 0 && (channel[frame - 1] ?? 0) === 0);

/** The first `count` onsets of a stream of one whole head and then frames, read no further than needed. */
export function firstOnsets(chunks: Iterable<Uint8Array>, count: number): number[] {
  let left = new Int16Array(0);
  let head = true;
  for (const chunk of chunks) {
    if (!head)
      left = Int16Array.from([
        ...left,
        ...new Int16Array(chunk.buffer, chunk.byteOffset, chunk.length / 2).filter((_, at) => at % 2 === 0),
      ]);
    head = false;
    if (onsetsOf(left).length >= count) break;
  }
  return onsetsOf(left).slice(0, count);
}
