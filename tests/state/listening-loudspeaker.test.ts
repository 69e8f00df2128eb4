/** Delay of loudspeaker and microphone, told from the take itself, and the claps of that take, in synthesised rooms. */
import { describe, expect, it } from 'vitest';
import { fitClocks } from '../../src/performance/clock-map';
import type { MarkerDelay } from '../../src/practice/marker-delay';
import { medianOf } from '../../src/practice/statistics';
import { createMarkers } from '../../src/state/listening/markers';
import { audioSeconds, inputMillis } from '../../src/vocabulary';
import { BAR, request } from '../audio/player-bench';
import { events, performanceOf, SON_2_3 } from '../performance/hand-made';
import { type Room, randomOf } from '../practice/rooms';
import { bench } from './listening-bench';
import { CLAVE_STEPS, CLICKS, clapsIn, hearTake, type Levels, piecesOf, type Take, takeOf } from './loudspeaker';

/** The clock of the inputs runs 5,000 ms ahead of the audio clock. */
const AHEAD_MS = 5000;
const CLOCKS = fitClocks([{ audio: audioSeconds(0), input: inputMillis(AHEAD_MS) }]);
const MONTUNO = [0, 2, 3, 5, 7, 9, 11, 13, 15];
const PLAIN: Levels = { band: 0.12, piano: 0.1, noise: 0.0015 };

/** What the clicks of a take say when its recording and the claps found in it are handed over; `moment` is where a click is said to sound. */
function measured(
  sound: Float32Array,
  rate: number,
  clicks: Take['clicks'],
  found = clapsIn(sound, rate),
  moment = (at: number) => at,
): MarkerDelay | null {
  const markers = createMarkers();
  const sounding = [...clicks];
  for (const frame of found) markers.clap(inputMillis(AHEAD_MS + (1000 * frame) / rate));
  let delay: MarkerDelay | null = null;
  for (const piece of piecesOf(sound, rate, AHEAD_MS)) {
    markers.hear(piece);
    for (let next = sounding[0]; next && AHEAD_MS + 1000 * (next.at - 0.4) < piece.at; next = sounding[0]) {
      const click = CLICKS[next.name];
      if (click) markers.expect(click, audioSeconds(moment(next.at)), 1);
      sounding.shift();
    }
    delay = markers.settle(CLOCKS);
  }
  return delay;
}

/** Distances in milliseconds from the claps of the band's time (within 25 ms) to what was found, a delay taken off. */
function errorsOf(found: readonly number[], claps: readonly number[], rate: number, delayMs: number): number[] {
  const free = new Set(found.map((frame) => (1000 * frame) / rate - delayMs));
  return claps.flatMap((clap) => {
    const at = 1000 * clap;
    const nearest = [...free].sort((a, b) => Math.abs(a - at) - Math.abs(b - at))[0];
    if (nearest === undefined || Math.abs(nearest - at) > 25) return [];
    free.delete(nearest);
    return [nearest - at];
  });
}

const roomOf = (rate: number, delay: number, index: number): Room => ({
  rate,
  seed: 31 * index + Math.round(delay * 1000),
  reverbSeconds: [0.15, 0.35, 0.6][index] ?? 0.35,
  reverbLevel: 0.08,
});
const STEPS_SECONDS = [0.15, 0.2, 0.28] as const;

describe('a loudspeaker in the room of the microphone', () => {
  const cases = [
    ['claps on the clave', CLAVE_STEPS, 0.087, 48_000, PLAIN],
    ['claps on the clave, at 44,100', CLAVE_STEPS, 0.143, 44_100, PLAIN],
    ['a montuno clapped', MONTUNO, 0.031, 48_000, PLAIN],
    ['a montuno clapped, a slow device', MONTUNO, 0.264, 48_000, PLAIN],
    ['a soft loudspeaker', MONTUNO, 0.066, 44_100, { band: 0.03, piano: 0.03, noise: 0.0015 }],
    ['a loud piano', MONTUNO, 0.052, 48_000, { band: 0.15, piano: 0.5, noise: 0.0015 }],
    ['a noisy room', CLAVE_STEPS, 0.11, 48_000, { band: 0.15, piano: 0.1, noise: 0.01 }],
  ] as const;
  it.each(cases)('%s: the delay within a millisecond, the claps with F of at least 0.95 and 3 ms', (name, steps, delay, rate, levels) => {
    let [hits, of] = [0, 0];
    const off: number[] = [];
    const distances: number[] = [];
    STEPS_SECONDS.forEach((stepSeconds, index) => {
      const room = roomOf(rate, delay, index);
      const take = takeOf(4, stepSeconds, steps, randomOf(room));
      const sound = hearTake(room, take, delay, levels);
      const onsets = clapsIn(sound, rate);
      const found = measured(sound, rate, take.clicks, onsets);
      expect(found?.kind).toBe('measured');
      const latencyMs = found?.kind === 'measured' ? found.latencyMs : Number.NaN;
      off.push(latencyMs - 1000 * delay);
      const errors = errorsOf(onsets, take.claps, rate, latencyMs);
      hits += errors.length;
      of += onsets.length + take.claps.length;
      distances.push(...errors.map(Math.abs));
    });
    const f = (2 * hits) / of;
    const medianMs = medianOf(distances) ?? Number.POSITIVE_INFINITY;
    console.log(
      `loudspeaker, ${name}, 3 rooms: delay off by ${off.map((ms) => ms.toFixed(2)).join(', ')} ms; claps F ${f.toFixed(3)} at 25 ms, median error ${medianMs.toFixed(2)} ms`,
    );
    for (const ms of off) expect(Math.abs(ms)).toBeLessThanOrEqual(1);
    expect(f).toBeGreaterThanOrEqual(0.95);
    expect(medianMs).toBeLessThanOrEqual(3);
  });

  const montuno = (index: number, levels: Levels) => {
    const room = roomOf(48_000, 0.087, index);
    const take = takeOf(4, STEPS_SECONDS[index] ?? 0.2, MONTUNO, randomOf(room));
    return { take, sound: hearTake(room, take, 0.087, levels), random: randomOf({ ...room, seed: room.seed + 1 }) };
  };

  it.each([0, 1, 2])('is not measured through headphones, whatever is clapped (room %d)', (index) => {
    const { take, sound } = montuno(index, { band: 0, piano: 0, noise: 0.0015 });
    expect(measured(sound, 48_000, take.clicks)).toEqual({ kind: 'not found', sounded: take.clicks.length });
  });

  it.each([0, 1, 2])('is not measured by a piano alone (room %d)', (index) => {
    const { take, sound } = montuno(index, { band: 0, piano: 0.5, noise: 0.0015 });
    expect(measured(sound, 48_000, take.clicks)?.kind).not.toBe('measured');
  });

  it.each([0, 1, 2])('whose delay wanders by 60 ms is said to scatter (room %d)', (index) => {
    const { take, sound, random } = montuno(index, PLAIN);
    expect(measured(sound, 48_000, take.clicks, clapsIn(sound, 48_000), (at) => at + 0.12 * (random() - 0.5))).toEqual({
      kind: 'scattered',
    });
  });
});

/** A take through the whole of listening: the clave out of a loudspeaker, clapped along with 15 ms late. */
async function clapped(delay: number, levels: Levels) {
  const { listening, player, sources, pass, now, store } = bench();
  player.clickSound = (drum) => CLICKS[drum] ?? null;
  listening.choose('microphone');
  listening.set({ plays: 'clave' });
  await Promise.resolve();
  const clave = [0, 1]
    .flatMap(() => SON_2_3)
    .slice(0, 5)
    .map((step) => ({ tick: step * 240, part: 'clave' as const, midi: null, drum: 'clave' }));
  player.play(request(performanceOf(2, events(...clave))));
  const cycles = 6;
  const songZero = Number(player.music()?.songZero);
  const strokes = Array.from({ length: cycles }, (_, cycle) => SON_2_3.map((step) => songZero + 2 * cycle * BAR + (step * BAR) / 8)).flat();
  const take: Take = {
    seconds: 2 * cycles * BAR + 1,
    clicks: strokes.map((at) => ({ name: 'clave', at })),
    claps: strokes.map((at) => at + 0.015),
  };
  const room: Room = { rate: 48_000, seed: 9, reverbSeconds: 0.35, reverbLevel: 0.08 };
  const sound = hearTake(room, take, delay, levels);
  const pieces = piecesOf(sound, 48_000, 0);
  const onsets = clapsIn(sound, 48_000).map((frame) => frame / 48);
  while (now() < take.seconds) {
    await pass(0.2);
    const over = 1000 * now();
    while (pieces[0] && pieces[0].at + 100 < over) sources.microphone.hear(pieces.shift() as (typeof pieces)[number]);
    while (onsets[0] !== undefined && onsets[0] + 30 < over)
      sources.microphone.play({ kind: 'onset', strength: 0.5, at: inputMillis(onsets.shift() as number), coarse: false });
  }
  return store.getState();
}

describe('claps to a loudspeaker', () => {
  it('are placed by the delay that their own take has measured', async () => {
    const { report, calibration } = await clapped(0.087, PLAIN);
    expect(calibration).toBeNull();
    expect(report?.loudspeaker).toMatchObject({ kind: 'measured', latencyMs: expect.closeTo(87, 0) });
    expect(report?.take.timing).toBe('calibrated');
    expect(report?.matched.offsetMs).toBeCloseTo(15, -0.3);
    expect(report?.assessment.shareRight).toBeGreaterThanOrEqual(0.8);
  });

  it('are told only roughly when the clicks were not heard', async () => {
    const { report, coarse } = await clapped(0.087, { band: 0, piano: 0, noise: 0.0015 });
    expect(report?.loudspeaker?.kind).toBe('not found');
    expect(report?.take.timing).toBe('coarse');
    expect(coarse).toBe(true);
  });
});
