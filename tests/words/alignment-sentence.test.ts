import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alignment } from '../../src/music/clave/alignment';
import { readGrid } from '../../src/music/clave/read-grid';
import { alignmentSentence } from '../../src/words/alignment-sentence';

function sentence(text: string): string {
  const read = readGrid(text);
  if (!read.ok) throw new Error(text);
  return alignmentSentence(alignment(read.value, null));
}
const nothing = { name: null, twoSideSounds: [], twoSideSilent: [], threeSideSounds: [], threeSideSilent: [] };

describe('the sentence about alignment', () => {
  it('says where the two sides sound and where they stay off', () => {
    const states = { verdict: null, states: '2-3', score: 5 } as const;
    expect(alignmentSentence({ ...states, reason: { ...nothing, twoSideSounds: [2, 0], threeSideSilent: [0, 2, 4, 6] } })).toBe(
      'It sounds on 1 and 2 of the 2-side and stays off the beat on the 3-side.',
    );
    expect(
      alignmentSentence({ ...states, reason: { ...nothing, twoSideSounds: [0, 7, 5], twoSideSilent: [6], threeSideSounds: [1] } }),
    ).toBe('On the 2-side it sounds on 1 and the &s of 3 and 4 but not on 4; on the 3-side it sounds on the & of 1.');
  });

  it('is true of the standard montuno in both directions', () => {
    const text = 'On the 2-side it sounds on 2 but not on 4; on the 3-side it sounds on the & of 1 but never on the beat.';
    expect(sentence('x.xx.x.x .x.x.x.x')).toBe(text);
    expect(sentence('.x.x.x.x x.xx.x.x')).toBe(text);
  });

  it('names what is known by name, and says why nothing is stated', () => {
    expect(sentence('..x.x... x..x...x')).toBe('It is the rumba clave as played in 2-3.');
    expect(sentence('x.xxx.xx x.xxx.xx')).toBe('It is the bongo bell, which states no direction.');
    expect(sentence('x.xx.x.x x.xx.x.x')).toBe('Both of its bars are the same, so it states no direction.');
    expect(sentence('........ ........')).toBe('It has no strokes, so it states no direction.');
    expect(sentence('x..... x.....')).toBe('It is none of the 6/8 rhythms known by name, and others are not judged.');
    expect(sentence('x.xxx.xx xxx...xx')).toMatch(/^It leans to 3-2, but not clearly: /);
  });

  it('is one sentence for every rhythm', () => {
    fc.assert(
      fc.property(fc.array(fc.boolean(), { minLength: 16, maxLength: 16 }), (cells) => {
        expect(alignmentSentence(alignment(cells, null))).toMatch(/^[A-Z][^.]+\.$/);
      }),
    );
  });
});
