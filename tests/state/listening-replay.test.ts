import { describe, expect, it } from 'vitest';
import { occurrencesIn } from '../../src/performance/occurrences';
import type { Performance } from '../../src/performance/performance';
import { steadyTempo } from '../../src/performance/tempo';
import type { Take } from '../../src/practice/take';
import { claveMet, replayOf } from '../../src/state/listening/replay';
import { halfNotesPerMinute, songSeconds } from '../../src/vocabulary';

/** Two bars of son clave 2-3 (strokes on 2 and 3 | 1, & of 2, 4; R. Santos, "Patrones de songo y salsa", 2009) with bass on 1. */
const CLAVE = [2, 4, 8, 11, 14];
const TEMPO = halfNotesPerMinute(60);
const event = (id: number, part: 'clave' | 'bass' | 'piano right', step: number) => ({
  id,
  part,
  tick: step * 240,
  offsetTicks: 0,
  soundingTicks: 200,
  midi: part === 'clave' ? null : 40,
  drum: part === 'clave' ? 'clave' : null,
  velocity: 90,
  firstPassOnly: false,
});
const MUSIC: Performance = {
  events: [...CLAVE.map((step, id) => event(id, 'clave', step)), event(10, 'bass', 0), event(11, 'piano right', 0)].sort(
    (a, b) => a.tick - b.tick,
  ),
  fromTick: 0,
  toTick: 3840,
  closed: true,
  cycleStarts: [0],
  bars: [
    { tick: 0, ticks: 1920, cycleStep: 0 },
    { tick: 1920, ticks: 1920, cycleStep: 8 },
  ],
  clave: { steps: CLAVE, cycleSteps: 16 },
  tempo: TEMPO,
};
/** At 60 half notes a minute a step lasts 250 ms. Struck on steps 0, 3 and 7 of the 2-side, 20 ms late, in the second pass. */
const TAKE: Take = {
  music: { performance: MUSIC, startTick: 0, early: 0, fromPlay: 0 },
  score: null,
  tempo: steadyTempo(TEMPO),
  fromPlayTick: 3840,
  toPlayTick: 7680,
  parts: ['piano right', 'piano left'],
  notes: [0, 3, 7].map((step) => ({
    at: songSeconds(4 + step * 0.25 + 0.02),
    until: songSeconds(4 + step * 0.25 + 0.2),
    midi: 67,
    velocity: 80,
  })),
  pitched: true,
  timing: 'calibrated',
};
const own = (performance: Performance) => performance.events.filter(({ id }) => id >= 1_000_000).map(({ tick }) => tick);

describe('a take heard again', () => {
  it('sounds as it was played, nothing straightened, with the clave alone', () => {
    const replay = replayOf(TAKE, 'clave');
    expect(own(replay)).toEqual([19, 739, 1699]);
    expect(replay.events.filter(({ part }) => part === 'clave').map(({ tick }) => tick / 240)).toEqual(CLAVE);
    expect(replay.events.some(({ part }) => part === 'bass')).toBe(false);
    expect(replay.events.find(({ id }) => id === 1_000_000)?.soundingTicks).toBe(173);
  });

  it('leaves the parts that were played to the player when the band joins in', () => {
    const replay = replayOf(TAKE, 'band');
    expect(replay.events.filter(({ part }) => part === 'bass')).toHaveLength(1);
    expect(replay.events.filter(({ part, id }) => part === 'piano right' && id < 1_000_000)).toHaveLength(0);
  });

  it('is moved by one bar to the other side, round the loop, and back again', () => {
    const crossed = replayOf(TAKE, 'band', 1920);
    expect(own(crossed)).toEqual([1939, 2659, 3619]);
    expect(own(replayOf(TAKE, 'band', 3840))).toEqual(own(replayOf(TAKE, 'band')));
  });

  it('goes round: every note once a pass', () => {
    const replay = replayOf(TAKE, 'band', 1920);
    const twice = occurrencesIn({ performance: replay, startTick: 0 }, 0, 7680).filter(({ event: { id } }) => id >= 1_000_000);
    expect(twice).toHaveLength(6);
  });

  it('tells which clave strokes it meets, there and on the other side', () => {
    expect(claveMet(replayOf(TAKE, 'clave')).map((tick) => tick / 240)).toEqual([]);
    expect(claveMet(replayOf(TAKE, 'clave', 1920)).map((tick) => tick / 240)).toEqual([8, 11]);
  });

  it('of claps clicks', () => {
    const claps = replayOf({ ...TAKE, notes: TAKE.notes.map((note) => ({ ...note, midi: null, until: null })) }, 'clave');
    expect(claps.events.filter(({ part }) => part === 'pulse')).toHaveLength(3);
  });
});
