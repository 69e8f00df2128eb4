import { createClapOnsets } from '../../practice/clap-onsets';

/*
 * Runs on the audio thread: hands every block of the microphone to the clap detector and posts what it found. Built into a file
 * of its own, served from our own origin.
 */

/** The part of the worklet's global scope that is used here; the DOM library does not declare it. */
declare const sampleRate: number;
declare const currentFrame: number;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

/** Blocks between two messages about the level: about ten messages a second. */
const LEVEL_EVERY = 37;

class ClapProcessor extends AudioWorkletProcessor {
  readonly #claps = createClapOnsets(sampleRate);
  #peak = 0;
  #blocks = 0;

  process(inputs: readonly (readonly Float32Array[])[]): boolean {
    const block = inputs[0]?.[0];
    if (!block) return true;
    const found = this.#claps.push(block, currentFrame);
    if (found > 0) {
      this.port.postMessage({
        kind: 'onsets',
        frames: Array.from(this.#claps.frames.subarray(0, found)),
        strengths: Array.from(this.#claps.strengths.subarray(0, found)),
      });
    }
    for (const sample of block) this.#peak = Math.max(this.#peak, Math.abs(sample));
    this.#blocks += 1;
    if (this.#blocks >= LEVEL_EVERY) {
      this.port.postMessage({ kind: 'level', level: this.#peak, ready: this.#claps.ready });
      this.#peak = 0;
      this.#blocks = 0;
    }
    return true;
  }
}

registerProcessor('clap-onsets', ClapProcessor);
