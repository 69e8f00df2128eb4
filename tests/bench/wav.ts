import { loadSounds } from '../../src/cli/sounds';
import { mixWav } from '../../src/exchange/wav/mix-wav';
import { levelsFor, PLAIN_LEVELS, playAlongOptions, playAlongPerformance } from '../../src/exchange/wav/play-along';
import { scoreOf } from './arrange';
import { BENCH_SEED, benchChart } from './bench-chart';
import { copyMs, median, overFloor, type Results } from './measure';

const RATE = 44_100;

/** A play-along of 32 bars, whole band, as a loop: how many times faster than it sounds. The floor copies as many bytes. */
export async function measureWav(): Promise<Results> {
  const sounds = await loadSounds();
  if (!sounds.ok) throw new Error(sounds.faults[0]);
  const score = scoreOf(benchChart(32, BENCH_SEED));
  const performance_ = playAlongPerformance(score, 'loop');
  const options = { ...playAlongOptions('loop'), rate: RATE, tempo: score.tempo, levels: levelsFor('full', PLAIN_LEVELS) } as const;
  const kept = new Map();
  let bytes = 0;
  const times = Array.from({ length: 6 }, () => {
    const from = performance.now();
    bytes = 0;
    for (const piece of mixWav(performance_, options, sounds.value, kept).chunks) bytes += piece.length;
    return performance.now() - from;
  });
  // The first run bends the sounds; what a player waits for twice is the others.
  const ms = median(times.slice(1));
  // Two channels of 16 bits.
  const seconds = bytes / (RATE * 4);
  return {
    wavMs: overFloor(ms, copyMs(bytes), 'copying as many bytes'),
    wavFirstMs: times[0] ?? Number.NaN,
    wavTimesRealTime: (seconds * 1000) / ms,
    wavSeconds: seconds,
  };
}
