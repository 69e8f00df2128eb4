import { describe, expect, it } from 'vitest';
import { inBar, parts, stepsIn, VERSE_CORO } from './sounding';

describe('the abanico', () => {
  // Timbales pattern sheet: into a 3-2 section `....R.r.` fills the 2-side, into a 2-3 section `...R..r.` the 3-side; then the next 1.
  it.each([
    ['2-3', ['3 rimshot', '6 roll']],
    ['3-2', ['4 rimshot', '6 roll']],
  ] as const)('leads into a %s coro with %j and an accent on its first beat', (direction, roll) => {
    const { bars, percussion } = parts(VERSE_CORO(direction));
    expect(inBar(percussion.timbales, bars[3])).toEqual(roll);
    expect(inBar(percussion.timbales, bars[4])[0]).toBe('0 accent');
    expect(bars[4]?.side).toBe(direction === '2-3' ? 2 : 3);
    expect(inBar(percussion.cascara, bars[3])).toEqual([]);
    expect(inBar(percussion.conga, bars[3]).length).toBe(8);
  });

  it('begins on a clave stroke of the bar it fills also when seven bars lead into the coro', () => {
    const { bars, percussion } = parts('clave: 2-3 son\n[A, role: verse]\n| C | C | C | C | C | C | C |\n[Coro, role: coro]\n| C | G |');
    expect(bars[6]?.side).toBe(2);
    expect(inBar(percussion.timbales, bars[6])).toEqual(['4 rimshot', '6 roll']);
  });

  it('comes once, not on every pass of the coro, and again into the mambo', () => {
    const { bars, percussion } = parts(
      'clave: 2-3 son\n[A, role: verse]\n| C | G |\n[Coro, role: coro, x3]\n| C | G |\n[Moña, role: mambo]\n| C | G |\n[Out, role: verse]\n| C | G |',
    );
    const filled = bars.filter((bar) => inBar(percussion.timbales, bar).some((text) => text.endsWith('roll')));
    expect(filled.map(({ index }) => index)).toEqual([1, 7]);
  });

  it.each([
    ['a stop', '| stop |'],
    ['a bar with hits', '| G {1 2&} |'],
    ['a half bar', '| (2/4) G |'],
  ])('does not fill %s', (_, last) => {
    const { percussion } = parts(VERSE_CORO('2-3', last));
    expect((percussion.timbales ?? []).filter(({ stroke }) => stroke === 'roll' || stroke === 'rimshot')).toEqual([]);
  });

  it('leaves out its accent where the section begins early, with hits or in silence', () => {
    for (const first of ['>C', 'C {2}', 'stop']) {
      const { bars, percussion } = parts(`clave: 2-3 son\n[A, role: verse]\n| C | G |\n[Coro, role: coro]\n| ${first} | G |`);
      expect(inBar(percussion.timbales, bars[1])).toContain('6 roll');
      expect(stepsIn(percussion.timbales, bars[2]).split(' '), first).not.toContain('0');
    }
  });

  it('stays away from styles without timbales', () => {
    const { percussion } = parts(`style: bolero\n${VERSE_CORO('2-3')}`);
    expect(percussion.timbales).toBeUndefined();
  });
});
