// long because it is one table of published and computed rows, each with its source and status
import { describe, expect, it } from 'vitest';
import { alignment } from '../../src/music/clave/alignment';
import { type ArrangeOptions, arrange, type Score } from '../../src/music/score';
import { styleOf } from '../../src/music/styles/styles';
import { secondsOf } from '../../src/performance/tempo';
import type { ClaveKind, Direction } from '../../src/vocabulary';
import { chordNamed } from './harmony-of-score';
import { chartOf, RECIPES } from './progressions';

/*
 * Facts of the trade that are a grid, a set, a number or a property, checked on what `arrange` gives. Every value is typed here from its
 * source, apart from the application's tables. Status: published (P), common practice without a source (C), from memory (M), computed on
 * the grids printed here (=). Sources: Santos, “Patrones de songo y salsa”, 2009; Toussaint, Bridges 2002, Percussive Notes 2011; Drum
 * Dojo, “Rumba clave”; timbales pattern sheet (“Basic Patterns”); Manuel, Latin American Music Review 6(2), 1985; Richards, notes to
 * “Montuno for Monty”, 2005; Stewart 2016; Keyboard Magazine, “Playing in Clave”, 2017; Martignon, Salsa Piano, 2003; salsa-merengue.co.uk;
 * huzzaz lesson notes on montunos over the circle of fifths; Wikipedia, “Guajeo”, “Tumbao”; two dance sites for the tempo of salsa.
 */
const LOOP = 'key: C\n| Dm7 | G7 | C6 | A7 |';
const scoreOf = (text: string, options: ArrangeOptions = {}): Score => arrange(chartOf(text), options);
const stepsIn = (strokes: readonly { readonly tick: number; readonly firstPassOnly?: boolean }[], fromBar = 0): number[] => [
  ...new Set(
    strokes.flatMap(({ tick, firstPassOnly }) =>
      tick >= fromBar * 1920 && tick < (fromBar + 2) * 1920 && !firstPassOnly ? [tick / 240 - 8 * fromBar] : [],
    ),
  ),
];
const grid = (steps: readonly number[]): string =>
  Array.from({ length: 16 }, (_, step) => (step === 8 ? ' ' : '') + (steps.includes(step) ? 'x' : '.')).join('');
const rightHand = (options: ArrangeOptions, fromBar = 0): string => grid(stepsIn(scoreOf(LOOP, options).parts.rightHand, fromBar));
const strokesOf = (text: string): boolean[] => [...text.replace(' ', '')].map((sign) => sign === 'x');
const turned = (text: string): string => text.split(' ').reverse().join(' ');

describe('clave', () => {
  it.each([
    ['son', '3-2', 'x..x..x. ..x.x...', 'P: Santos 2009; Toussaint 2011'],
    ['son', '2-3', '..x.x... x..x..x.', 'P: Santos 2009'],
    ['rumba', '3-2', 'x..x...x ..x.x...', 'P: Santos 2009; Drum Dojo'],
    ['rumba', '2-3', '..x.x... x..x...x', 'P: Santos 2009'],
  ] satisfies readonly (readonly [ClaveKind, Direction, string, string])[])('%s %s is %s (%s)', (kind, direction, expected, _source) => {
    const { clave } = scoreOf(LOOP, { kind, direction }).parts;
    expect(grid(stepsIn(clave))).toBe(expected);
    // 2-3 of a loop is 3-2 turned by 8 steps (=).
    expect(grid(stepsIn(scoreOf(LOOP, { kind, direction: direction === '2-3' ? '3-2' : '2-3' }).parts.clave))).toBe(turned(expected));
  });

  it('bombo and ponche are 11 and 14 in 2-3, 15 with rumba (P: r/AfroCuban 2021; Wikipedia, “Tumbao”)', () => {
    const named = (kind: ClaveKind): (number | null)[] =>
      (['second', 'third'] as const).map((name) => {
        const { rightHand: strokes } = scoreOf('key: C\nfigure: iiiiiiii iiiiiiii\n| C6 | % |', { kind, direction: '2-3' }).parts;
        return strokes.find(({ reason }) => reason.claveStroke === name)?.tick ?? null;
      });
    expect(named('son')).toEqual([11 * 240, 14 * 240]);
    expect(named('rumba')).toEqual([11 * 240, 15 * 240]);
  });

  it('6/8: the bell strikes 0 2 4 5 7 9 11 from the 3-side, and the rumba-type clave 0 2 5 7 9 is part of it (P: timbales pattern sheet; Drum Dojo)', () => {
    const { clave, rightHand: chords } = scoreOf('key: Dm\nmeter: 6/8\nclave: 3-2 bembe\n| Dm7 | G7 |', { seed: 3 }).parts;
    const bell = clave.map(({ tick }) => tick / 240);
    expect(bell).toEqual([0, 2, 4, 5, 7, 9, 11]);
    expect([0, 2, 5, 7, 9].every((step) => bell.includes(step))).toBe(true);
    expect([...new Set(chords.map(({ tick }) => tick / 240))]).toEqual([0, 2, 5, 7, 9]);
  });

  it.each([
    ['son', '3-2', [3, 3, 4, 2, 4], [0, 1, 2, 2, 0, 3, 2, 0]],
    ['rumba', '3-2', [3, 4, 3, 2, 4], [0, 1, 2, 2, 1, 1, 3, 0]],
  ] as const)('%s has gaps and interval vector as Toussaint’s method gives (=)', (kind, direction, gaps, vector) => {
    const steps = stepsIn(scoreOf(LOOP, { kind, direction }).parts.clave);
    expect(steps.map((step, index) => ((steps[index + 1] ?? 16) - step) as number)).toEqual(gaps);
    const counted = Array.from({ length: 8 }, () => 0);
    for (const [index, one] of steps.entries())
      for (const other of steps.slice(index + 1)) {
        const apart = Math.min(other - one, 16 - other + one) - 1;
        counted[apart] = (counted[apart] ?? 0) + 1;
      }
    expect(counted).toEqual(vector);
    expect(vector.reduce<number>((sum, pairs) => sum + pairs, 0)).toBe(10);
  });

  it('son is the nearest of six timelines to all the others: swap distances sum to 6 8 10 10 10 12 (claim P: Toussaint 2002; values =)', () => {
    const rows: Readonly<Record<string, string>> = {
      son: grid(stepsIn(scoreOf(LOOP, { kind: 'son', direction: '3-2' }).parts.clave)),
      bossa: 'x..x..x. ..x..x..',
      rumba: grid(stepsIn(scoreOf(LOOP, { kind: 'rumba', direction: '3-2' }).parts.clave)),
      shiko: 'x...x.x. ..x.x...',
      soukous: 'x..x..x. ..xx....',
      gahu: 'x..x..x. ..x...x.',
    };
    const at = (text: string): number[] => strokesOf(text).flatMap((on, step) => (on ? [step] : []));
    const swaps = (one: string, other: string): number =>
      at(one).reduce((sum, step, index) => sum + Math.abs(step - (at(other)[index] ?? 0)), 0);
    const sums = Object.fromEntries(
      Object.entries(rows).map(([name, row]) => [name, Object.values(rows).reduce((sum, other) => sum + swaps(row, other), 0)]),
    );
    expect(sums).toEqual({ son: 6, bossa: 8, rumba: 10, shiko: 10, soukous: 10, gahu: 12 });
  });
});

describe('sides', () => {
  const form = (...bars: readonly number[]): string =>
    `key: C\n${bars.map((count, index) => `[S${index}]\n| ${Array.from({ length: count }, (_, bar) => (bar % 2 ? 'G7' : 'C')).join(' | ')} |`).join('\n')}`;
  it('the side of sounding bar n is (first side + n) mod 2 (C)', () => {
    for (const direction of ['2-3', '3-2'] as const) {
      const { bars } = scoreOf(form(8, 7, 5, 4), { direction, closed: false });
      for (const bar of bars) expect(bar.side).toBe((bar.index % 2 === 0) === (direction === '2-3') ? 2 : 3);
    }
  });
  it('an odd section turns the label of what follows, an AABA of eights keeps it (C)', () => {
    const starts = (...counts: number[]): number[] =>
      scoreOf(form(...counts), { direction: '2-3', closed: false }).bars.flatMap(({ section, side }, index, all) =>
        all[index - 1]?.section === section ? [] : [side],
      );
    expect(starts(7, 8)).toEqual([2, 3]);
    expect(starts(8, 8, 8, 8)).toEqual([2, 2, 2, 2]);
  });
  it('an open vamp of even length keeps the side however often it goes round (=)', () => {
    for (const vampPasses of [1, 2, 3, 5, 8]) {
      const { bars } = scoreOf('key: C\n[Coro, on cue]\n| C | F | G7 | F |\n[B]\n| C | G7 |', { vampPasses, direction: '2-3' });
      expect(bars.find(({ section }) => section === 'B')?.side).toBe(2);
    }
  });
});

describe('bass', () => {
  const { bass } = scoreOf(LOOP, { style: 'salsa' }).parts;
  it('strikes steps 3 and 6 of each bar, the same in both bars (P: Manuel 1985; Wikipedia, “Tumbao”; Stewart 2016)', () => {
    for (const direction of ['2-3', '3-2'] as const)
      expect(grid(stepsIn(scoreOf(LOOP, { style: 'salsa', direction }).parts.bass, 2))).toBe('...x..x. ...x..x.');
  });
  it('sounds beat 1 in the first bar only, the first time only (P: Richards 2005)', () => {
    expect(bass.filter(({ tick }) => tick % 1920 === 0).map(({ tick, firstPassOnly }) => [tick, firstPassOnly])).toEqual([[0, true]]);
  });
  it('has the root of the next bar on step 6 (P: Manuel 1985)', () => {
    const roots = bass.filter(({ tick }) => tick % 1920 === 6 * 240).map(({ midi, chord }) => [(midi[0] ?? 0) % 12, chord]);
    expect(roots).toEqual([
      [7, 'G7'],
      [0, 'C6'],
      [9, 'A7'],
      [2, 'Dm7'],
    ]);
  });
  it('lies within 28 to 55 (M: strings of the instrument)', () => {
    const notes = RECIPES.flatMap(({ key, bars }) => scoreOf(`key: ${key}\n${bars}`).parts.bass.flatMap(({ midi }) => midi));
    expect([Math.min(...notes) >= 28, Math.max(...notes) <= 55]).toEqual([true, true]);
  });
  it('is half and two quarters in bolero, guajira and cha-cha-chá (M)', () => {
    for (const style of ['bolero', 'guajira', 'cha-cha-cha'])
      expect(grid(stepsIn(scoreOf(LOOP, { style }).parts.bass))).toBe('x...x.x. x...x.x.');
  });
});

/** Two-bar patterns, typed in both directions from their sources. */
const PATTERNS = [
  ['A1+B1', 'x.xx.x.x .x.x.x.x', '.x.x.x.x x.xx.x.x', 'C; principle P: Keyboard Magazine 2017'],
  ['A1+B2', 'x.xx.x.x .x.xx.x.', '.x.xx.x. x.xx.x.x', 'P: salsa-merengue.co.uk'],
  ['A1+B5', 'x.xx.x.x x.xx.xx.', 'x.xx.xx. x.xx.x.x', 'P: Martignon 2003, partly assumed'],
  ['A4+B1', 'x.x.xx.x .x.x.x.x', '.x.x.x.x x.x.xx.x', 'M'],
  ['A3+B4', 'x.xx.xxx .x.x.xxx', '.x.x.xxx x.xx.xxx', 'M'],
  ['A5+B3', '..x.x..x x..x..x.', 'x..x..x. ..x.x..x', 'M'],
  ['A5+B6', '..x.x..x ...x..x.', '...x..x. ..x.x..x', 'M'],
  ['A6+B7', 'x......x ...x...x', '...x...x x......x', 'P (accents): Keyboard Magazine 2017; Martignon 2003; grid ='],
] as const;

describe('montuno', () => {
  it.each(PATTERNS)('%s is %s in 2-3 and %s in 3-2 (%s)', (cells, twoThree, threeTwo, _source) => {
    const [two, three] = cells.split('+') as ['A1', 'B1'];
    const options = { cells: { two, three }, level: 2 } as const;
    expect(rightHand({ ...options, direction: '2-3' })).toBe(twoThree);
    expect(rightHand({ ...options, direction: '3-2' })).toBe(threeTwo);
    expect(alignment(strokesOf(twoThree), { kind: 'son', direction: '2-3' }).verdict).not.toBe('crossed');
  });

  it('the arpeggiated start xxxx.x.x lifts the first 2-side of a section, once (idea P: Keyboard Magazine 2017; grid M)', () => {
    const text = 'key: C\n[A]\n| Dm7 | G7 | C6 | A7 |\n[B]\n| Dm7 | G7 | C6 | A7 |';
    const { rightHand: strokes } = scoreOf(text, { level: 4, seed: 3, direction: '2-3' }).parts;
    expect([0, 2, 4, 6].map((bar) => grid(stepsIn(strokes, bar)).split(' ')[0])).toEqual(['xxxx.x.x', 'x.xx.x.x', 'xxxx.x.x', 'x.xx.x.x']);
  });

  it('the one-bar pattern is x.xx.x.x in both bars and states no side (P: Keyboard Magazine 2017; grid M)', () => {
    for (const direction of ['2-3', '3-2'] as const) {
      const options = { devices: ['one-bar-neutral'], direction } as const;
      expect(rightHand(options)).toBe('x.xx.x.x x.xx.x.x');
      expect(scoreOf(LOOP, options).alignment.verdict).toBe('neutral');
    }
  });

  const standard = scoreOf(LOOP, { level: 2, direction: '2-3' }).parts.rightHand;
  it('standard form: 9 strokes, octaves on 0 3 7 11 15, inner notes on 2 5 9 13 (C)', () => {
    const role = (wanted: string): number[] => stepsIn(standard.filter((stroke) => stroke.role === wanted));
    expect(stepsIn(standard)).toHaveLength(9);
    expect(role('octave')).toEqual([0, 3, 7, 11, 15]);
    expect(role('inner')).toEqual([2, 5, 9, 13]);
  });
  it('its 2-side strikes 1 and its 3-side no beat at all (P: Keyboard Magazine 2017 for the principle)', () => {
    expect(stepsIn(standard)).toContain(0);
    expect([8, 10, 12, 14].filter((step) => stepsIn(standard).includes(step))).toEqual([]);
    expect(stepsIn(scoreOf(LOOP, { level: 2, direction: '3-2' }).parts.rightHand)).toContain(8);
  });
  it('accents lie on 0 and 7 of the 2-side (P: Keyboard Magazine 2017)', () => {
    const twoSide = standard.filter(({ tick, role }) => tick < 1920 && role === 'octave');
    const loudest = Math.max(...twoSide.map(({ velocity }) => velocity));
    expect(twoSide.filter(({ velocity }) => velocity === loudest).map(({ tick }) => tick / 240)).toEqual([0, 7]);
  });
  it('takes the chord a step ahead on steps 3 and 7 where it changes there, else its own (C)', () => {
    for (const bars of ['| Dm7 | G7 | C6 | A7 |', '| Dm7 G7 | C6 F6 | Bm7b5 E7 | Am6 A7 |']) {
      const score = scoreOf(`key: C\n${bars}`, { level: 2, direction: '2-3' });
      const written = score.bars.flatMap(({ chords }) => chords);
      for (const { tick, chord } of score.parts.rightHand) {
        const ahead = [3, 7].includes((tick / 240) % 8) ? 240 : 0;
        const at = (tick + ahead) % score.toTick;
        expect(chord).toBe(written.findLast((candidate) => candidate.tick <= at)?.symbol);
      }
    }
  });
  it('does not strike where only the bass has changed: steps 6 and 14 are empty (=)', () => {
    expect([6, 14].filter((step) => stepsIn(standard).includes(step))).toEqual([]);
  });
  it('inner notes lie inside the octave (C)', () => {
    let low = standard[0]?.midi[0] ?? 0;
    for (const { role, midi } of standard) {
      if (role === 'octave') low = midi[0] ?? 0;
      else expect(midi.every((note) => note > low - 3 && note < low + 14)).toBe(true);
    }
  });
  it('the left hand doubles an octave below, or two where it is wide (P: Martignon 2003 for two)', () => {
    for (const [hands, below] of [
      ['double', 12],
      ['wide', 24],
    ] as const) {
      const { rightHand: right, leftHand: left } = scoreOf('key: G\n| Am7 | D7 | G6 | E7 |', { hands }).parts;
      expect(left.map(({ tick, midi }) => [tick, midi[0]])).toEqual(right.map(({ tick, midi }) => [tick, (midi[0] ?? 0) - below]));
    }
  });
  it('ii–V–I: octaves on 7 3 7, inner notes on 3 and 5, 7 and 9, 3 and 5 (P: huzzaz lesson notes)', () => {
    const { rightHand: strokes } = scoreOf('key: C\n| Dm7 | G7 | Cmaj7 | % |', { colour: 'jazz', level: 2 }).parts;
    const degrees = (chord: string, role: string) => strokes.find((stroke) => stroke.chord === chord && stroke.role === role)?.degrees;
    const offered = [0, 1, 2, 3].map(
      (seed) => scoreOf('key: C\n| Dm7 | G7 | Cmaj7 | % |', { colour: 'jazz', level: 2, seed }).parts.rightHand,
    );
    const sevenths = offered.map((figure) =>
      ['Dm7', 'G7', 'Cmaj7'].map((chord) => figure.find((s) => s.chord === chord && s.role === 'octave')?.degrees[0]).join(' '),
    );
    expect(sevenths).toContain('b7 3 7');
    expect(degrees('Dm7', 'inner')?.length).toBe(2);
    const figure = offered[sevenths.indexOf('b7 3 7')] ?? [];
    const inner = (chord: string) => [...(figure.find((s) => s.chord === chord && s.role === 'inner')?.degrees ?? [])].sort();
    expect(inner('Dm7')).toEqual(['5', 'b3']);
    expect(inner('G7')).toEqual(['9', 'b7']);
    expect(inner('Cmaj7')).toEqual(['3', '5']);
  });
  it.each([
    ['ii–V–I', 'C', '| Dm7 | G7 | Cmaj7 | % |'],
    ['iiø–V–i', 'Cm', '| Dm7b5 | G7b9 | Cm | % |'],
    ['I–IV–V–IV', 'C', '| C F | G F | C F | G F |'],
    ['I–vi–ii–V', 'C', '| Cmaj7 Am7 | Dm7 G7 |'],
    ['held minor, written', 'Cm', '| Cm Cm(maj7) | Cm7 Cm6 |'],
    ['sus to dominant', 'C', '| G9sus4 | G9 | C6 | % |'],
    ['passing diminished', 'C', '| C6 C#dim7 | Dm7 G7 | C6 C#dim7 | Dm7 G7 |'],
    ['altered V in minor', 'Cm', '| G7alt | Cm6 | G7alt | Cm6 |'],
  ])('%s: the octave moves by two half steps or less, but for the seam (=)', (_, key, bars) => {
    const { rightHand: strokes } = scoreOf(`key: ${key}\n${bars}`, { level: 2, closed: false, colour: 'jazz' }).parts;
    const line = strokes.filter(({ role }) => role === 'octave').map(({ midi }) => midi[0] ?? 0);
    const moves = line.slice(1).map((note, index) => Math.abs(note - (line[index] ?? 0)));
    expect(Math.max(...moves)).toBeLessThanOrEqual(2);
  });
  it('no natural 11 over a major third that is not sus (C)', () => {
    for (const { key, bars } of RECIPES)
      for (const colour of ['plain', 'jazz'] as const)
        for (const { role, midi, chord } of scoreOf(`key: ${key}\n${bars}`, { colour }).parts.rightHand) {
          const { rootPc, tones, family } = chordNamed(chord);
          if (role !== 'approach' && family !== 'sus' && tones.some(({ semitones }) => semitones === 4))
            expect(midi.some((note) => (note - rootPc + 120) % 12 === 5)).toBe(false);
        }
  });
});

describe('direction', () => {
  const STANDARD = 'x.xx.x.x .x.x.x.x';
  const shared = (one: string, other: string): number => strokesOf(one).filter((on, step) => on && strokesOf(other)[step]).length;
  it('meeting the clave cannot decide: the standard figure meets son 2-3 and son 3-2 twice each (=)', () => {
    expect([shared(STANDARD, '..x.x... x..x..x.'), shared(STANDARD, 'x..x..x. ..x.x...')]).toEqual([2, 2]);
  });
  it('the score changes its sign with the sides, is clear for the standard figure and 0 for equal bars (property =; score fitted to expert labels)', () => {
    const score = (text: string): number => alignment(strokesOf(text), null).score;
    for (const [, twoThree] of PATTERNS) expect(score(turned(twoThree))).toBeCloseTo(-score(twoThree), 9);
    expect(score(STANDARD)).toBeGreaterThan(2);
    for (const neutral of ['x.xx.x.x x.xx.x.x', '.x.x.x.x .x.x.x.x', 'x.xxx.xx x.xxx.xx', '...x..x. ...x..x.'])
      expect(score(neutral)).toBe(0);
  });
});

describe('tempo', () => {
  it('a step lasts 15 000 / half notes a minute: 166.7 ms at 90; quarter = 2 × half (=)', () => {
    expect(secondsOf(240, scoreOf('key: C\ntempo: half = 90\n| C | G7 |').tempo) * 1000).toBeCloseTo(166.667, 2);
    expect(scoreOf('key: C\ntempo: quarter = 184\n| C | G7 |').tempo).toBe(92);
  });
  it.each([
    ['salsa', 80, 110, 'P, weak: two dance sites'],
    ['bolero', 40, 55, 'P: salsa-merengue.co.uk glossary'],
    ['cha-cha-cha', 50, 70, 'P: salsa-merengue.co.uk glossary'],
    ['son montuno', 70, 95, 'M'],
    ['mambo', 80, 120, 'M'],
    ['songo', 85, 110, 'M'],
    ['latin jazz', 70, 130, 'M'],
    ['guajira', 45, 65, 'M'],
  ] as const)('%s goes at %i to %i half notes, and its usual tempo lies between (%s)', (name, from, to, _source) => {
    const { tempo } = styleOf(name);
    expect([tempo.from, tempo.to]).toEqual([from, to]);
    expect(tempo.usual >= from && tempo.usual <= to).toBe(true);
  });
});
