/** Runs in the page before its own code; as text, so that no tool rewrites it. Notes every sound that the page hands to the live sound device. */
export const WITNESS_STARTS = `
  const seen = { starts: 0, twice: 0, twiceAt: [], late: 0, leastLeadMs: Infinity, longestGap: 0, last: null, context: null, meter: null };
  window.soakSeen = seen;
  const recent = new Map();
  // A value that is set ahead is not told by the parameter before its time has come: two notes of one recording would look alike.
  const set = new WeakMap();
  const setValueAtTime = AudioParam.prototype.setValueAtTime;
  AudioParam.prototype.setValueAtTime = function (value, time) {
    set.set(this, value);
    return setValueAtTime.call(this, value, time);
  };
  const start = AudioBufferSourceNode.prototype.start;
  AudioBufferSourceNode.prototype.start = function (when = 0, ...more) {
    const { context } = this;
    if (context instanceof AudioContext) {
      seen.context = context;
      seen.starts += 1;
      // The page never asks for a moment in the past: a sound that comes too late is given the frame that is computed next.
      const lead = when - context.currentTime;
      if (lead < 2 / context.sampleRate) seen.late += 1;
      seen.leastLeadMs = Math.min(seen.leastLeadMs, lead * 1000);
      const rate = set.get(this.playbackRate) ?? this.playbackRate.value;
      const key = rate + ' ' + when.toFixed(4);
      const buffers = recent.get(key) ?? new Set();
      if (buffers.has(this.buffer)) {
        seen.twice += 1;
        if (seen.twiceAt.length < 5) seen.twiceAt.push([when, rate, this.buffer.duration].map((value) => value.toFixed(4)).join(' '));
      }
      buffers.add(this.buffer);
      recent.set(key, buffers);
      if (recent.size > 500) recent.delete(recent.keys().next().value);
      if (seen.last !== null) seen.longestGap = Math.max(seen.longestGap, when - seen.last);
      seen.last = Math.max(seen.last ?? when, when);
    }
    return start.call(this, when, ...more);
  };
  const connect = AudioNode.prototype.connect;
  AudioNode.prototype.connect = function (...to) {
    if (to[0] instanceof AudioDestinationNode && this.context instanceof AudioContext) {
      seen.meter = this.context.createAnalyser();
      seen.meter.fftSize = 32768;
      connect.call(this, seen.meter);
    }
    return connect.apply(this, to);
  };
  /** The largest amplitude that the meter holds. */
  window.soakPeak = () => {
    const samples = new Float32Array(seen.meter.fftSize);
    seen.meter.getFloatTimeDomainData(samples);
    return samples.reduce((peak, value) => Math.max(peak, Math.abs(value)), 0);
  };
  /** Presses Stop in the page and gives the milliseconds of the audio clock to the last frame above -60 dB of full scale. */
  window.soakStop = async (button) => {
    const from = seen.context.currentTime;
    button.click();
    await new Promise((go) => setTimeout(go, 300));
    const { fftSize, context } = seen.meter;
    const samples = new Float32Array(fftSize);
    seen.meter.getFloatTimeDomainData(samples);
    const now = context.currentTime;
    seen.last = null;
    const lastAudible = samples.findLastIndex((value) => Math.abs(value) >= 0.001);
    return Math.max(0, now - (fftSize - 1 - lastAudible) / context.sampleRate - from) * 1000;
  };
`;
