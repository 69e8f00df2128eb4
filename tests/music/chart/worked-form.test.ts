import { describe, expect, it } from 'vitest';
import type { Form } from '../../../src/music/chart/chart';
import { formOf } from './chart-of';

// Worked form: 52 bars beginning 2-3. Source: arithmetic from the rule that a running clave never turns round
// (side = (start + sounding bar) mod 2; common practice, R. Mauleón, Salsa Guidebook, 1993, from memory). Labels typed here by hand.
const WORKED = `
[Intro]
| Dm7 | G7 | Cmaj7 | % |
[A]
| Dm7 | G7 | C6 | % | Em7 | A7 | Dm7 | G7 ||
[B]
| Fmaj7 | % | Em7 | A7 | Dm7 | G7 | C6 ||
[Break]
| stop |
[Coro, x4, on cue]
| C | F | G7 | F |
form: Intro, A, A, B, A, Break, Coro
`;

/** Section, first bar and label at each entry into another section. */
function labels(form: Form): string[] {
  const starts = form.visits.filter((visit, index) => visit.section !== 'Coro' || form.visits[index - 1]?.section !== 'Coro');
  return starts.map((visit) => `${visit.section} ${visit.fromBar} ${visit.side === 2 ? '2-3' : '3-2'}`);
}

describe('the worked form', () => {
  it('has the label of each section that counting bars by hand gives', () => {
    expect(labels(formOf(WORKED))).toEqual(['Intro 0 2-3', 'A 4 2-3', 'A 12 2-3', 'B 20 2-3', 'A 27 3-2', 'Break 35 3-2', 'Coro 36 2-3']);
  });

  it('has 52 bars, and the break is a 3-side', () => {
    const form = formOf(WORKED);
    expect(form.bars).toHaveLength(52);
    expect(form.totalTicks).toBe(52 * 1920);
    expect(form.bars[35]).toMatchObject({ section: 'Break', side: 3, cycleStep: 8, kind: 'rest', playing: 'nobody', chords: [] });
  });

  it('turns round again when the bridge is repeated', () => {
    const repeated = formOf(WORKED.replace('A, A, B, A', 'A, A, B, B, A'));
    expect(labels(repeated).slice(3)).toEqual(['B 20 2-3', 'B 27 3-2', 'A 34 2-3', 'Break 42 2-3', 'Coro 43 3-2']);
  });

  it('swaps every label when it is started on the other side', () => {
    expect(labels(formOf(WORKED, { direction: '3-2' }))).toEqual([
      'Intro 0 3-2',
      'A 4 3-2',
      'A 12 3-2',
      'B 20 3-2',
      'A 27 2-3',
      'Break 35 2-3',
      'Coro 36 3-2',
    ]);
  });

  it('says that the third A is on the other side, and which sections are odd', () => {
    const notices = formOf(WORKED).notices;
    expect(notices.map(({ code, section, bar }) => ({ code, section, bar }))).toEqual([
      { code: 'odd section', section: 'B', bar: 20 },
      { code: 'section on the other side', section: 'A', bar: 27 },
      { code: 'odd section', section: 'Break', bar: 35 },
    ]);
    expect(notices[1]?.detail).toEqual({ side: 3, firstSide: 2, firstBar: 4 });
  });
});
