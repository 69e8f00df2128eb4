import { describe, expect, it } from 'vitest';
import { toInput } from '../../src/performance/clock-map';
import { seeded } from '../../src/practice/seeded';
import { createClockTrack } from '../../src/state/listening/clock-track';
import { createOutputWatch } from '../../src/state/listening/output-trust';
import { audioSeconds, inputMillis } from '../../src/vocabulary';

describe('the line between the clocks', () => {
  it.each([50, -50])('follows a skew of %s parts in a million for thirty minutes, within 2 ms', (ppm) => {
    const track = createClockTrack();
    const next = seeded(7);
    let worst = 0;
    let jumps = 0;
    for (let second = 0.5; second <= 1800; second += 0.5) {
      const trueInput = 5000 + second * 1000 * (1 + ppm / 1e6);
      if (track.read({ audio: audioSeconds(second), input: inputMillis(trueInput + next() * 6 - 3) }) === 'jumped') jumps += 1;
      const map = track.map();
      if (map && second > 5) worst = Math.max(worst, Math.abs(toInput(map, audioSeconds(second)) - trueInput));
    }
    expect(jumps).toBe(0);
    expect(worst).toBeLessThan(2);
  });

  it('begins anew when a clock jumps, and says so once', () => {
    const track = createClockTrack();
    for (let second = 0; second < 20; second += 0.5) track.read({ audio: audioSeconds(second), input: inputMillis(1000 * second) });
    expect(track.read({ audio: audioSeconds(20), input: inputMillis(24_000) })).toBe('jumped');
    expect(track.read({ audio: audioSeconds(20.5), input: inputMillis(24_500) })).toBe('steady');
    const map = track.map();
    expect(map && toInput(map, audioSeconds(21))).toBeCloseTo(25_000, 6);
  });
});

describe('the output', () => {
  it('is steady with a cable, and where the browser does not tell', () => {
    const watch = createOutputWatch();
    for (let turn = 0; turn < 50; turn += 1) expect(watch.read(18 + (turn % 2))).toBe('steady');
    expect(createOutputWatch().read(null)).toBe('steady');
  });

  it('is wireless above 80 ms, as soon as it has settled', () => {
    const watch = createOutputWatch();
    const said = Array.from({ length: 10 }, () => watch.read(180));
    expect(said.slice(0, 4)).toEqual(['steady', 'steady', 'steady', 'steady']);
    expect(said.at(-1)).toBe('wireless');
  });

  it('is unstable when it wanders by more than 15 ms, but one odd reading is nothing', () => {
    const watch = createOutputWatch();
    for (let turn = 0; turn < 12; turn += 1) watch.read(20);
    expect(watch.read(70)).toBe('steady');
    for (let turn = 0; turn < 4; turn += 1) watch.read(20);
    expect(watch.read(20)).toBe('steady');
    for (let turn = 0; turn < 6; turn += 1) watch.read(45);
    expect(watch.read(45)).toBe('unstable');
  });
});
