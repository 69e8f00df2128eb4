import { describe, expect, it } from 'vitest';
import { DEMO_BOOK } from '../../../src/music/chart/demo-book';
import { unfold } from '../../../src/music/chart/unfold';
import { writeChart } from '../../../src/music/chart/write';
import { pcOf } from '../../../src/music/pitch/spell';
import { chartOf } from './chart-of';

describe('the demo book', () => {
  it('has six charts with titles of their own, both directions and both claves', () => {
    expect(DEMO_BOOK).toHaveLength(6);
    expect(new Set(DEMO_BOOK.map(({ id }) => id)).size).toBe(6);
    expect(DEMO_BOOK.every(({ id }) => /^demo-[a-z-]+$/.test(id))).toBe(true);
    const claves = DEMO_BOOK.map(({ text }) => chartOf(text).clave);
    expect(new Set(claves.map(({ direction }) => direction))).toEqual(new Set(['2-3', '3-2']));
    expect(new Set(claves.map(({ kind }) => kind))).toEqual(new Set(['son', 'rumba']));
  });

  it.each(DEMO_BOOK.map((demo) => [demo.title, demo] as const))(
    '%s is read, carries its title, and is written out as it stands',
    (title, demo) => {
      const chart = chartOf(demo.text);
      expect(chart.title).toBe(title);
      expect(demo.teaches).toMatch(/^\S.{30,110}\.$/u);
      expect(writeChart(chart)).toBe(demo.text);
    },
  );

  it.each(DEMO_BOOK.map((demo) => [demo.title, demo] as const))('%s ends where a clave cycle does, each section on one side', (_, demo) => {
    const form = unfold(chartOf(demo.text));
    expect(form.totalTicks % 3840).toBe(0);
    expect(form.visits.some(({ otherSide }) => otherSide)).toBe(false);
    expect(form.notices.filter(({ code }) => code !== 'odd section')).toEqual([]);
    expect(form.notices.map(({ section }) => section)).toEqual(demo.id === 'demo-seven-planks-down' ? ['Bridge', 'Break'] : []);
  });

  it('balances seven bars with one before the coro', () => {
    const text = DEMO_BOOK.find(({ id }) => id === 'demo-seven-planks-down')?.text ?? '';
    expect(unfold(chartOf(text)).visits.map(({ section, fromBar, toBar, side }) => `${section} ${toBar - fromBar} ${side}`)).toEqual([
      'A 8 3',
      'A 8 3',
      'Bridge 7 3',
      'Break 1 2',
      'Coro 4 3',
    ]);
  });

  it('opens with an AABA of ii–V–I in D, 2-3, half = 92', () => {
    const chart = chartOf(DEMO_BOOK[0]?.text ?? '');
    expect(chart).toMatchObject({
      key: { tonic: 'D', mode: 'major' },
      clave: { kind: 'son', direction: '2-3' },
      tempo: 92,
      form: ['A', 'A', 'B', 'A', 'Coro'],
    });
  });

  it('contains none of the progressions that are worn out as examples', () => {
    const worn = [
      ['Am7', 'D7'],
      ['Cm7', 'F7', 'Bb'],
      ['Am7b5', 'D7', 'G6/9'],
    ].map((row) => row.map((symbol) => ({ pc: pcOf(symbol.replace(/^([A-G]b?).*/, '$1')), minor: symbol.includes('m') })));
    for (const { text, title } of DEMO_BOOK) {
      const chords = unfold(chartOf(text)).bars.flatMap((bar) =>
        bar.chords.flatMap(({ chord }) => (chord ? [{ pc: chord.rootPc, minor: /^m(?!aj)/.test(chord.suffix) }] : [])),
      );
      const run = chords.filter((chord, index) => chord.pc !== chords[index - 1]?.pc);
      for (const row of worn) {
        const at = run.findIndex((_, index) =>
          row.every((chord, step) => run[index + step]?.pc === chord.pc && run[index + step]?.minor === chord.minor),
        );
        expect(`${title} ${at}`).toBe(`${title} -1`);
      }
    }
  });
});
