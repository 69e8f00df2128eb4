import { describe, expect, it } from 'vitest';
import { readChart } from '../../src/music/chart/read';
import { arrange } from '../../src/music/score';
import { perform } from '../../src/performance/perform';
import { deskBench } from './desk-fixture';

/** A desk whose frames are drawn by hand, and how often it has arranged. */
async function waiting() {
  const frames: (() => void)[] = [];
  let arranged = 0;
  const stages = {
    readChart,
    perform,
    arrange: (...given: Parameters<typeof arrange>) => {
      arranged += 1;
      return arrange(...given);
    },
  };
  const afterFrame = (act: () => void) => {
    frames.push(act);
    return () => frames.splice(frames.indexOf(act), 1);
  };
  const bench = deskBench({ ports: { stages, afterFrame } });
  await bench.desk.restore();
  await bench.desk.warm();
  const draw = (): void => {
    for (const act of frames.splice(0)) act();
  };
  return { ...bench, frames, draw, arranged: () => arranged };
}

describe('A press while it plays', () => {
  it('is answered first; its music is made once the answer is drawn', async () => {
    const { desk, draw } = await waiting();
    const { music, settings } = desk.desk.getState();
    desk.run({ kind: 'exchange sides' });
    expect(desk.desk.getState().settings.direction).not.toBe(settings.direction);
    expect(desk.desk.getState().music).toBe(music);
    draw();
    expect(desk.desk.getState().music?.score.form.bars[0]?.side).not.toBe(music?.score.form.bars[0]?.side);
  });

  it('made several times before a frame is arranged once, for the last', async () => {
    const once = await waiting();
    const atFirst = once.arranged();
    once.desk.run({ kind: 'step level', by: -1 });
    once.draw();
    const { desk, draw, frames, arranged } = await waiting();
    const before = arranged();
    desk.run({ kind: 'step level', by: -1 });
    desk.run({ kind: 'another one' });
    desk.run({ kind: 'step level', by: -1 });
    expect(frames).toHaveLength(1);
    draw();
    expect(arranged() - before).toBe(once.arranged() - atFirst);
    expect(desk.desk.getState().music?.score).toStrictEqual(
      (
        await alone((run) => {
          run({ kind: 'step level', by: -1 });
          run({ kind: 'another one' });
          run({ kind: 'step level', by: -1 });
        })
      )?.score,
    );
  });

  it('is arranged before anything that needs its music, and not again at the frame', async () => {
    const { desk, player, draw, arranged } = await waiting();
    desk.run({ kind: 'exchange sides' });
    desk.run({ kind: 'play' });
    const { music } = desk.desk.getState();
    expect(player.requests[0]?.performance).toBe(music?.performance);
    const before = arranged();
    draw();
    expect(arranged()).toBe(before);
    expect(desk.desk.getState().music).toBe(music);
  });

  it('says what changed when its music is handed to the player', async () => {
    const { desk, draw } = await waiting();
    desk.run({ kind: 'play' });
    desk.run({ kind: 'step tempo', by: 4, goal: false });
    desk.run({ kind: 'step level', by: -1 });
    expect(desk.desk.getState().announcement).toBeNull();
    draw();
    expect(desk.desk.getState().announcement).toMatchObject({ thing: 'level' });
  });
});

async function alone(act: (run: Awaited<ReturnType<typeof waiting>>['desk']['run']) => void) {
  const { desk, draw } = await waiting();
  act(desk.run);
  draw();
  return desk.desk.getState().music;
}
