import { afterEach, describe, expect, it, vi } from 'vitest';
import { stepGrid } from '../../../src/layout/step-grid';
import type { Heard } from '../../../src/state/ports';
import { followPlayhead } from '../../../src/ui/practise/follow-playhead';
import { ferryScore } from '../../layout/ferry-score';

const score = ferryScore();
const grid = stepGrid(score);

/** The least page that the frame loop can follow: two panels, one mark that sounds every time and one of the first time only. */
function page() {
  const root = document.createElement('div');
  const panel = (tick: number) => {
    const element = document.createElement('div');
    element.className = 'panel';
    Object.assign(element.dataset, { tick: String(tick), ticks: '1920', full: '8' });
    const column = document.createElement('i');
    column.className = 'now-column';
    const line = document.createElement('i');
    line.className = 'now-line';
    const drawing = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
    element.append(column, line, drawing);
    return { element, column, line, drawing };
  };
  const card = document.createElement('div');
  card.className = 'now-card';
  const [first, second] = [panel(0), panel(1920)];
  const mark = (once: boolean) => {
    const element = document.createElementNS('http://www.w3.org/2000/svg', 'g');
    Object.assign(element.dataset, { from: '0', to: '720', ...(once ? { once: 'true' } : {}) });
    first.drawing.append(element);
    return element;
  };
  const marks = { always: mark(false), once: mark(true) };
  card.append(first.element, second.element);
  root.append(card);
  return { root, first, second, marks };
}

/** Runs one frame at a place and stops. */
async function frameAt(tick: number, pass: number, calm = false, followed = true) {
  vi.stubGlobal('matchMedia', () => ({ matches: calm }));
  const { root, ...parts } = page();
  const onShow = vi.fn();
  const heard: Heard = { tick, pass, countIn: null, performance: {} as Heard['performance'] };
  const view = {
    heard: () => heard,
    scoreOf: () => score,
    gridOf: () => grid,
    strip: () => null,
    shown: { score, card: 0, followed },
    version: 1,
    onShow,
  };
  const stop = followPlayhead(root, () => view);
  await new Promise((done) => requestAnimationFrame(done));
  await new Promise((done) => requestAnimationFrame(done));
  const lit = { always: parts.marks.always.hasAttribute('data-lit'), once: parts.marks.once.hasAttribute('data-lit') };
  stop();
  return { ...parts, onShow, lit, root };
}

afterEach(() => vi.unstubAllGlobals());

describe('the frame loop', () => {
  it('moves the column by steps and the line smoothly', async () => {
    const { first, second } = await frameAt(1920 + 600, 0);
    expect(second.column.style.transform).toBe('translateX(200%)');
    expect(second.line.style.transform).toBe('translateX(31.25%)');
    expect(first.column.style.transform).toBe('');
  });

  it('steps per beat, without the line, for people who asked for less motion', async () => {
    const { second } = await frameAt(1920 + 800, 0, true);
    expect(second.column.style.transform).toBe('translateX(200%)');
    expect(second.line.style.transform).toBe('');
  });

  it('lights a stroke of the first time in the first pass alone', async () => {
    expect((await frameAt(100, 0)).lit).toEqual({ always: true, once: true });
    expect((await frameAt(100, 1)).lit).toEqual({ always: true, once: false });
    expect((await frameAt(1000, 0)).lit).toEqual({ always: false, once: false });
  });

  it('asks for another card only when another one is heard', async () => {
    expect((await frameAt(3839, 0)).onShow).not.toHaveBeenCalled();
    expect((await frameAt(3840, 0)).onShow).toHaveBeenCalledWith(score, 1);
  });

  it('says what is heard as soon as something is, so that a change waits until it sounds', async () => {
    expect((await frameAt(100, 0, false, false)).onShow).toHaveBeenCalledWith(score, 0);
  });

  it('takes all light away when it stops', async () => {
    const { root } = await frameAt(100, 0);
    expect(root.querySelectorAll('[data-lit], [data-now]')).toHaveLength(0);
  });
});
