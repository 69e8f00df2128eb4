import { createClapOnsets } from '../../practice/clap-onsets';
import { createThinner } from '../../practice/thin';

/*
 * Runs on the audio thread: hands every block of the microphone to the clap detector and posts what it found; beside it the sound
 * itself, thinned, so that the page can find the band's own clicks in it. Built into a file of its own, served from our own origin.
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

/** Thinned samples to a message: about a tenth of a second. */
const SOUND_EVERY = 800;

class ClapProcessor extends AudioWorkletProcessor {
  readonly #claps = createClapOnsets(sampleRate);
  readonly #thinner = createThinner(sampleRate);
  readonly #sound = new Float32Array(SOUND_EVERY + 128);
  #kept = 0;
  /** Frame of the first sample in `#sound`, and the frame that follows the last block. */
  #soundFrame = 0;
  #nextFrame = -1;
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
    this.#keep(block);
    for (const sample of block) this.#peak = Math.max(this.#peak, Math.abs(sample));
    this.#blocks += 1;
    if (this.#blocks >= LEVEL_EVERY) {
      this.port.postMessage({ kind: 'level', level: this.#peak, ready: this.#claps.ready });
      this.#peak = 0;
      this.#blocks = 0;
    }
    return true;
  }

  #keep(block: Float32Array): void {
    if (currentFrame !== this.#nextFrame) {
      this.#thinner.reset();
      this.#kept = 0;
      this.#soundFrame = currentFrame;
    }
    this.#nextFrame = currentFrame + block.length;
    this.#kept += this.#thinner.push(block, this.#sound, this.#kept);
    if (this.#kept < SOUND_EVERY) return;
    this.port.postMessage({ kind: 'sound', frame: this.#soundFrame, samples: this.#sound.slice(0, this.#kept) });
    this.#soundFrame += this.#kept * this.#thinner.every;
    this.#kept = 0;
  }
}

registerProcessor('clap-onsets', ClapProcessor);
