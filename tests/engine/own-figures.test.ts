import { describe, expect, it } from 'vitest';
import { pairsFor } from '../../src/music/montuno/patterns';
import { type ArrangeOptions, arrange, type Score } from '../../src/music/score';
import { CHECKS, checkLeads, checkTones, checkUncrossed, cycleGrids } from './checks';
import { chartOf, RECIPES } from './progressions';

const grids = (score: Score): string[] => cycleGrids(score).map(({ grid }) => grid.map((on) => (on ? 'x' : '.')).join(''));
const CHANGES = '| Em7 | A7 | D6 | B7b9 |';
const chart = (figure: string, clave = '2-3 son') => chartOf(`key: D\nclave: ${clave}\nfigure: ${figure}\n${CHANGES}`);

describe('a figure of the player’s own', () => {
  it('is played stroke for stroke in the chart’s direction, over all its changes', () => {
    expect(new Set(grids(arrange(chart('x.xx.x.x .x.xx.x.'))))).toEqual(new Set(['x.xx.x.x.x.xx.x.']));
    expect(new Set(grids(arrange(chart('.x.xx.x. x.xx.x.x', '3-2 son'))))).toEqual(new Set(['.x.xx.x.x.xx.x.x']));
  });

  it('changes its bars about when the direction is flipped', () => {
    expect(new Set(grids(arrange(chart('x.xx.x.x .x.xx.x.'), { direction: '3-2' })))).toEqual(new Set(['.x.xx.x.x.xx.x.x']));
  });

  it('keeps the rules of lead and tone in twelve keys', () => {
    const faults: string[] = [];
    for (let transpose = 0; transpose < 12; transpose++) {
      const score = arrange(chart('x.xx.x.x .x.x.xx.'), { transpose });
      faults.push(...checkLeads(score), ...checkTones(score));
    }
    expect(faults).toEqual([]);
  });

  it('takes the roles that were typed', () => {
    const roles = arrange(chart('o.ic.i.o .i.o.iao'))
      .parts.rightHand.slice(0, 9)
      .map(({ role }) => role);
    expect(roles).toEqual(['octave', 'inner', 'chord', 'inner', 'octave', 'inner', 'octave', 'inner', 'approach']);
  });

  it('says so when it is crossed, and when a chord cannot serve it', () => {
    expect(arrange(chart('.x.x.x.x x.xx.x.x')).alignment.verdict).toBe('crossed');
    const power = arrange(chartOf('key: D\nfigure: x.xx.x.x .x.xx.x.\n| D5 | A7 |'));
    expect(power.notices.map(({ code }) => code)).toContain('figure bends');
  });
});

describe('crossed on purpose', () => {
  it('puts the standard figure on the wrong side, in both directions', () => {
    for (const direction of ['2-3', '3-2'] as const) {
      const score = arrange(chartOf(`key: D\n${CHANGES}`), { crossed: true, direction });
      expect(score.alignment.verdict).toBe('crossed');
      expect(checkTones(score)).toEqual([]);
    }
  });
});

describe('pairs of cells chosen by hand', () => {
  it('are all uncrossed on the side where they belong (common practice; direction by the score fitted to expert labels)', () => {
    const faults: string[] = [];
    for (const kind of ['son', 'rumba'] as const) {
      const pairs = pairsFor(kind);
      expect(pairs.length).toBeGreaterThan(kind === 'son' ? 25 : 10);
      for (const { two, three } of pairs)
        for (const direction of ['2-3', '3-2'] as const) {
          const score = arrange(chartOf(`key: D\n${CHANGES}`), {
            kind,
            direction,
            cells: { two: two.id as 'A1', three: three.id as 'B1' },
          });
          faults.push(...checkUncrossed(score), ...checkLeads(score), ...checkTones(score));
        }
    }
    expect(faults).toEqual([]);
  });

  it('with rumba clave end on the & of 4', () => {
    expect(pairsFor('rumba').every(({ three }) => three.roles.endsWith('O') || three.roles.endsWith('c'))).toBe(true);
  });
});

describe('hands, stretch and compass', () => {
  const everyRecipe = (options: ArrangeOptions): Score[] =>
    RECIPES.map(({ name, key, bars }) => arrange(chartOf(`title: ${name}\nkey: ${key}\n${bars}`), options));

  it.each(['double', 'wide', 'tenths', 'contrary', 'right', 'left'] as const)('%s keeps every rule', (hands) => {
    expect(everyRecipe({ hands, level: 3 }).flatMap((score) => CHECKS.flatMap((check) => check(score)))).toEqual([]);
  });

  it.each([
    ['less than an octave', 9],
    ['octave', 12],
    ['ninth', 14],
    ['tenth', 16],
  ] as const)('a stretch of %s is never exceeded by one hand', (stretch, semitones) => {
    const spans = ([1, 2, 3, 4, 6] as const).flatMap((level) =>
      everyRecipe({ stretch, level, hands: 'wide' }).flatMap((score) =>
        [...score.parts.rightHand, ...score.parts.leftHand].map(({ midi }) => (midi.at(-1) ?? 0) - (midi[0] ?? 0)),
      ),
    );
    expect(Math.max(...new Set(spans))).toBeLessThanOrEqual(semitones);
  });

  it.each([
    [49, 36, 84],
    [61, 36, 96],
    [76, 28, 103],
    [88, 21, 108],
  ] as const)('%i keys are never left, whatever the hands and devices', (compass, from, to) => {
    for (const hands of ['double', 'wide', 'contrary', 'tumbao'] as const) {
      const notes = everyRecipe({ compass, hands, devices: ['octave-up'] }).flatMap((score) =>
        [...score.parts.rightHand, ...score.parts.leftHand].flatMap(({ midi }) => midi),
      );
      expect(Math.min(...new Set(notes))).toBeGreaterThanOrEqual(from);
      expect(Math.max(...new Set(notes))).toBeLessThanOrEqual(to);
    }
  });

  it('contrary motion moves against the right hand more often than with it', () => {
    let against = 0;
    let along = 0;
    for (const score of everyRecipe({ hands: 'contrary', level: 3 })) {
      const right = score.parts.rightHand.filter(({ role }) => role === 'octave' || role === 'chord');
      right.forEach((stroke, index) => {
        const before = right[index - 1];
        const left = score.parts.leftHand.find(({ tick }) => tick === stroke.tick);
        const leftBefore = score.parts.leftHand.find(({ tick }) => tick === before?.tick);
        if (!before || !left || !leftBefore) return;
        const product =
          Math.sign((stroke.midi[0] ?? 0) - (before.midi[0] ?? 0)) * Math.sign((left.midi[0] ?? 0) - (leftBefore.midi[0] ?? 0));
        if (product < 0) against++;
        if (product > 0) along++;
      });
    }
    expect(against).toBeGreaterThan(2 * along);
  });
});

describe('changes made by hand', () => {
  const plain = chartOf(`key: D\n${CHANGES}`);
  it('switch a stroke off and on, move and lengthen it, and stay when the level changes', () => {
    for (const level of [2, 4] as const) {
      const score = arrange(plain, {
        level,
        edits: [
          { bar: 0, step: 2, change: 'off' },
          { bar: 1, step: 4, change: 'on', as: 'inner' },
          { bar: 2, step: 0, change: 'pitch', semitones: 2 },
          { bar: 2, step: 3, change: 'length', steps: 2 },
        ],
      });
      const at = (bar: number, step: number) => score.parts.rightHand.find(({ tick }) => tick === bar * 1920 + step * 240);
      const before = arrange(plain, { level }).parts.rightHand.find(({ tick }) => tick === 2 * 1920);
      expect(at(0, 2)).toBeUndefined();
      expect(at(1, 4)?.role).toBe('inner');
      expect(at(2, 0)?.midi).toEqual(before?.midi.map((midi) => midi + 2));
      expect(at(2, 3)?.durationTicks).toBe(480);
      expect(score.notices).toEqual([]);
    }
  });

  it('that find nothing to change are said, with their place', () => {
    const score = arrange(plain, {
      edits: [
        { bar: 0, step: 1, change: 'off' },
        { bar: 0, step: 4, change: 'pitch', semitones: 1 },
      ],
    });
    expect(score.notices.map(({ code, bar }) => [code, bar])).toEqual([
      ['edit out of place', 0],
      ['edit out of place', 0],
    ]);
  });
});

describe('a solo in three steps', () => {
  const long = chartOf(`key: D\n[A]\n${CHANGES}\n${CHANGES}\n[B]\n${CHANGES}\n[C]\n${CHANGES}`);
  it('goes from octave melody through chords to a repeated element that goes out a half step and comes back', () => {
    const { rightHand } = arrange(long, { solo: 'example' }).parts;
    const rolesIn = (from: number, to: number) =>
      new Set(rightHand.filter(({ tick }) => tick >= from * 1920 && tick < to * 1920).map(({ role }) => role));
    expect(rolesIn(0, 7)).toEqual(new Set(['octave']));
    expect(rolesIn(8, 11)).toContain('chord');
    const lifts = new Set(rightHand.filter(({ tick }) => tick >= 12 * 1920).map(({ lift }) => lift));
    expect(lifts).toEqual(new Set([0, 1]));
    expect(rightHand.at(-1)?.lift).toBe(0);
  });

  it('is aligned in both directions, with son and rumba', () => {
    for (const direction of ['2-3', '3-2'] as const)
      for (const kind of ['son', 'rumba'] as const)
        for (let seed = 0; seed < 3; seed++) expect(checkUncrossed(arrange(long, { solo: 'example', direction, kind, seed }))).toEqual([]);
  });

  it('has a scaffold of guide tones alone: one octave for each chord', () => {
    const { rightHand } = arrange(chartOf(`key: D\n${CHANGES}`), { solo: 'scaffold' }).parts;
    expect(rightHand.map(({ role, chord }) => `${role} ${chord}`)).toEqual([
      'octave Em7',
      'octave A7',
      'octave D6',
      'octave B7b9',
      'octave Em7',
    ]);
  });
});
