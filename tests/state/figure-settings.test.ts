import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FigureEdit } from '../../src/music/montuno/edits';
import { ownFigureOf, pairChoices, percussionChoices } from '../../src/state/choices';
import { decode, encode } from '../../src/state/records';
import { DEFAULT_SETTINGS } from '../../src/state/settings';
import { settingsFrom } from '../../src/state/settings-record';
import { chartText, deskBench } from './desk-fixture';

async function opened(text = chartText('Low Tide')) {
  const bench = deskBench();
  await bench.desk.restore();
  bench.desk.run({ kind: 'type', text });
  await bench.settle();
  return bench;
}
const OFF: FigureEdit = { bar: 0, step: 0, change: 'off' };
const HIGHER: FigureEdit = { bar: 0, step: 3, change: 'pitch', semitones: 12 };

describe('Settings of the figure', () => {
  it('are read from a record that knew nothing of them', () => {
    // Typed by hand, as the first version wrote it: this line is never changed.
    const written =
      '{"record":"settings","version":1,"body":{"tempo":70,"goalTempo":96,"direction":"3-2","kind":"rumba","level":4,"devices":["octaves-only"],"hands":"tenths","colour":"jazz","transpose":3,"seed":2,"loop":{"fromBar":2,"toBar":4},"countInBars":2,"round":"once, then end","pulse":"quarters","view":"staff","balance":{"bass":{"level":0.5,"muted":true}}}}';
    const read = decode('settings', written);
    const settings = settingsFrom(read.kind === 'good' ? read.body : null, DEFAULT_SETTINGS);
    expect(settings).toMatchObject({ level: 4, hands: 'tenths', transpose: 3, loop: { fromBar: 2, toBar: 4 }, view: 'staff' });
    expect(settings).toMatchObject({ style: null, stretch: 'octave', compass: 88, cells: null, ownFigure: null, crossed: false });
    expect(settings).toMatchObject({ percussion: 'by style', edits: [], undoneEdits: [], solo: null, feel: 'straight' });
  });

  it('come back as they were written', () => {
    const settings = {
      ...DEFAULT_SETTINGS,
      level: 'by section' as const,
      style: 'guajira',
      stretch: 'tenth' as const,
      compass: 61 as const,
      cells: { two: 'A4' as const, three: 'B2' as const },
      ownFigure: { text: 'x.xx.x.x .x.xx.x.', direction: '3-2' as const },
      crossed: true,
      percussion: ['mambo bell' as const, 'conga one drum' as const],
      edits: [OFF, HIGHER],
      undoneEdits: [{ bar: 1, step: 2, change: 'length' as const, steps: 3 }],
      solo: 'scaffold' as const,
      feel: 'measured' as const,
    };
    const read = decode('settings', encode('settings', settings));
    expect(read.kind === 'good' && settingsFrom(read.body, DEFAULT_SETTINGS)).toEqual(settings);
  });

  it('lose what cannot be played and keep the rest, whatever was saved', () => {
    const saved = {
      style: 'polka',
      cells: { two: 'B1', three: 'A1' },
      ownFigure: { text: 'x.x', direction: '2-3' },
      percussion: ['spoons', 'cascara'],
      edits: [
        { bar: -1, step: 0, change: 'off' },
        OFF,
        { bar: 0, step: 0, change: 'louder' },
        { bar: 0, step: 1, change: 'length', steps: 0 },
      ],
      solo: 'loud',
    };
    expect(settingsFrom(saved, DEFAULT_SETTINGS)).toEqual({ ...DEFAULT_SETTINGS, percussion: ['cascara'], edits: [OFF] });
    fc.assert(
      fc.property(fc.record({ cells: fc.anything(), ownFigure: fc.anything(), percussion: fc.anything(), edits: fc.anything() }), (any) => {
        settingsFrom(any, DEFAULT_SETTINGS);
      }),
    );
  });
});

describe('Changes made by hand', () => {
  const struck = ({ desk }: Awaited<ReturnType<typeof opened>>) =>
    desk.desk.getState().music?.score.parts.rightHand.map(({ tick }) => tick) ?? [];

  it('are undone, done again and all taken back, and outlive a change of level', async () => {
    const bench = await opened();
    const { run } = bench.desk;
    const before = struck(bench);
    expect(before).toContain(0);
    run({ kind: 'edit', edit: OFF });
    run({ kind: 'edit', edit: HIGHER });
    expect(struck(bench)).not.toContain(0);
    run({ kind: 'set', settings: { level: 3 } });
    expect(struck(bench)).not.toContain(0);
    run({ kind: 'set', settings: { level: 2 } });
    run({ kind: 'undo edit' });
    expect(bench.desk.desk.getState().settings).toMatchObject({ edits: [OFF], undoneEdits: [HIGHER] });
    run({ kind: 'redo edit' });
    expect(bench.desk.desk.getState().settings.edits).toEqual([OFF, HIGHER]);
    run({ kind: 'reset edits' });
    expect(struck(bench)).toEqual(before);
    run({ kind: 'redo edit' });
    expect(bench.desk.desk.getState().settings.edits).toEqual([OFF]);
    run({ kind: 'edit', edit: HIGHER });
    expect(bench.desk.desk.getState().settings.undoneEdits).toEqual([]);
  });

  it('that fit nowhere are said and the music plays on', async () => {
    const { desk } = await opened();
    desk.run({ kind: 'edit', edit: { bar: 0, step: 1, change: 'off' } });
    const { music, trouble } = desk.desk.getState();
    expect(trouble).toBeNull();
    expect(music?.score.notices.map(({ code }) => code)).toContain('edit out of place');
  });
});

describe('What can be chosen', () => {
  it('takes effect: style, percussion, cells, an own figure, the exercise', async () => {
    const { desk } = await opened();
    const score = () => desk.desk.getState().music?.score;
    desk.run({ kind: 'set', settings: { style: 'cha-cha-cha' } });
    expect(score()?.style).toBe('cha-cha-cha');
    desk.run({ kind: 'set', settings: { style: null, percussion: ['mambo bell'] } });
    expect(Object.keys(score()?.parts.percussion ?? {})).toContain('mambo bell');
    desk.run({ kind: 'set', settings: { percussion: 'none' } });
    expect(score()?.parts.percussion).toEqual({});
    desk.run({ kind: 'set', settings: { crossed: true } });
    expect(score()?.alignment.verdict).toBe('crossed');
    desk.run({ kind: 'set', settings: { crossed: false, ownFigure: { text: 'x..x..x. .x..x...', direction: '2-3' } } });
    expect(
      score()
        ?.parts.rightHand.filter(({ tick }) => tick < 3840)
        .map(({ tick }) => tick / 240),
    ).toEqual([0, 3, 6, 9, 12]);
  });

  it('keeps cells that do not go with the clave and plays the level’s own', async () => {
    const { desk } = await opened();
    const figure = () =>
      desk.desk
        .getState()
        .music?.score.parts.rightHand.map(({ tick }) => tick / 240)
        .join(' ');
    desk.run({ kind: 'set', settings: { kind: 'rumba' } });
    const own = figure();
    desk.run({ kind: 'set', settings: { cells: { two: 'A4', three: 'B2' } } });
    expect(figure()).toBe(own);
    expect(desk.desk.getState().settings.cells).toEqual({ two: 'A4', three: 'B2' });
    desk.run({ kind: 'set', settings: { kind: 'son' } });
    expect(figure()).not.toBe(own);
  });

  it('is named: pairs that fit, percussion without fills, a rhythm or what was expected', () => {
    expect(pairChoices('rumba').map(({ cells }) => cells.three)).not.toContain('B2');
    expect(percussionChoices('4/4').map(({ id }) => id)).not.toContain('abanico');
    expect(percussionChoices('6/8').map(({ id }) => id)).toEqual(['6/8 bell', '6/8 low drum']);
    expect(ownFigureOf('X.XX.X.X|.x.xx.x.', '3-2')).toEqual({ ok: true, value: { text: 'x.xx.x.x .x.xx.x.', direction: '3-2' } });
    const wrong = ownFigureOf('x.xx.x.x .x.xx.x', '2-3');
    expect(wrong.ok ? [] : wrong.faults).toEqual([expect.stringContaining('two bars of 8 steps')]);
  });
});
