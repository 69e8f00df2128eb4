import { describe, expect, it } from 'vitest';
import { DEFAULT_CHOICE } from '../../../src/layout/sheet/sheet-choice';
import { arrange } from '../../../src/music/score';
import { createSheetDesk } from '../../../src/state/sheet/sheet-desk';
import { DeviceStorage, deskBench, turns } from '../desk-fixture';

const bench = async (device = new DeviceStorage()) => {
  const { desk } = deskBench({ device });
  await desk.restore();
  const sheets = createSheetDesk({ desk, arrange, storage: device.tab() });
  await turns();
  return { desk, device, sheets };
};

describe('createSheetDesk', () => {
  it('keeps what is chosen for all sheets and what is written for one chart, and brings both back', async () => {
    const { device, sheets, desk } = await bench();
    expect(sheets.sheet.getState()).toEqual({ choice: DEFAULT_CHOICE, notes: { teacher: '', breaks: null }, refused: null });
    sheets.choose({ habit: 'sixteenths', hands: 'apart' });
    sheets.note({ teacher: 'Slowly.', breaks: [2, 5] });
    desk.run({ kind: 'open', chartId: 'demo-the-night-pilot' });
    await turns();
    expect(sheets.sheet.getState().notes).toEqual({ teacher: '', breaks: null });
    const again = await bench(device);
    again.desk.run({ kind: 'open', chartId: 'demo-last-ferry' });
    await turns();
    expect(again.sheets.sheet.getState().choice).toEqual({ ...DEFAULT_CHOICE, habit: 'sixteenths', hands: 'apart' });
    expect(again.sheets.sheet.getState().notes).toEqual({ teacher: 'Slowly.', breaks: [2, 5] });
  });

  it('takes defaults for what was saved badly, field by field, and puts aside what cannot be read', async () => {
    const device = new DeviceStorage();
    device.records.set('sheet', JSON.stringify({ version: 1, kind: 'poster', hands: 'left', parts: { bass: false, keys: 'no' } }));
    device.records.set('sheet/demo-last-ferry', '{broken');
    const { sheets } = await bench(device);
    const { choice, notes } = sheets.sheet.getState();
    expect(choice).toEqual({ ...DEFAULT_CHOICE, hands: 'left', parts: { ...DEFAULT_CHOICE.parts, bass: false } });
    expect(notes).toEqual({ teacher: '', breaks: null });
    expect(device.records.get('quarantine/sheet/demo-last-ferry')).toBe('{broken');
  });

  it('says why something could not be kept, and keeps it on the page', async () => {
    const { device, sheets } = await bench();
    device.refuses = () => true;
    sheets.note({ teacher: 'Still here.' });
    await turns();
    expect(sheets.sheet.getState().refused).toBe(device.reason);
    expect(sheets.sheet.getState().notes?.teacher).toBe('Still here.');
  });

  it('gives the scores that a kind of sheet needs: the other direction, another figure, three levels of the same tune', async () => {
    const { desk, sheets } = await bench();
    const state = desk.desk.getState();
    const lesson = sheets.scores(state, DEFAULT_CHOICE);
    expect(lesson?.other?.clave.direction).toBe('3-2');
    expect(lesson?.variation?.parts.rightHand.map((s) => s.midi)).not.toEqual(lesson?.whole.parts.rightHand.map((s) => s.midi));
    expect(lesson?.variation?.bars.map((bar) => bar.chords)).toEqual(lesson?.whole.bars.map((bar) => bar.chords));
    expect(sheets.scores(state, DEFAULT_CHOICE)).toBe(lesson);
    const levels = sheets.scores(state, { ...DEFAULT_CHOICE, kind: 'levels' })?.levels;
    expect(levels?.map((score) => [score.level, score.title])).toEqual([1, 2, 4].map((level) => [level, 'Last Ferry']));
    const strokes = levels?.map((score) => score.parts.rightHand.length) ?? [];
    expect(strokes, 'busier level by level').toEqual(strokes.toSorted((a, b) => a - b));
  });

  it('lets notes go on with a demo that becomes a chart of the player’s own, and gives a new chart none', async () => {
    const { desk, sheets } = await bench();
    sheets.note({ teacher: 'Watch bar 4.' });
    desk.run({ kind: 'type', text: desk.desk.getState().text.replace('Last Ferry', 'Last Ferry but One') });
    await turns();
    expect(desk.desk.getState().chartId).not.toBe('demo-last-ferry');
    expect(sheets.sheet.getState().notes?.teacher).toBe('Watch bar 4.');
    sheets.note({ breaks: [2] });
    desk.run({ kind: 'new chart' });
    await turns();
    expect(sheets.sheet.getState().notes).toEqual({ teacher: '', breaks: null });
    desk.run({ kind: 'open', chartId: 'demo-last-ferry' });
    await turns();
    expect(sheets.sheet.getState().notes).toEqual({ teacher: 'Watch bar 4.', breaks: null });
  });
});
