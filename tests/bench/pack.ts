import { loadSounds } from '../../src/cli/sounds';
import { writeMidi } from '../../src/exchange/midi/write-midi';
import { writeMusicXml } from '../../src/exchange/musicxml/write-musicxml';
import { packEntries, zipPack } from '../../src/exchange/pack/make-pack';
import type { PackOrder } from '../../src/exchange/pack/pack-order';
import { mixWav } from '../../src/exchange/wav/mix-wav';
import type { SoundSet } from '../../src/exchange/wav/pcm';
import { levelsFor, PLAIN_LEVELS, PLAY_ALONGS, playAlongOptions, playAlongPerformance } from '../../src/exchange/wav/play-along';
import { readChart } from '../../src/music/chart/read';
import { arrange } from '../../src/music/score';
import { BENCH_SEED, benchChart } from './bench-chart';

const KEYS = [0, 1, 2, 3, 4, 5, 6, -5, -4, -3, -2, -1];
const seconds = (from: number): number => Number(((performance.now() - from) / 1000).toFixed(2));

/**
 * A pack of 12 keys of a 32-bar chart, everything but the sheets (which need a browser): seconds for each stage by itself, then for the
 * whole zip as it is streamed, and how far memory rose above where it stood before, the pieces being let go as they come.
 */
export async function measurePack() {
  const read = readChart(benchChart(32, BENCH_SEED));
  if (!read.ok) throw new Error("the bench's own chart has a fault");
  const { value: chart } = read;
  const decoding = performance.now();
  const sounds = await loadSounds();
  if (!sounds.ok) throw new Error(sounds.faults[0]);
  const decodeSeconds = seconds(decoding);
  const arranging = performance.now();
  const scores = KEYS.map((transpose) => arrange(chart, { transpose }));
  const arrangeSeconds = seconds(arranging);
  const writing = performance.now();
  for (const score of scores) writeMidi(score);
  const midiSeconds = seconds(writing);
  const engraving = performance.now();
  for (const score of scores) writeMusicXml(score);
  const musicXmlSeconds = seconds(engraving);
  const mixing = performance.now();
  const wavBytes = mixAll(scores, sounds.value);
  const wavSeconds = seconds(mixing);
  const order: PackOrder = {
    scores,
    sounding: scores,
    tempi: [chart.tempo],
    kinds: ['midi', 'musicxml', 'wav'],
    playAlongs: PLAY_ALONGS,
    form: 'loop',
    levels: PLAIN_LEVELS,
    rate: 44_100,
    date: '2026-11-25',
  };
  const before = process.memoryUsage().rss;
  let highest = before;
  let zipBytes = 0;
  const zipping = performance.now();
  const entries = packEntries(order, { sounds: () => sounds.value, sheet: async () => new Uint8Array() });
  for await (const piece of zipPack(entries, new Date(2026, 10, 25))) {
    zipBytes += piece.length;
    highest = Math.max(highest, process.memoryUsage().rss);
  }
  return {
    decodeSeconds,
    arrangeSeconds,
    midiSeconds,
    musicXmlSeconds,
    wavSeconds,
    zipSeconds: seconds(zipping),
    wavMegabytes: Math.round(wavBytes / 1e6),
    zipMegabytes: Math.round(zipBytes / 1e6),
    memoryRiseMegabytes: Math.round((highest - before) / 1e6),
  };
}

function mixAll(scores: readonly ReturnType<typeof arrange>[], sounds: SoundSet): number {
  const kept = new Map();
  let bytes = 0;
  for (const score of scores)
    for (const kind of PLAY_ALONGS) {
      const options = { ...playAlongOptions('loop'), rate: 44_100 as const, tempo: score.tempo, levels: levelsFor(kind, PLAIN_LEVELS) };
      for (const piece of mixWav(playAlongPerformance(score, 'loop'), options, sounds, kept).chunks) bytes += piece.length;
    }
  return bytes;
}
