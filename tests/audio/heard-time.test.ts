import { describe, expect, test } from 'vitest';
import { heardTime } from '../../src/audio/heard-time';

const reading = { currentTime: 10, outputLatency: 0.03, baseLatency: 0.01, timestamp: null, nowMs: 50_000 };

describe('the moment that is heard', () => {
  test('follows the output timestamp, carried on to now', () => {
    expect(heardTime({ ...reading, timestamp: { contextTime: 9.9, performanceTime: 49_980 } })).toBeCloseTo(9.92, 9);
  });

  test('is the computed time less the latency when there is no timestamp, or no sane one', () => {
    expect(heardTime(reading)).toBeCloseTo(9.97, 9);
    expect(heardTime({ ...reading, outputLatency: null })).toBeCloseTo(9.99, 9);
    expect(heardTime({ ...reading, outputLatency: null, baseLatency: null })).toBe(10);
    for (const timestamp of [
      { contextTime: 0, performanceTime: 0 },
      { contextTime: 9.9, performanceTime: 40_000 },
      { contextTime: 12, performanceTime: 49_990 },
      { contextTime: 3, performanceTime: 49_990 },
      { contextTime: 9.9, performanceTime: 50_100 },
    ])
      expect(heardTime({ ...reading, timestamp })).toBeCloseTo(9.97, 9);
  });

  test('is never later than what is computed and never negative', () => {
    expect(heardTime({ ...reading, timestamp: { contextTime: 9.999, performanceTime: 49_990 } })).toBe(10);
    expect(heardTime({ ...reading, currentTime: 0.01 })).toBe(0);
  });
});
