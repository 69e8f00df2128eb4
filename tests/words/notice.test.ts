import { describe, expect, it } from 'vitest';
import type { ChartNotice } from '../../src/music/chart/chart';
import { readChart } from '../../src/music/chart/read';
import { unfold } from '../../src/music/chart/unfold';
import { faultSentence } from '../../src/words/fault';
import { NOTICES } from '../../src/words/notice';

const notice = (code: ChartNotice['code'], detail: ChartNotice['detail'], section: string | null = 'A'): string =>
  NOTICES.sentence({ code, bar: section === null ? null : 7, section, detail });

describe('notices', () => {
  it.each([
    [
      'section on the other side',
      { side: 3, firstSide: 2, firstBar: 0 },
      'A comes back on the 3-side, and the figure goes along; if that surprises you, count the bars before.',
    ],
    ['odd section', { bars: 7 }, 'A lasts 7 bars: the clave turns over there, and what follows begins on the other side.'],
    [
      'open odd vamp',
      { bars: 1, passes: 2, closes: 'yes' },
      'A lasts 1 bar, so the clave turns over each time round; it is held twice so that the sides close.',
    ],
    ['half-side', { steps: 4 }, 'A short bar in A moves the clave by half a side from here on; the chart can say where it restarts.'],
    ['outside the clave', { style: 'merengue' }, 'Merengue is not built on this clave: A gets one safe accompaniment.'],
    ['label disagrees', { label: '3-2', counted: '2-3' }, 'A is marked 3-2, but by the count it begins in 2-3.'],
    [
      'style against meter',
      { style: 'bembe', meter: '4/4', usual: '6/8' },
      'The style bembé of A is played in 6/8, but the chart is in 4/4.',
    ],
    [
      'open odd vamp',
      { bars: 3, passes: 3, closes: 'no' },
      'A lasts 3 bars, so the clave turns over each time round; held 3 times it does not close the clave, and what follows begins on the other side.',
    ],
    [
      'unknown role',
      { role: 'corro', line: 4, nearest: 'coro' },
      'A, line 4: no role is called corro (coro?). It plays as a section without a role.',
    ],
    ['figure crossed', { states: '3-2' }, 'From bar 8 the piano is crossed: its rhythm states 3-2, and the clave goes the other way.'],
    [
      'edit out of place',
      { step: 3, why: 'other side' },
      'A change made by hand in bar 8, on the & of 2, belongs to the other side of the clave, and its cycle has no such bar now; it is kept.',
    ],
    [
      'device idle',
      { device: 'half-step-out' },
      'Half step out and back finds no cycle to take outside: it needs a riff, or two cycles or more over no more than two chords.',
    ],
    [
      'tempo outside style',
      { style: 'bolero', from: 40, to: 60 },
      'The tempo lies outside what is usual for bolero (40 to 60 half notes a minute).',
    ],
  ] as const)('turns "%s" into one sentence', (code, detail, sentence) => {
    expect(notice(code, detail)).toBe(sentence);
  });

  it('still says something when a detail is missing', () => {
    expect(notice('section on the other side', {})).toBe(
      'A comes back on the other side, and the figure goes along; if that surprises you, count the bars before.',
    );
    expect(notice('tempo outside style', {}, null)).toBe('The tempo lies outside what is usual for the style.');
  });

  it('speaks about a real chart whose seven-bar bridge turns the clave round', () => {
    const read = readChart('form: A, B, A\n[A]\n| Em7 | A7 |\n[B]\n| Gm7 | % | % | % | % | % | % |');
    const form = read.ok ? unfold(read.value) : null;
    expect(form?.notices.map((each) => NOTICES.sentence(each))).toEqual([
      'B lasts 7 bars: the clave turns over there, and what follows begins on the other side.',
      'A comes back on the 3-side, and the figure goes along; if that surprises you, count the bars before.',
    ]);
  });

  it('say a fact once, however many sections it is about', () => {
    const read = readChart('form: A, B, A, C, B, A\n[A]\n| Em7 | A7 |\n[B]\n| Gm7 | % | % |\n[C]\n| Dm7 | G7 |');
    const form = read.ok ? unfold(read.value) : null;
    const about = NOTICES.sentences(form?.notices ?? []).filter((sentence) => sentence.includes('if that surprises you'));
    expect(about).toHaveLength(1);
  });
});

describe('faults', () => {
  it('say where, what was typed, what was expected and what is nearest', () => {
    const read = readChart('[A]\n| Em7 | h7 |');
    expect(read.ok).toBe(false);
    const sentences = read.ok ? [] : read.faults.map((fault) => faultSentence(fault));
    expect(sentences).toHaveLength(1);
    expect(sentences[0]).toMatch(/^Line 2, column 9, “h7”\. Expected: .+\.( Nearest: “.+”\.)?$/);
  });

  it('quote no more than 40 characters, no control characters, and nothing where nothing stands', () => {
    const fault = { code: 'unknown chord', line: 1, column: 3, text: 'x'.repeat(500), expected: 'a chord', nearest: null } as const;
    expect(faultSentence(fault)).toBe(`Line 1, column 3, “${'x'.repeat(39)}…”. Expected: a chord.`);
    expect(faultSentence({ ...fault, text: '\u0000' })).toBe('Line 1, column 3. Expected: a chord.');
    expect(faultSentence({ ...fault, text: ' ', nearest: 'C' })).toBe('Line 1, column 3. Expected: a chord. Nearest: “C”.');
  });
});
