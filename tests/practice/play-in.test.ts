import { describe, expect, test } from 'vitest';
import { alignment } from '../../src/music/clave/alignment';
import type { CELLS } from '../../src/music/montuno/cells';
import { ownPattern } from '../../src/music/montuno/own-figure';
import { pairsFor } from '../../src/music/montuno/patterns';
import { steadyTempo } from '../../src/performance/tempo';
import { readPlayedIn, shapeOf } from '../../src/practice/play-in';
import { halfNotesPerMinute } from '../../src/vocabulary';
import { chartOf } from '../music/chart/chart-of';
import { emptyTake, played } from './synthetic';

const ONE_CHORD = (clave: '2-3' | '3-2') =>
  `title: Slack Tide\nkey: Dm\nclave: ${clave} son\ntempo: half = 90\nstyle: salsa\n\n[A]\n| Dm6 | % |\n`;
const tempo = steadyTempo(halfNotesPerMinute(90));

describe('two bars played in on one chord', () => {
  test('every montuno pair is read back as its rhythm, in both directions, through an offset and a spread of 10 % of a step', () => {
    let right = 0;
    let letters = 0;
    let of = 0;
    for (const direction of ['2-3', '3-2'] as const)
      for (const pair of pairsFor('son')) {
        const cells = { two: pair.two.id, three: pair.three.id } as {
          two: (typeof CELLS)[number]['id'];
          three: (typeof CELLS)[number]['id'];
        };
        const empty = emptyTake(ONE_CHORD(direction), { options: { cells, colour: 'plain' } });
        const { take } = played(empty, { seed: of + 1, offsetMs: -25, spread: 0.1, chordMs: 15 });
        const read = readPlayedIn({ notes: take.notes, tempo, fromPlayTick: 0, steps: 16, direction });
        if (!read.ok) throw new Error(JSON.stringify(read.faults));
        const bars = direction === '2-3' ? [pair.two.roles, pair.three.roles] : [pair.three.roles, pair.two.roles];
        const wanted = bars.join(' ').toLowerCase();
        expect(read.value.text.replace(/[a-z]/g, 'x')).toBe(wanted.replace(/[a-z]/g, 'x'));
        expect(Math.abs(read.value.offsetMs + 25)).toBeLessThan(30);
        of += 1;
        if (read.value.text === wanted) right += 1;
        letters += [...read.value.text].filter((letter, index) => letter === wanted[index]).length / wanted.length;
      }
    console.log(
      `played in: ${of} of ${of} rhythms, ${right} of ${of} with every role, ${((100 * letters) / of).toFixed(1)} % of all places`,
    );
    expect(letters / of).toBeGreaterThanOrEqual(0.97);
  });

  test('what is read is a figure line that a chart takes, and states the side that was played', () => {
    const { take } = played(emptyTake(ONE_CHORD('3-2')), { seed: 5, spread: 0.05 });
    const read = readPlayedIn({ notes: take.notes, tempo, fromPlayTick: 0, steps: 16, direction: '3-2' });
    if (!read.ok) throw new Error('not read');
    const { text } = read.value;
    expect(chartOf(`${ONE_CHORD('3-2').replace('\n\n', `\nfigure: ${text}\n\n`)}`).figure).toBe(text);
    const grid = [...text.replace(' ', '')].map((letter) => letter !== '.');
    expect(alignment(grid, { kind: 'son', direction: '3-2' }).verdict).toBe('aligned');
    expect(ownPattern(text, '3-2').two.roles).toBe('O.iO.i.O');
  });

  test('nothing, one stroke, and playing off the grid are faults with what was expected', () => {
    const nothing = readPlayedIn({ notes: [], tempo, fromPlayTick: 0, steps: 16, direction: '2-3' });
    expect(nothing).toMatchObject({ ok: false, faults: [{ code: 'nothing played' }] });
    const { take } = played(emptyTake(ONE_CHORD('2-3')), { seed: 1 });
    const one = readPlayedIn({ notes: take.notes.slice(0, 1), tempo, fromPlayTick: 0, steps: 16, direction: '2-3' });
    expect(one).toMatchObject({ ok: false, faults: [{ code: 'one stroke' }] });
    const free = played(emptyTake(ONE_CHORD('2-3')), { seed: 1, push: ({ playTick }) => ((playTick / 240) % 4) * 40 }).take;
    expect(readPlayedIn({ notes: free.notes, tempo, fromPlayTick: 0, steps: 16, direction: '2-3' })).toMatchObject({
      ok: false,
      faults: [{ code: 'not on steps' }],
    });
  });

  test('the shape of the line', () => {
    expect(shapeOf([0, 0, 0])).toBe('held');
    expect(shapeOf([0, 0, -1, -2, -3])).toBe('falling');
    expect(shapeOf([0, 1, 2, 2, 1])).toBe('up and down');
    expect(shapeOf([0, -2, 0])).toBe('down and up');
    expect(shapeOf([0, 2, 0, 2])).toBe('mixed');
  });
});
