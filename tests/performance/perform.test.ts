import { describe, expect, test } from 'vitest';
import type { Score } from '../../src/music/score';
import type { Feel } from '../../src/performance/feel';
import type { PerformOptions } from '../../src/performance/perform';
import { perform } from '../../src/performance/perform';
import type { BassStroke, PianoStroke, StrokeReason } from '../../src/vocabulary';
import { halfNotesPerMinute } from '../../src/vocabulary';
import { deepFreeze, SON_2_3 } from './hand-made';

const reason: StrokeReason = {
  step: 0,
  side: 2,
  anticipatesBar: null,
  anticipatesWithinBar: false,
  move: null,
  claveStroke: null,
  fallback: null,
};
const piano = (tick: number, role: PianoStroke['role'], midi: readonly number[], chord: string): PianoStroke => ({
  tick,
  durationTicks: 240,
  soundingTicks: 180,
  midi,
  names: midi.map(String),
  velocity: 96,
  role,
  chord,
  degrees: [],
  leadTicks: 0,
  lift: 0,
  line: null,
  device: null,
  firstPassOnly: false,
  reason,
});
const bass = (tick: number, role: BassStroke['role'], midi: number, chord: string, firstPassOnly = false): BassStroke => ({
  tick,
  durationTicks: 480,
  soundingTicks: 400,
  midi: [midi],
  names: [String(midi)],
  velocity: 90,
  role,
  chord,
  degrees: [],
  leadTicks: 0,
  lift: 0,
  line: null,
  device: null,
  firstPassOnly,
  reason,
});

/** Two bars, Fm6 and C7, hand-made; only what `perform` reads is filled in with meaning. */
function score({ closed = true, meter = '4/4' as Score['meter'] } = {}): Score {
  const barTicks = meter === '6/8' ? 1440 : 1920;
  const bars = [0, 1].map((index) => ({ index, tick: index * barTicks, ticks: barTicks, cycleStep: (index * barTicks) / 240 }));
  return deepFreeze({
    title: 'Harbour Lights Out',
    key: { tonic: 'F', mode: 'minor' },
    meter,
    style: 'salsa',
    closed,
    clave: { kind: 'son', direction: '2-3' },
    tempo: halfNotesPerMinute(92),
    level: 2,
    levels: [],
    styles: [],
    devices: [],
    hands: 'right',
    colour: 'plain',
    bars: bars as unknown as Score['bars'],
    form: {} as Score['form'],
    fromTick: 0,
    toTick: 2 * barTicks,
    parts: {
      rightHand: [
        piano(0, 'octave', [68, 80], 'Fm6'),
        piano(240, 'inner', [72, 77], 'Fm6'),
        piano(1920 - 480, 'octave', [67, 79], 'C7'),
        piano(1920 - 240, 'inner', [70, 76], 'C7'),
      ].filter(({ tick }) => tick < 2 * barTicks),
      leftHand: [piano(0, 'single', [56], 'Fm6')],
      bass: [bass(0, 'root', 41, 'Fm6', true), bass(720, 'fifth', 36, 'Fm6'), bass(960, 'root', 36, 'C7'), bass(1200, 'fifth', 43, 'C7')],
      clave: (meter === '6/8' ? [0, 2, 4, 5, 7, 9, 11] : SON_2_3).map((step) => ({ tick: step * 240, stroke: 'stroke' })),
      percussion: {
        cascara: [
          { tick: 0, stroke: 'accent' },
          { tick: 480, stroke: 'plain' },
        ],
      },
    },
    alignment: {
      verdict: null,
      states: 'neutral',
      score: 0,
      reason: { name: null, twoSideSounds: [], twoSideSilent: [], threeSideSounds: [], threeSideSilent: [] },
    },
    notices: [],
  });
}
const plain: PerformOptions = { sounding: { right: true, left: true }, pulse: 'halves', ending: false };
const ticksOf = (music: ReturnType<typeof perform>, part: string) =>
  music.events.filter((event) => event.part === part).map(({ tick }) => tick);

describe('perform', () => {
  test('makes one event of each note, ascending, with ids that are the same every time', () => {
    const music = perform(score(), plain);
    expect(music.events.filter(({ part }) => part === 'piano right').map(({ midi }) => midi)).toEqual([68, 80, 72, 77, 67, 79, 70, 76]);
    expect(new Set(music.events.map(({ id }) => id)).size).toBe(music.events.length);
    expect(music.events.map(({ tick }) => tick)).toEqual(music.events.map(({ tick }) => tick).sort((a, b) => a - b));
    expect(perform(score(), plain)).toEqual(music);
    expect(music.events.find(({ part, tick }) => part === 'bass' && tick === 0)?.firstPassOnly).toBe(true);
  });

  test('leaves out the hand that the player takes over', () => {
    const music = perform(score(), { ...plain, sounding: { right: false, left: true } });
    expect(ticksOf(music, 'piano right')).toEqual([]);
    expect(ticksOf(music, 'piano left')).toEqual([0]);
  });

  test('marks 1 and 3, or all four, or the dotted beats of 6/8, high on the one', () => {
    expect(ticksOf(perform(score(), plain), 'pulse')).toEqual([0, 960, 1920, 2880]);
    expect(ticksOf(perform(score(), { ...plain, pulse: 'quarters' }), 'pulse')).toEqual([0, 480, 960, 1440, 1920, 2400, 2880, 3360]);
    const six = perform(score({ meter: '6/8' }), { ...plain, pulse: 'quarters' });
    expect(six.events.filter(({ part }) => part === 'pulse').map(({ tick, drum }) => [tick, drum])).toEqual([
      [0, 'pulse high'],
      [720, 'pulse low'],
      [1440, 'pulse high'],
      [2160, 'pulse low'],
    ]);
  });

  test('knows the clave, its cycle and where cycles begin', () => {
    expect(perform(score(), plain)).toMatchObject({
      clave: { steps: SON_2_3, cycleSteps: 16 },
      cycleStarts: [0],
      fromTick: 0,
      toTick: 3840,
      closed: true,
    });
    expect(perform(score({ meter: '6/8' }), plain).clave).toEqual({ steps: [0, 2, 4, 5, 7, 9, 11], cycleSteps: 12 });
  });

  test('names a drum by instrument and stroke', () => {
    expect(
      perform(score(), plain)
        .events.filter(({ part }) => part === 'percussion')
        .map(({ drum }) => drum),
    ).toEqual(['cascara accent', 'cascara plain']);
  });

  test('ends with one stroke for everyone a bar long: octave with its inner notes, root in the bass, clave', () => {
    const music = perform(score({ closed: false }), { ...plain, ending: true });
    expect(music).toMatchObject({ closed: false, toTick: 3840 + 1920 });
    const last = music.events.filter(({ tick }) => tick === 3840);
    expect(last.filter(({ part }) => part === 'piano right').map(({ midi }) => midi)).toEqual([67, 70, 76, 79]);
    expect(last.filter(({ part }) => part === 'piano left').map(({ midi }) => midi)).toEqual([56]);
    expect(last.filter(({ part }) => part === 'bass').map(({ midi }) => midi)).toEqual([36]);
    expect(last.map(({ part }) => part)).toEqual(expect.arrayContaining(['clave', 'pulse', 'percussion']));
    expect(last.every(({ soundingTicks }) => soundingTicks === 1920)).toBe(true);
    expect(music.events.some(({ tick }) => tick > 3840)).toBe(false);
  });

  test('an open score without an ending stops after its last bar', () => {
    expect(perform(score({ closed: false }), plain)).toMatchObject({ closed: false, toTick: 3840 });
  });

  test('puts a measured feel beside the notated place and never into it', () => {
    const feel: Feel = {
      name: 'measured',
      millis: { clave: Array.from({ length: 16 }, (_, step) => (step === 8 ? -14 : 0)) },
      stepMillis: 240,
    };
    const clave = perform(score(), { ...plain, feel }).events.filter(({ part }) => part === 'clave');
    expect(clave.map(({ tick, offsetTicks }) => [tick, offsetTicks])).toEqual([
      [480, 0],
      [960, 0],
      [1920, -14],
      [2640, 0],
      [3360, 0],
    ]);
  });

  test('a stroke outside the score is a mistake of ours and throws', () => {
    const broken = { ...score(), toTick: 900 };
    expect(() => perform(broken, plain)).toThrow('[0, 900)');
  });
});
