/**
 * Gives parameters the method `cancelAndHoldAtTime` where a browser lacks it (Firefox does, and so did Safari for long), because Tone.js calls it on the
 * browser's own parameters. Tone calls it only when nothing is scheduled after `time`, and sets the value to hold at `time` itself right
 * after the call; so what is left to do is to cancel what comes later and to leave what is scheduled at `time`.
 */
export function supplyHold(parameters: AudioParam = AudioParam.prototype): void {
  if ('cancelAndHoldAtTime' in parameters) return;
  Object.defineProperty(parameters, 'cancelAndHoldAtTime', {
    configurable: true,
    value: function cancelAndHoldAtTime(this: AudioParam, time: number): AudioParam {
      return this.cancelScheduledValues(time + LATER_SECONDS);
    },
  });
}

/** Less than a frame at any rate that a device runs at. */
const LATER_SECONDS = 1e-6;
