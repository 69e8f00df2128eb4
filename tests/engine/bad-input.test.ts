import { describe, expect, it } from 'vitest';
import { readChart } from '../../src/music/chart/read';
import { writeChart as write } from '../../src/music/chart/write';
import { type ArrangeOptions, arrange, type Score } from '../../src/music/score';
import { NOTICES } from '../../src/words/notice';
import { whyStroke } from '../../src/words/why';
import { chartOf } from './progressions';

const CHANGES = '| Em7 | A7 | D6 | B7b9 |';
const noticed = (text: string, options: ArrangeOptions = {}): readonly string[] => {
  const score = arrange(chartOf(text), options);
  // Whatever is said, music plays.
  expect(score.parts.rightHand.length + score.parts.leftHand.length).toBeGreaterThan(0);
  return score.notices.map(({ code, bar, section, detail }) => `${code} | ${bar} | ${section} | ${Object.values(detail).join(' ')}`);
};

describe('what cannot be taken as asked is said, with its place, and the music plays', () => {
  it.each([
    ['a style of the other meter', `key: D\nstyle: bembe\n${CHANGES}`, {}, 'style against meter | null | null | bembe 4/4 6/8'],
    ['the same in a section', `key: D\n[B, style: bembe]\n${CHANGES}`, {}, 'style against meter | null | B | bembe 4/4 6/8'],
    ['a role that there is not', `key: D\n[B, role: corro]\n${CHANGES}`, {}, 'unknown role | null | B | corro 2 coro'],
    ['half step out over changes', `key: D\n${CHANGES}`, { devices: ['half-step-out'] }, 'device idle | null | null | half-step-out'],
    [
      'double notes in a sparse figure',
      `key: D\n${CHANGES}`,
      { level: 1, devices: ['double-notes'] },
      'device idle | null | null | double-notes',
    ],
    ['a crossed figure', `key: D\nfigure: .x.x.x.x x.xx.x.x\n${CHANGES}`, {}, 'figure crossed | 0 | A | 3-2'],
    ['a figure on a chord without a third', 'key: D\nfigure: x.xx.x.x .x.xx.x.\n| D5 | A7 |', {}, 'figure bends | 0 | A | D5 2'],
    [
      'a vamp held an odd number of times',
      'key: D\n[A, on cue]\n| Em7 | A7 | D6 |\n[B]\n| D6 | A7 |',
      { vampPasses: 3 },
      'open odd vamp | 0 | A | 3 3 no',
    ],
    [
      'a vamp that closes the second time',
      'key: D\n[A, on cue]\n| Em7 | A7 | D6 |\n[B]\n| D6 | A7 |',
      {},
      'open odd vamp | 0 | A | 3 2 yes',
    ],
  ] satisfies readonly (readonly [string, string, ArrangeOptions, string])[])('%s', (_, text, options, expected) => {
    expect(noticed(text, options)).toContain(expected);
  });

  it('half step out over a vamp finds its cycle and says nothing', () => {
    expect(noticed('key: D\n| Em7 | A7 | Em7 | A7 |', { devices: ['half-step-out'] })).toEqual([]);
  });

  it('a tempo outside the style is said once, however many sections leave it', () => {
    const said = noticed(`key: D\nstyle: bolero\ntempo: half = 100\n[A]\n${CHANGES}\n[B]\n${CHANGES}`);
    expect(said.filter((line) => line.startsWith('tempo outside style'))).toEqual(['tempo outside style | 0 | A | bolero 100 40 55']);
  });

  it('a figure of 15 steps is a fault that says how many there are', () => {
    const read = readChart(`key: D\nfigure: x.xx.x.x .x.xx.x\n${CHANGES}`);
    expect(read.ok ? [] : read.faults.map(({ line, column, expected }) => `${line}:${column} ${expected}`)).toEqual([
      '2:9 two bars of 8 steps, x for a stroke and . for a rest, such as x.xx.x.x .x.xx.x.; found 15 steps',
    ]);
  });

  it('a role that there is not stays in the text', () => {
    expect(write(chartOf(`[B, role: corro]\n${CHANGES}`))).toContain('[B, role: corro]');
  });
});

const at = (score: Score, bar: number, step: number) => score.parts.rightHand.find(({ tick }) => tick === bar * 1920 + step * 240);

describe('changes made by hand', () => {
  const chart = chartOf(`key: D\n${CHANGES}`);

  it('mark their strokes, and the reason says so', () => {
    const score = arrange(chart, { edits: [{ bar: 2, step: 0, change: 'pitch', semitones: 2 }] });
    const changed = at(score, 2, 0);
    expect(changed?.edited).toBe(true);
    expect(changed ? whyStroke(changed, score.bars) : '').toMatch(/It was changed by hand\.$/);
    expect(score.parts.rightHand.filter(({ edited }) => edited)).toHaveLength(1);
    const longer = arrange(chart, { edits: [{ bar: 2, step: 3, change: 'length', steps: 2 }] });
    expect(at(longer, 2, 3)?.edited).toBe(true);
    expect(at(longer, 2, 3)?.names).toEqual(at(arrange(chart), 2, 3)?.names);
  });

  it('go with their side when the direction is exchanged', () => {
    const edits = [{ bar: 0, step: 2, side: 2, change: 'off' } as const];
    expect(at(arrange(chart, { edits, direction: '2-3' }), 0, 2)).toBeUndefined();
    const other = arrange(chart, { edits, direction: '3-2' });
    expect(at(arrange(chart, { direction: '3-2' }), 1, 2)).toBeDefined();
    expect(at(other, 1, 2)).toBeUndefined();
    expect(other.notices).toEqual([]);
  });

  it.each([
    ['on a rest', 'key: D\n| Em7 | N.C. | D6 | A7 |', { bar: 1, step: 0, change: 'off' }, 'rest'],
    ['where nothing is struck', `key: D\n${CHANGES}`, { bar: 0, step: 1, change: 'off' }, 'nothing struck'],
    ['where there is a stroke already', `key: D\n${CHANGES}`, { bar: 0, step: 0, change: 'on', as: 'octave' }, 'struck already'],
    ['past the last key', `key: D\n${CHANGES}`, { bar: 0, step: 0, change: 'pitch', semitones: 60 }, 'outside the keys'],
    ['whose side has no bar in the cycle', 'key: D\n| Em7 | A7 | D6 |', { bar: 2, step: 0, side: 3, change: 'off' }, 'other side'],
  ] as const)('%s are said with bar and step, and kept', (_, text, edit, why) => {
    const score = arrange(chartOf(text), { edits: [edit], closed: false });
    const said = score.notices.filter(({ code }) => code === 'edit out of place');
    expect(said.map(({ bar, detail }) => [bar, detail.step, detail.why])).toEqual([[edit.bar, edit.step, why]]);
    expect(NOTICES.sentence(said[0] ?? { code: 'half-side', bar: 0, section: null, detail: {} })).toMatch(/it is kept\.$/);
    expect(score.parts.rightHand.length).toBeGreaterThan(0);
  });
});
