import { describe, expect, it } from 'vitest';
import { createEditing } from '../../../src/state/editing/editing';
import { chartText, DeviceStorage, deskBench } from '../desk-fixture';

const MINE = chartText('Low Tide');

async function bench() {
  const parts = deskBench({ device: new DeviceStorage() });
  await parts.desk.restore();
  return { ...parts, editing: createEditing(parts.desk), state: () => parts.desk.desk.getState() };
}

describe('Undo in the chart text', () => {
  it('leads from a chart of one’s own back to the demo it was typed over, and forth again', async () => {
    const { desk, editing, state } = await bench();
    const demo = state().text;
    desk.run({ kind: 'type', text: `${demo}; mine` });
    expect(editing.store.getState()).toEqual({ canUndo: true, canRedo: false });
    editing.undo();
    expect(state().text).toBe(demo);
    expect(editing.store.getState()).toEqual({ canUndo: false, canRedo: true });
    editing.redo();
    expect(state().text).toBe(`${demo}; mine`);
  });

  it('is kept for every chart apart while others are opened', async () => {
    const { desk, editing, state, settle } = await bench();
    desk.run({ kind: 'type', text: MINE });
    desk.run({ kind: 'type', text: `${MINE}; one` });
    await settle();
    const id = state().chartId;
    desk.run({ kind: 'open', chartId: 'demo-last-ferry' });
    await settle();
    expect(editing.store.getState().canUndo).toBe(false);
    expect(editing.undo()).toBeNull();
    desk.run({ kind: 'new chart' });
    expect(editing.store.getState().canUndo).toBe(false);
    desk.run({ kind: 'type', text: `${state().text}; two` });
    desk.run({ kind: 'open', chartId: id });
    await settle();
    expect(state().text).toBe(`${MINE}; one`);
    editing.undo();
    expect(state().text).toBe(MINE);
  });

  it('forgets what was taken back once something else is typed, and nothing else', async () => {
    const { desk, editing, state } = await bench();
    desk.run({ kind: 'type', text: MINE });
    desk.run({ kind: 'type', text: `${MINE}; one` });
    editing.undo();
    desk.run({ kind: 'type', text: `${MINE}; two` });
    expect(editing.redo()).toBeNull();
    editing.undo();
    expect(state().text).toBe(MINE);
  });

  it('takes faulty text back as well', async () => {
    const { desk, editing, state } = await bench();
    desk.run({ kind: 'type', text: MINE });
    desk.run({ kind: 'type', text: `${MINE}| H7 |` });
    expect(state().faults).toHaveLength(1);
    editing.undo();
    expect(state().faults).toHaveLength(0);
  });
});
