import { describe, expect, it } from 'vitest';
import { type ArrangeOptions, arrange } from '../../src/music/score';
import { chartOf } from './progressions';

/** What pianists complained of when they read figures one by one; each line holds what was done about it (common practice, no source). */
const partsOf = (text: string, options: ArrangeOptions = {}) => arrange(chartOf(text), options).parts;

describe('what a pianist reading the figures would call wrong', () => {
  it.each(['Bb7#11', 'Ebmaj7#11', 'F7(#11)'])('%s sounds its ♯11, in both colours', (symbol) => {
    for (const colour of ['plain', 'jazz'] as const) {
      const { rightHand } = partsOf(`key: F\n| Fmaj7 | ${symbol} | Fmaj7 | C7 |`, { colour });
      expect(rightHand.some(({ chord, degrees }) => chord === symbol && degrees.includes('#11'))).toBe(true);
    }
  });

  it.each([
    ['Dm7', 'G9', 'Dm'],
    ['Dm7', 'G7', 'C'],
  ])('a vamp on %s and %s goes from 7 to 3 and back by step', (minor, dominant, key) => {
    const { rightHand } = partsOf(`key: ${key}\n| ${minor} | ${dominant} | ${minor} | ${dominant} |`);
    const octaves = rightHand.filter(({ role }) => role === 'octave');
    expect(new Set(octaves.map(({ chord, degrees }) => `${chord} ${degrees[0]}`))).toEqual(new Set([`${minor} b7`, `${dominant} 3`]));
  });

  it('no major seventh passes over a ii that is written with its minor seventh; over the triad the line is there', () => {
    const line = (symbol: string) =>
      partsOf(`key: C\n| ${symbol} | % | G7 | C6 |`, { level: 3 })
        .rightHand.filter(({ role, chord }) => role === 'octave' && chord === symbol)
        .map(({ degrees }) => degrees[0]);
    expect(line('Dm7')).not.toContain('7');
    expect(line('Dm')).toContain('7');
  });

  it('a left hand of its own takes the root where a new chord begins within the bar', () => {
    const { leftHand } = partsOf('key: C\nstyle: bolero\n| Dm7 G7 | C6 | Em7 A7 | Dm7 G7 |');
    expect(leftHand.find(({ tick }) => tick === 960)?.degrees).toEqual(['1']);
  });

  it('two octaves down the left hand plays octaves, never a whole chord', () => {
    const { leftHand } = partsOf('key: C\n| C6 | G7 | G7 | C6 |', { hands: 'wide', cells: { two: 'A5', three: 'B3' } });
    expect(new Set(leftHand.flatMap(({ midi }) => midi.map((note) => note - (midi[0] ?? 0))))).toEqual(new Set([0, 12]));
  });

  it('an octave up stays on the part of the keyboard that sounds, in every key and hand', () => {
    for (let transpose = 0; transpose < 12; transpose++)
      for (const hands of ['double', 'wide', 'tenths'] as const) {
        const { rightHand } = partsOf('key: C\n| Cm | Fm | G7 | Cm |', { devices: ['octave-up'], hands, transpose });
        expect(Math.max(...rightHand.flatMap(({ midi }) => midi))).toBeLessThanOrEqual(96);
      }
  });

  it('tenths and contrary motion lead their own approaches home and keep tensions out of the left hand', () => {
    for (const hands of ['tenths', 'contrary'] as const) {
      const { leftHand } = partsOf('key: Dm\n| Dm6 | E7#9 | A7b9 | Dm6 |', { hands, level: 4 });
      leftHand.forEach(({ role, midi, degrees }, index) => {
        const next = leftHand[(index + 1) % leftHand.length];
        if (role === 'approach') expect([1, 2]).toContain(Math.abs((next?.midi[0] ?? 0) - (midi[0] ?? 0)));
        else expect(degrees.filter((degree) => ['b9', '9', '#9', '11', '#11', 'b13', '13'].includes(degree))).toEqual([]);
      });
    }
  });

  it('a half step below the next root is spelled as rising', () => {
    const { bass } = partsOf('key: Am\nstyle: cha-cha-cha\n| Am6 | Dm6 | E7 | Am6 |', { transpose: 0 });
    expect(bass.flatMap(({ role, names }) => (role === 'approach' ? names : [])).filter((name) => /^[A-G]b/.test(name))).toEqual([]);
  });

  it('octaves only turns arpeggios into octaves too', () => {
    const { rightHand } = partsOf('key: C\nstyle: guajira\n| C | F | G7 | C |', { devices: ['octaves-only'] });
    expect(new Set(rightHand.map(({ role, midi }) => `${role} ${(midi[1] ?? 0) - (midi[0] ?? 0)}`))).toEqual(new Set(['octave 12']));
  });
});

describe('6/8', () => {
  const text = (figure: string, clave = '3-2') => `key: Dm\nmeter: 6/8\nclave: ${clave} bembe\nfigure: ${figure}\n| Dm7 | G7 | Dm7 | A7 |`;
  const rhythm = (strokes: readonly { readonly tick: number }[]): string => {
    const steps = new Set(strokes.map(({ tick }) => tick / 240));
    return Array.from({ length: 12 }, (_, step) => (step === 6 ? ' ' : '') + (steps.has(step) ? 'x' : '.')).join('');
  };
  it('an own figure is carried stroke for stroke, in both directions, in twelve keys', () => {
    for (let transpose = 0; transpose < 12; transpose++) {
      expect(rhythm(partsOf(text('x.xx.x .x.x.x'), { transpose }).rightHand)).toBe('x.xx.x .x.x.x');
      expect(rhythm(partsOf(text('x.xx.x .x.x.x'), { transpose, direction: '2-3' }).rightHand)).toBe('.x.x.x x.xx.x');
    }
  });
  it('a stroke with the last bell stroke takes the new chord, and the bass strikes the two dotted beats', () => {
    const { rightHand, bass } = partsOf(text('x.xx.x .x.x.x'));
    expect(rightHand.find(({ tick }) => tick === 5 * 240)).toMatchObject({ chord: 'G7', leadTicks: 240 });
    expect(rightHand.find(({ tick }) => tick === 11 * 240)).toMatchObject({ chord: 'Dm7', leadTicks: 240 });
    expect(bass.slice(0, 4).map(({ tick, role }) => `${tick / 240} ${role}`)).toEqual(['0 root', '3 fifth', '6 root', '9 fifth']);
  });
  it('bell and low drum sound by style and are known by name (timbales pattern sheet)', () => {
    const { percussion } = partsOf(text('x.x.xx .x.x.x'));
    expect(Object.keys(percussion)).toEqual(['bell', 'timbales']);
    expect(arrange(chartOf(text('x.x.xx .x.x.x'))).alignment.verdict).toBe('aligned');
    expect(arrange(chartOf(text('.x.x.x x.x.xx'))).alignment.verdict).toBe('crossed');
  });
});
