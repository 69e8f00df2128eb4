import { describe, expect, it } from 'vitest';
import { createRecorderPlayer } from '../../src/audio/recorder-player';
import { createCalibrating, delayOf } from '../../src/state/listening/calibrating';
import { type Calibration, calibrationsFrom, createCalibrations } from '../../src/state/listening/calibrations';
import { createClockTrack } from '../../src/state/listening/clock-track';
import { inputMillis } from '../../src/vocabulary';
import { memoryStorage } from './memory-storage';

const CLICKS = Array.from({ length: 16 }, (_, index) => 1000 + index * 500);

describe('the delay of a device', () => {
  it('is the middle of the differences, whatever a few stray taps do', () => {
    const taps = CLICKS.map((click, index) => click + 35 + (index % 5) - 2);
    taps[3] = (taps[3] ?? 0) + 180;
    taps[9] = (taps[9] ?? 0) - 150;
    const outcome = delayOf(CLICKS, taps);
    expect(outcome.ok && Math.abs(outcome.latencyMs - 35)).toBeLessThanOrEqual(1);
    expect(outcome.ok && outcome.spreadMs).toBeLessThan(3);
  });

  it('may be before the click: people tap early', () => {
    const outcome = delayOf(
      CLICKS,
      CLICKS.map((click) => click - 28),
    );
    expect(outcome).toMatchObject({ ok: true, latencyMs: -28 });
  });

  it('is not told from too few taps, or from taps all over the place', () => {
    expect(
      delayOf(
        CLICKS,
        CLICKS.slice(0, 8).map((click) => click + 20),
      ),
    ).toEqual({ ok: false, why: 'too few' });
    expect(delayOf(CLICKS, [])).toEqual({ ok: false, why: 'too few' });
    expect(
      delayOf(
        CLICKS,
        CLICKS.map((click, index) => click + (index % 2 ? 90 : -90)),
      ),
    ).toEqual({ ok: false, why: 'too uneven' });
  });

  it('is not told from even taps that are not with the clicks', () => {
    expect(
      delayOf(
        CLICKS,
        CLICKS.map((click) => click - 136),
      ),
    ).toEqual({ ok: false, why: 'off the clicks' });
  });

  it('is measured against the clicks as they were heard', () => {
    const player = createRecorderPlayer();
    const calibrating = createCalibrating();
    const clocks = createClockTrack();
    player.pass(1);
    const track = calibrating.start('tapping');
    player.play({ performance: track, fromTick: 0, tempo: track.tempo, countInBars: 0 });
    for (let tick = 0; tick < 55; tick += 1) {
      const music = player.music();
      if (music) calibrating.meet(music);
      const clock = player.clock();
      if (clock) clocks.read(clock.pair);
      player.pass(0.2);
    }
    for (let click = 0; click < 18; click += 1)
      calibrating.hear({ kind: 'onset', strength: 0.5, at: inputMillis(1000 + click * 500 + 62), coarse: false });
    const map = clocks.map();
    const outcome = map && calibrating.result(map);
    expect(player.transportState().kind).toBe('stopped');
    expect(outcome?.ok && Math.round(outcome.latencyMs)).toBe(62);
  });
});

const FERRY: Calibration = { device: 'Ferry 1', latencyMs: 21, spreadMs: 4, rate: 48_000, measured: 1_000_000 };

describe('delays that are kept', () => {
  it('come back under the name of the device', async () => {
    const { storage } = memoryStorage();
    expect(await createCalibrations(storage, () => 1_000_000).keep(FERRY)).toBe(true);
    const later = createCalibrations(storage, () => 2_000_000);
    expect(await later.find('Ferry 1', 48_000)).toEqual(FERRY);
    expect(await later.find('Ferry 2', 48_000)).toBeNull();
  });

  it('expire when the rate of the output changes, and after a month', async () => {
    const { storage } = memoryStorage();
    let now = 1_000_000;
    const kept = createCalibrations(storage, () => now);
    await kept.keep(FERRY);
    expect(await kept.find('Ferry 1', 44_100)).toBeNull();
    now += 31 * 24 * 3600 * 1000;
    expect(await kept.find('Ferry 1', 48_000)).toBeNull();
  });

  it('are replaced by a newer one, and a record that cannot be read counts as none', async () => {
    const { kept: records, storage } = memoryStorage();
    const kept = createCalibrations(storage, () => 1_000_000);
    await kept.keep(FERRY);
    await kept.keep({ ...FERRY, latencyMs: 30 });
    expect(calibrationsFrom(records.get('calibrations') ?? '')).toEqual([{ ...FERRY, latencyMs: 30 }]);
    for (const text of ['', '{', 'null', '{"calibrations":7}', '{"calibrations":[null,{"device":"x","latencyMs":"7"}]}'])
      expect(calibrationsFrom(text)).toEqual([]);
  });
});
