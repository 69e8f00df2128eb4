import { describe, expect, test } from 'vitest';
import { STROKES_BY_INSTRUMENT } from '../../../src/music/percussion/percussion';
import { PERCUSSION_SOUNDS, percussionSound } from '../../../src/performance/sounds/percussion-sounds';
import { DRUM_SAMPLES } from '../../../src/performance/sounds/sample-set';
import { DRUM_NAMES, drumTone, SYNTHESISED_RATE } from '../../../src/performance/sounds/synthesised-set';

const STROKES = [...STROKES_BY_INSTRUMENT].flatMap(([instrument, strokes]) => strokes.map((stroke) => `${instrument} ${stroke}`));

describe('the sounds of percussion', () => {
  test('there is a row for every stroke that a part can hold, and none besides', () => {
    expect(Object.keys(PERCUSSION_SOUNDS).sort()).toEqual([...STROKES].sort());
  });

  test('every sound is there twice, recorded and made by rule', () => {
    const recorded = DRUM_SAMPLES.map(({ drum }) => drum);
    for (const sound of Object.values(PERCUSSION_SOUNDS)) {
      expect(recorded, sound).toContain(sound);
      expect(DRUM_NAMES, sound).toContain(sound);
    }
  });

  test('every recording but the clave serves some stroke', () => {
    const used = new Set(Object.values(PERCUSSION_SOUNDS));
    expect(DRUM_SAMPLES.filter(({ drum }) => drum !== 'clave' && !used.has(drum))).toEqual([]);
  });

  // General MIDI 1 percussion key map, from memory: 37 side stick, 56 cowbell, 60 and 61 bongos, 62 muted conga, 63 and 64 open congas, 65 and 66 timbales, 70 maracas, 73 and 74 guiro.
  test.each([
    ['cascara accent', 37],
    ['mambo bell plain', 56],
    ['bongo bell mouth', 56],
    ['bongo accent', 60],
    ['bongo low', 61],
    ['conga slap', 62],
    ['conga open', 63],
    ['conga open low', 64],
    ['timbales rimshot', 65],
    ['timbales open', 66],
    ['maracas plain', 70],
    ['guiro short scrape', 73],
    ['guiro long scrape', 74],
  ])('%s is rendered from key %i', (stroke, key) => {
    expect(DRUM_SAMPLES.find(({ drum }) => drum === PERCUSSION_SOUNDS[stroke])?.generalMidi).toBe(key);
  });

  test('damped strokes are shorter than open ones, and the low drum is lower, in what is made by rule', () => {
    const seconds = (name: string) => drumTone(name).length / SYNTHESISED_RATE;
    for (const [damped, open] of [
      ['conga heel', 'conga open'],
      ['timbal muffled', 'timbal low'],
      ['bongo bell neck', 'bongo bell mouth'],
      ['bongo fingers', 'bongo high'],
    ] as const)
      expect(seconds(damped)).toBeLessThan(seconds(open) / 2);
    const crossings = (name: string) => {
      const frames = drumTone(name).slice(1000, 5000);
      return frames.reduce((count, value, index) => count + (value >= 0 !== (frames[index - 1] ?? value) >= 0 ? 1 : 0), 0);
    };
    expect(crossings('conga low')).toBeLessThan(crossings('conga open'));
    expect(crossings('bongo bell mouth')).toBeLessThan(crossings('cha-cha bell'));
  });

  test('a stroke without a row is served by the words of its name, or by none', () => {
    expect(['conga tap', 'timbales bell plain', 'güiro long', 'tumba open', 'unheard of'].map(percussionSound)).toEqual([
      'conga open',
      'bell',
      'guiro long',
      'conga low',
      null,
    ]);
  });
});
