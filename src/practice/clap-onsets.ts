/** Finds claps and taps in a stream of audio blocks. Made for an audio worklet: `push` allocates nothing. */
export interface ClapOnsets {
  /**
   * Takes the next block (any length; 128 in a worklet), whose first sample is frame `startFrame` of the audio clock. Returns how many
   * onsets were found in it; read them from `frames` and `strengths` before the next call. Moments are given with their true frame,
   * up to about 10 ms before the block in which they become certain. A gap between blocks starts the detector again.
   */
  push(block: Float32Array, startFrame: number): number;
  /** Frames of the onsets of the last block. */
  readonly frames: Float64Array;
  /** Their strengths, 0 to 1. */
  readonly strengths: Float32Array;
  /** False in the first moments, while the level of the room is being learned. */
  readonly ready: boolean;
}
