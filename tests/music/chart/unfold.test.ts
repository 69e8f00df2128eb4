import { describe, expect, it } from 'vitest';
import type { Form } from '../../../src/music/chart/chart';
import { chartOf, formOf } from './chart-of';

const symbols = (form: Form): string => form.bars.map(({ chords }) => chords.map(({ symbol }) => symbol).join('+') || '-').join(' ');
const sides = (form: Form): string => form.bars.map(({ side }) => side).join('');
const codes = (form: Form): string[] => form.notices.map(({ code, bar }) => `${code} ${bar}`);

describe('repeats and endings (common practice, no source)', () => {
  it.each([
    ['|: C | F :|', 'C F C F'],
    ['|: C | F :| x3', 'C F C F C F'],
    ['| G |: C :| D |', 'G C C D'],
    ['|: C |1. F :|2. G || D |', 'C F C G D'],
    ['|: C |1,2. F :|3. G || D |', 'C F C F C G D'],
    ['|: C |1. F :|2. G :|3. A ||', 'C F C G C A'],
    ['|: C |1. F :|2. G |: D :|', 'C F C G D D'],
    ['|: C |1. F :|2. G :| D |', 'C F C G D'],
    ['|: C :|: F :|', 'C C F F'],
    ['|: C :| |: F :||', 'C C F F'],
    ['| C | % | F G | % |', 'C C F+G F+G'],
    ['| C | F | %% |', 'C F C F'],
    ['| C | F | %% | % |', 'C F C F F'],
    ['[A]\n| C | F |\n[B]\n| % | G |\nform: B, A', 'F G C F'],
    ['[A, x3]\n| C | F |', 'C F C F C F'],
    ['| C | rest 3 | F |', 'C - - - F'],
  ])('%s sounds as %s', (text, expected) => {
    expect(symbols(formOf(text))).toBe(expected);
  });

  it('counts how often each written bar is heard', () => {
    expect(formOf('|: C |1. F :|2. G ||').bars.map(({ writtenBar, pass }) => `${writtenBar}.${pass}`)).toEqual([
      '0.0',
      '1.0',
      '0.1',
      '2.0',
    ]);
  });
});

describe('jumps (common practice, no source)', () => {
  it.each([
    ['| C <fine> | F | G <D.C. al fine> |', 'C F G C'],
    ['| C | <segno> F | G <fine> | A <D.S. al fine> |', 'C F G A F G'],
    ['| C | <segno> F <to coda> | G <D.S. al coda> | <coda> D | E |', 'C F G F D E'],
    ['| C <to coda> | F <D.C. al coda> | <coda> G |', 'C F C G'],
    ['| <segno> | C | F <to coda> | G | <D.S. al coda> |\n[Coda]\n| A | D |', 'C F G C F A D'],
    ['|: <segno> C |1. F :|2. G <to coda> || A <D.S. al coda> | <coda> D |', 'C F C G A C G D'],
    ['|: C :| x3 F <fine> | G <D.C. al fine> |', 'C C C F G C F'],
    ['[A]\n| C | F <fine> |\n[B]\n| G | D <D.C. al fine> |\nform: A, B', 'C F G D C F'],
  ])('%s sounds as %s', (text, expected) => {
    expect(symbols(formOf(text))).toBe(expected);
  });
});

describe('the side of a bar', () => {
  it.each([[8], [12], [16]])('is the same at the start of what follows a section of %i bars', (bars) => {
    const form = formOf(`[A]\n${'| C '.repeat(bars)}|\n[B]\n| F | G |`);
    expect(form.visits.map(({ side }) => side)).toEqual([2, 2]);
    expect(form.notices).toEqual([]);
  });

  it.each([[5], [7], [9]])('is the other one after a section of %i bars', (bars) => {
    expect(formOf(`[A]\n${'| C '.repeat(bars)}|\n[B]\n| F | G |`).visits.map(({ side }) => side)).toEqual([2, 3]);
  });

  it('keeps one label through 32 bars of AABA', () => {
    const form = formOf(`clave: 3-2 son\n[A]\n${'| C '.repeat(8)}|\n[B]\n${'| F '.repeat(8)}|\nform: A, A, B, A`);
    expect(form.bars).toHaveLength(32);
    expect(form.visits.map(({ side, otherSide }) => `${side} ${otherSide}`)).toEqual(['3 false', '3 false', '3 false', '3 false']);
    expect(sides(form)).toBe('32'.repeat(16));
  });

  it('differs the two times through an odd section, and endings of different length move what follows', () => {
    expect(sides(formOf('|: C | F | G :|'))).toBe('232323');
    expect(formOf('|: C | F |1. G | G :|2. G ||\n[B]\n| C | F |').visits.at(-1)?.side).toBe(3);
  });

  it('starts again where a head says so, on the first time through, and is swapped with the direction', () => {
    const text = '[A]\n| C | F | G |\n[B, clave restart 2-3, x2]\n| F | G | C |';
    const form = formOf(text);
    expect(sides(form)).toBe('232' + '232323');
    expect(form.bars.filter(({ restart }) => restart).map(({ index }) => index)).toEqual([3]);
    const other = formOf(text, { direction: '3-2' });
    expect(sides(other)).toBe('323' + '323232');
    expect(other.clave.direction).toBe('3-2');
    expect(other.bars.map(({ cycleStep }) => cycleStep)).toEqual(form.bars.map(({ cycleStep }) => cycleStep));
  });

  it('restarted on the other label begins in the middle of the cycle that the form counts', () => {
    expect(formOf('[A]\n| C | F |\n[B, clave restart 3-2]\n| F | G |').bars.map(({ cycleStep, side }) => `${cycleStep}:${side}`)).toEqual([
      '0:2',
      '8:3',
      '8:3',
      '0:2',
    ]);
  });

  it('moves by half a side with a bar of 2/4, which is said', () => {
    const form = formOf('| C | (2/4) F | G | D |');
    expect(form.bars.map(({ tick, ticks, cycleStep, side, kind }) => [tick, ticks, cycleStep, side, kind])).toEqual([
      [0, 1920, 0, 2, 'groove'],
      [1920, 960, 8, 3, 'short'],
      [2880, 1920, 12, 3, 'groove'],
      [4800, 1920, 4, 2, 'groove'],
    ]);
    expect(codes(form)).toEqual(['odd section 0', 'half-side 1']);
  });

  it('is not moved by a pickup, which is left out unless it is asked for', () => {
    const text = '| (pickup) G7 | C | F |';
    expect(symbols(formOf(text))).toBe('C F');
    const form = formOf(text, { pickup: true });
    expect(form.bars.map(({ kind, tick, cycleStep, side }) => [kind, tick, cycleStep, side])).toEqual([
      ['pickup', 0, 8, 3],
      ['groove', 1920, 0, 2],
      ['groove', 3840, 8, 3],
    ]);
    expect(
      formOf('[A]\n| (pickup) (2/4) G7 | C | F |\nform: A, A', { pickup: true }).bars.map(({ kind, cycleStep }) => `${kind} ${cycleStep}`),
    ).toEqual(['pickup 12', 'groove 0', 'groove 8', 'groove 0', 'groove 8']);
  });
});

describe('open sections and forms that go round', () => {
  it('holds an open vamp once, twice when it is odd, or as often as asked', () => {
    expect(formOf('[A, on cue]\n| C | F |').bars).toHaveLength(2);
    const odd = formOf('[A, on cue]\n| C | F | G |');
    expect(sides(odd)).toBe('232323');
    expect(codes(odd)).toEqual(['open odd vamp 0']);
    expect(formOf('[A, on cue]\n| C | F | G |', { vampPasses: 5 }).bars).toHaveLength(15);
    expect(formOf('[A, on cue, x4]\n| C | F |').bars).toHaveLength(8);
    expect(formOf('[A]\n| C |\n[B, open]\n| F | G |', { vampPasses: 3 }).bars).toHaveLength(7);
  });

  it('holds an odd form twice when it goes round, so that the seam keeps the clave', () => {
    expect(formOf('| C | F | G |').bars).toHaveLength(3);
    expect(sides(formOf('| C | F | G |', { loops: true }))).toBe('232323');
    expect(formOf('| C | F |', { loops: true }).bars).toHaveLength(2);
    expect(formOf('| C | (2/4) F |', { loops: true }).bars).toHaveLength(8);
    expect(formOf('[A, clave restart 2-3]\n| C | F | G |', { loops: true }).bars).toHaveLength(3);
  });

  it('keeps the side after any number of passes of an even vamp', () => {
    for (let passes = 1; passes <= 12; passes++) {
      expect(formOf('[A, on cue]\n| C | F | G | F |\n[B]\n| C | F |', { vampPasses: passes }).visits.at(-1)?.side).toBe(2);
    }
  });

  it('refuses passes out of bounds', () => {
    expect(() => formOf('| C |', { vampPasses: 0 })).toThrow('1 to 64');
    expect(() => formOf('| C |', { vampPasses: 65 })).toThrow('1 to 64');
  });
});

describe('a sounding bar', () => {
  it('lists a chord that is carried over at its first tick', () => {
    const form = formOf('| C | / / G7 / | / / / / | {1 3} |');
    expect(form.bars.map(({ chords }) => chords.map(({ symbol, tick }) => `${symbol}@${tick}`).join(' '))).toEqual([
      'C@0',
      'C@1920 G7@2880',
      'G7@3840',
      'G7@5760',
    ]);
  });

  it('says who plays in it', () => {
    const form = formOf('| C | N.C. | stop | rest 2 | / / / / | C / N.C. / | stop {1} | >F | C {2&} |');
    expect(form.bars.map(({ kind, playing }) => `${kind} ${playing}`)).toEqual([
      'groove band',
      'rest rhythm',
      'rest nobody',
      'rest rhythm',
      'rest rhythm',
      'rest rhythm',
      'groove band',
      'hit band',
      'hit band',
      'hit band',
    ]);
    expect(form.bars[1]?.chords).toMatchObject([{ tick: 1920, chord: null, symbol: 'N.C.' }]);
    expect(form.bars[8]?.chords).toMatchObject([{ symbol: 'F', push: true }]);
  });

  it('has the key, style, tempo and figure of its section, else those of the header', () => {
    const form = formOf(
      'key: G\ntempo: half = 80\n[A]\n| C |\n[B, key: Em, style: bolero, tempo: quarter = 100, figure: xxx.x.x.]\n| F |\n[C]\n| G |',
    );
    expect(form.bars.map(({ key, style, tempo, figure }) => [key.tonic + key.mode, style, tempo, figure])).toEqual([
      ['Gmajor', 'salsa', 80, null],
      ['Eminor', 'bolero', 50, 'xxx.x.x. xxx.x.x.'],
      ['Gmajor', 'salsa', 80, null],
    ]);
  });

  it('has a role by its head or by its name', () => {
    expect(
      formOf('[Intro]\n| C |\n[Mambo 2]\n| C |\n[Montuno]\n| C |\n[B, role: coro]\n| C |\n[Coda]\n| C |\n[X]\n| C |').visits.map(
        ({ role }) => role,
      ),
    ).toEqual(['intro', 'mambo', 'coro', 'coro', 'coda', null]);
  });

  it('of 6/8 has 1440 ticks in a cycle of 12 steps', () => {
    const form = formOf('meter: 6/8\ntempo: dotted quarter = 120\n| Dm | G7 C | Dm / / G7 / / | Am / | (3/8) C {1 3~} |');
    expect(form.clave).toEqual({ kind: 'bembe', direction: '2-3' });
    expect(form.bars.map(({ tick, ticks, cycleStep, side }) => [tick, ticks, cycleStep, side])).toEqual([
      [0, 1440, 0, 2],
      [1440, 1440, 6, 3],
      [2880, 1440, 0, 2],
      [4320, 1440, 6, 3],
      [5760, 720, 0, 2],
    ]);
    expect(form.bars[1]?.chords.map(({ tick }) => tick)).toEqual([1440, 2160]);
    expect(form.bars[2]?.chords.map(({ tick }) => tick)).toEqual([2880, 3600]);
    expect(form.bars[4]?.hits).toEqual([
      { step: 0, held: false },
      { step: 2, held: true },
    ]);
    expect(form.bars[0]).toMatchObject({ tempo: 90, style: 'bembe' });
  });
});

describe('a notice', () => {
  it('says that a printed label disagrees with the count, whichever way the tune is started', () => {
    const text = '[A]\n| C | F | G |\n[B, clave: 2-3]\n| F | G |\n[C, clave: 3-2]\n| F | G |';
    expect(formOf(text).notices.filter(({ code }) => code === 'label disagrees')).toEqual([
      { code: 'label disagrees', bar: 3, section: 'B', detail: { label: '2-3', counted: '3-2' } },
    ]);
    expect(formOf(text, { direction: '3-2' }).notices.filter(({ code }) => code === 'label disagrees')).toEqual([
      { code: 'label disagrees', bar: 3, section: 'B', detail: { label: '3-2', counted: '2-3' } },
    ]);
  });

  it.each(['swing', 'Bossa Nova', 'merengue', 'cumbia', 'bachata', 'plena'])('says that %s is not built on this clave', (style) => {
    expect(codes(formOf(`[A]\n| C | F |\n[B, style: ${style}]\n| F | G |`))).toEqual(['outside the clave 2']);
  });

  it('says that a style belongs to another meter', () => {
    expect(chartOf('meter: 6/8\nstyle: salsa\n| C |').notices).toEqual([
      { code: 'style against meter', bar: null, section: null, detail: { style: 'salsa', meter: '6/8', usual: '4/4' } },
    ]);
    expect(chartOf('meter: 6/8\n| C |').notices).toEqual([]);
  });
});
