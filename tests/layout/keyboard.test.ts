import { describe, expect, it } from 'vitest';
import { handShapes, keyboardAround, shapeAt } from '../../src/layout/keyboard';
import { ferryScore } from './ferry-score';

const score = ferryScore();
const shapes = handShapes(score);
const at = (tick: number) => shapes[shapeAt(shapes, tick, true)];

describe('the keyboard', () => {
  it('holds every note of the figure between two white keys, blacks on the seams', () => {
    const notes = score.parts.rightHand.flatMap((stroke) => stroke.midi);
    const { keys, width } = keyboardAround(notes);
    expect(notes.every((note) => keys.some((key) => key.midi === note))).toBe(true);
    expect([keys[0]?.black, keys.at(-1)?.black]).toEqual([false, false]);
    expect(Math.max(...keys.map((key) => key.x + key.width))).toBe(width);
    // C sharp lies between C and D on any keyboard.
    const key = (midi: number) => keys.find((each) => each.midi === midi);
    expect((key(73)?.x ?? 0) + (key(73)?.width ?? 0) / 2).toBe(key(74)?.x);
  });

  it('is never narrower than two octaves', () => {
    expect(keyboardAround([60]).keys.filter((key) => !key.black).length).toBeGreaterThanOrEqual(15);
    expect(keyboardAround([]).keys.length).toBeGreaterThan(24);
  });

  it('leaves out the keys between hands that lie far apart, and keeps every note', () => {
    const notes = [33, 40, 45, 76, 79, 88];
    const { keys, width, gap } = keyboardAround(notes);
    expect(notes.every((note) => keys.some((key) => key.midi === note))).toBe(true);
    expect(keys.some((key) => key.midi === 60)).toBe(false);
    expect(gap && keys.every((key) => key.x + key.width <= gap.x + 14 || key.x >= gap.x + gap.width - 14)).toBe(true);
    expect(Math.max(...keys.map((key) => key.x + key.width))).toBe(width);
    expect(keyboardAround([60, 64, 72, 76]).gap).toBeNull();
  });
});

describe('the hand', () => {
  it('is told what it holds now, in words', () => {
    expect(at(1680)).toMatchObject({ right: [73, 85], left: [61], words: 'C♯ octave, third of A7', leftWords: 'C♯' });
    expect(at(480)?.words).toBe('G and B');
  });

  it('keeps inner notes that both chords share, and says so', () => {
    expect(at(1920 + 240)).toMatchObject({ stays: [79, 83], moves: [], motion: 'both stay' });
  });

  it('sees the octave fall a half step from Em7 to A7', () => {
    expect(at(1680)).toMatchObject({
      stays: [],
      moves: [
        { from: 74, to: 73 },
        { from: 86, to: 85 },
      ],
      motion: 'a half step down',
    });
  });

  it('compares over the seam of a closed form', () => {
    expect(shapeAt(shapes, -1, true)).toBe(shapes.length - 1);
    expect(shapeAt(shapes, -1, false)).toBe(-1);
    expect(shapes[0]?.motion).toBe('stays');
  });
});
