import { describe, expect, it } from 'vitest';
import type { WrittenBar } from '../../../src/music/chart/chart';
import { writeChart } from '../../../src/music/chart/write';
import { chartOf, formOf } from './chart-of';

// The example by which the chart language is defined; every line of it is checked below. Expected values typed by hand.
const EXAMPLE = `title: Last Ferry
key: D
clave: 2-3 son
tempo: half = 92
style: salsa
; a line, or the rest of one, after a semicolon is a comment and survives editing

[A]
| Em7 | A7 | D6 | B7b9 |
| Em7 | A7b9 | D6/9 | % ||
[B, style: salsa, role: verse]
|: Gm7 C7 | Fmaj7 / / Dm7 |1. Em7b5 | A7 :|2. Gm7 | A7alt {1 2& 4&~} ||
[Break]
| stop |
[Coro, role: coro, on cue]
| D6 G | A7 G |

form: A, A, B, A, Break, Coro
`;

const chart = chartOf(EXAMPLE);
const section = (name: string) => chart.sections.find((one) => one.name === name);
const chordsOf = (bar: WrittenBar | undefined): string =>
  bar?.content.kind === 'chords' ? bar.content.chords.map(({ symbol, tick }) => `${symbol}@${tick}`).join(' ') : `${bar?.content.kind}`;

describe('the example chart', () => {
  it('has the header that was typed, and defaults for the rest', () => {
    expect(chart).toMatchObject({
      title: 'Last Ferry',
      key: { tonic: 'D', mode: 'major' },
      clave: { kind: 'son', direction: '2-3' },
      tempo: 92,
      style: 'salsa',
      meter: '4/4',
      changes: 'on the beat',
      figure: null,
      notices: [],
    });
    expect(chart.headers.map(({ name, line }) => `${name} ${line}`)).toEqual([
      'title 1',
      'key 2',
      'clave 3',
      'tempo 4',
      'style 5',
      'form 18',
    ]);
  });

  it('keeps the comment on its line', () => {
    expect(chart.comments).toEqual([
      { line: 6, text: ' a line, or the rest of one, after a semicolon is a comment and survives editing', wholeLine: true },
    ]);
  });

  it('has four sections with their attributes', () => {
    expect(chart.sections.map(({ name, line, bars }) => `${name} line ${line}: ${bars.length} bars`)).toEqual([
      'A line 8: 8 bars',
      'B line 11: 6 bars',
      'Break line 13: 1 bars',
      'Coro line 15: 2 bars',
    ]);
    expect(section('B')).toMatchObject({ style: 'salsa', role: 'verse', times: 1, onCue: false, restart: null, expects: null, key: null });
    expect(section('Coro')).toMatchObject({ role: 'coro', onCue: true });
  });

  it('has one chord a bar in A, and % for its last bar, which a double bar closes', () => {
    expect(section('A')?.bars.map(chordsOf)).toEqual(['Em7@0', 'A7@0', 'D6@0', 'B7b9@0', 'Em7@0', 'A7b9@0', 'D6/9@0', 'repeat']);
    expect(section('A')?.bars.map(({ doubleBar }) => doubleBar)).toEqual([false, false, false, false, false, false, false, true]);
    expect(section('A')?.bars[1]).toMatchObject({ line: 9, column: 9, ticks: 1920 });
  });

  it('has two chords, slashes, endings and hits in B', () => {
    const bars = section('B')?.bars ?? [];
    expect(bars.map(chordsOf)).toEqual(['Gm7@0 C7@960', 'Fmaj7@0 Dm7@1440', 'Em7b5@0', 'A7@0', 'Gm7@0', 'A7alt@0']);
    expect(bars.map(({ repeatStart }) => repeatStart)).toEqual([true, false, false, false, false, false]);
    expect(bars.map(({ repeatEnd }) => repeatEnd)).toEqual([null, null, null, 2, null, null]);
    expect(bars.map(({ ending }) => ending)).toEqual([null, null, [1], null, [2], null]);
    expect(bars[5]?.hits).toEqual([
      { step: 0, held: false },
      { step: 3, held: false },
      { step: 7, held: true },
    ]);
    expect(bars[1]?.source).toBe('Fmaj7 / / Dm7');
  });

  it('sounds as 35 bars in the order of its form', () => {
    const form = formOf(EXAMPLE);
    expect(form.visits.map(({ section: name, fromBar, toBar, role }) => `${name} ${fromBar}-${toBar} ${role}`)).toEqual([
      'A 0-8 null',
      'A 8-16 null',
      'B 16-24 verse',
      'A 24-32 null',
      'Break 32-33 break',
      'Coro 33-35 coro',
    ]);
    expect(form.bars.slice(16, 24).map(({ chords, pass }) => `${pass} ${chords.map(({ symbol }) => symbol).join(' ')}`)).toEqual([
      '0 Gm7 C7',
      '0 Fmaj7 Dm7',
      '0 Em7b5',
      '0 A7',
      '1 Gm7 C7',
      '1 Fmaj7 Dm7',
      '0 Gm7',
      '0 A7alt',
    ]);
    expect(form.bars[7]?.chords).toMatchObject([{ tick: 7 * 1920, symbol: 'D6/9', push: false }]);
    expect(form.bars[23]).toMatchObject({ kind: 'hit', playing: 'band', tick: 23 * 1920 });
    expect(form.bars[32]).toMatchObject({ kind: 'rest', playing: 'nobody', side: 2 });
    expect(form.bars[33]).toMatchObject({ side: 3, cycleStep: 8 });
  });

  it('is written out as it was typed, but that heads list their attributes in one order', () => {
    expect(writeChart(chart)).toBe(EXAMPLE.replace('style: salsa, role: verse', 'role: verse, style: salsa'));
  });
});
