import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CLICK_MODES, type Ensemble, FULL_BAND, isLeftOut } from '../../src/performance/ensemble';
import type { PartName, Performance, PerformedEvent } from '../../src/performance/performance';
import { halfNotesPerMinute } from '../../src/vocabulary';

const event = (part: PartName, tick: number): PerformedEvent => ({
  id: tick,
  part,
  tick,
  offsetTicks: 0,
  soundingTicks: 100,
  midi: null,
  drum: part === 'clave' ? 'clave' : 'pulse low',
  velocity: 90,
  firstPassOnly: false,
});
const music = (bars: number, steps: readonly number[]): Performance => ({
  events: [],
  fromTick: 0,
  toTick: bars * 1920,
  closed: true,
  cycleStarts: [0],
  bars: Array.from({ length: bars }, (_, bar) => ({ tick: bar * 1920, ticks: 1920, cycleStep: (bar % 2) * 8 })),
  clave: { steps, cycleSteps: 16 },
  tempo: halfNotesPerMinute(80),
});
/** Son clave: 1, & of 2, 4 | 2, 3 (R. Santos, "Patrones de songo y salsa", 2009), in both directions. */
const THREE_TWO = [0, 3, 6, 10, 12];
const TWO_THREE = [2, 4, 8, 11, 14];

const sounding = (ensemble: Ensemble, part: PartName, ticks: readonly number[], performance: Performance, pass = 0) =>
  ticks.filter((tick) => !isLeftOut(ensemble, event(part, tick), pass, performance));

describe('a band that takes support away', () => {
  it('leaves nothing out as it is', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3839 }), fc.integer({ min: 0, max: 400 }), (tick, pass) => {
        for (const part of ['piano right', 'piano left', 'bass', 'clave', 'pulse', 'percussion'] as const)
          expect(isLeftOut(FULL_BAND, event(part, tick), pass, music(2, TWO_THREE))).toBe(false);
      }),
      { seed: 6 },
    );
  });

  it('clicks on all beats, on 2 and 4, on 1, or not at all', () => {
    const beats = [0, 480, 960, 1440, 1920, 2400, 2880, 3360];
    const clicks = CLICK_MODES.map((click) =>
      sounding({ ...FULL_BAND, click }, 'pulse', beats, music(2, TWO_THREE)).map((tick) => tick / 480),
    );
    expect(clicks).toEqual([[0, 1, 2, 3, 4, 5, 6, 7], [0, 1, 2, 3, 4, 5, 6, 7], [1, 3, 5, 7], [0, 4], [], []]);
  });

  it('keeps of the clave the bombo alone, the & of 2 of the 3-side, in either direction', () => {
    const bombo: Ensemble = { ...FULL_BAND, click: 'bombo only' };
    const ticks = (steps: readonly number[]) => steps.map((step) => step * 240);
    expect(sounding(bombo, 'clave', ticks(THREE_TWO), music(2, THREE_TWO))).toEqual([3 * 240]);
    expect(sounding(bombo, 'clave', ticks(TWO_THREE), music(2, TWO_THREE))).toEqual([11 * 240]);
  });

  it('fades the clave: sixteen bars, then the first bar of every four for sixteen, then none', () => {
    const fades: Ensemble = { ...FULL_BAND, claveFades: true };
    const bars = Array.from({ length: 40 }, (_, bar) => {
      const [pass, tick] = [Math.floor(bar / 2), (bar % 2) * 1920];
      return sounding(fades, 'clave', [tick], music(2, TWO_THREE), pass).length;
    });
    expect(bars.slice(0, 16).every((heard) => heard === 1)).toBe(true);
    expect(bars.slice(16, 32)).toEqual([1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0]);
    expect(bars.slice(32).every((heard) => heard === 0)).toBe(true);
  });

  it('rests the percussion alone while a microphone listens', () => {
    const rests: Ensemble = { ...FULL_BAND, percussionRests: true };
    expect(sounding(rests, 'percussion', [0, 240], music(2, TWO_THREE))).toEqual([]);
    expect(sounding(rests, 'clave', [480], music(2, TWO_THREE))).toEqual([480]);
  });

  it('drops the piano for whole bars, in turn, and nobody else', () => {
    const drops: Ensemble = { ...FULL_BAND, pianoDrops: { on: 4, off: 4 } };
    const heard = (part: PartName) =>
      Array.from({ length: 16 }, (_, bar) => sounding(drops, part, [(bar % 2) * 1920], music(2, TWO_THREE), Math.floor(bar / 2)).length);
    expect(heard('piano right')).toEqual([1, 1, 1, 1, 0, 0, 0, 0, 1, 1, 1, 1, 0, 0, 0, 0]);
    expect(heard('piano left')).toEqual(heard('piano right'));
    expect(heard('bass').every((one) => one === 1)).toBe(true);
  });
});
