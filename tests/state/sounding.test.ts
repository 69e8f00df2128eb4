import { describe, expect, it } from 'vitest';
import { deskBench, turns } from './desk-fixture';

async function playing() {
  const bench = deskBench();
  await bench.desk.restore();
  await bench.desk.warm();
  bench.desk.run({ kind: 'play' });
  return bench;
}

describe('Sounding', () => {
  it('starts at the first press once the player is there, with the count-in and tempo that are set', async () => {
    const { desk, player } = await playing();
    expect(player.requests).toHaveLength(1);
    expect(player.requests[0]).toMatchObject({
      fromTick: 0,
      tempo: 64,
      countInBars: 1,
      performance: desk.desk.getState().music?.performance,
    });
    expect(desk.playing.getState().transport.kind).toBe('playing');
  });

  it('starts as soon as the player is fetched when Play was quicker, unless Stop came first', async () => {
    const { desk, player } = deskBench();
    desk.run({ kind: 'play' });
    expect(desk.playing.getState().transport.kind).toBe('starting');
    await turns();
    expect(player.calls).toEqual(['play']);
    const other = deskBench();
    other.desk.run({ kind: 'play' });
    other.desk.run({ kind: 'stop' });
    await turns();
    expect(other.player.calls).not.toContain('play');
    expect(other.desk.playing.getState().transport.kind).toBe('stopped');
  });

  it('says so when the player cannot be fetched, and tries again at the next press', async () => {
    let tries = 0;
    const { desk } = deskBench({
      ports: {
        loadPlayer: () => {
          tries += 1;
          return Promise.reject(new Error('the file was not found'));
        },
      },
    });
    desk.run({ kind: 'play' });
    await turns();
    expect(desk.playing.getState()).toMatchObject({
      transport: { kind: 'stopped' },
      sound: { kind: 'blocked', reason: 'the file was not found' },
    });
    desk.run({ kind: 'play' });
    await turns();
    expect(tries).toBe(2);
  });

  it('hands a change to the player while it plays and says where it lands', async () => {
    const { desk, player } = await playing();
    player.landing = 4 * 1920;
    desk.run({ kind: 'exchange sides' });
    expect(player.performance).toBe(desk.desk.getState().music?.performance);
    expect(desk.desk.getState().announcement).toMatchObject({ thing: 'direction', fromBar: 4 });
    desk.run({ kind: 'step level', by: 1 });
    expect(desk.desk.getState().announcement).toMatchObject({ id: 2, thing: 'level' });
  });

  it('announces nothing and changes nothing in a player that is stopped', async () => {
    const { desk, player } = await playing();
    desk.run({ kind: 'stop' });
    desk.run({ kind: 'exchange sides' });
    expect(player.calls).toEqual(['play', 'stop']);
    expect(desk.desk.getState().announcement).toBeNull();
  });

  it('sets tempo and mix live without a change of the music', async () => {
    const { desk, player } = await playing();
    desk.run({ kind: 'step tempo', by: 1 });
    desk.run({ kind: 'mute', part: 'piano left', muted: true });
    expect(player.calls).toEqual(['play', 'tempo 65']);
    expect(player.mix?.parts['piano left'].muted).toBe(true);
  });

  it('moves the bar at most once a bar, however many frames are drawn', async () => {
    const { desk, player, frame } = await playing();
    let changes = 0;
    desk.playing.subscribe(() => {
      changes += 1;
    });
    for (let tick = 0; tick < 4 * 1920; tick += 20) {
      player.tick = tick;
      frame();
    }
    expect(desk.playing.getState().bar).toBe(3);
    expect(changes).toBe(3);
  });

  it('keeps the bar where it starts while counting in', async () => {
    const { desk, player, frame } = await playing();
    player.countIn = 2;
    player.tick = 3 * 1920;
    frame();
    expect(desk.playing.getState().bar).toBe(0);
  });

  it('starts at a touched bar: at once and without a count-in when it plays, at the next press when it does not', async () => {
    const { desk, player } = await playing();
    desk.run({ kind: 'start at bar', bar: 5 });
    expect(player.requests.at(-1)).toMatchObject({ fromTick: 5 * 1920, countInBars: 0 });
    desk.run({ kind: 'stop' });
    desk.run({ kind: 'start at bar', bar: 3 });
    expect(desk.playing.getState()).toMatchObject({ bar: 3, startBar: 3 });
    desk.run({ kind: 'play' });
    expect(player.requests.at(-1)).toMatchObject({ fromTick: 3 * 1920, countInBars: 1 });
  });

  it('leaves the loop when a bar outside it is touched, and starts in it when the start lies outside', async () => {
    const { desk, player } = await playing();
    desk.run({ kind: 'stop' });
    desk.run({ kind: 'loop bars', loop: { fromBar: 4, toBar: 6 } });
    desk.run({ kind: 'play' });
    expect(player.requests.at(-1)).toMatchObject({ fromTick: 4 * 1920 });
    desk.run({ kind: 'start at bar', bar: 0 });
    expect(desk.desk.getState().settings.loop).toBeNull();
    expect(player.requests.at(-1)).toMatchObject({ fromTick: 0 });
  });

  it('turns the page by a cycle, or moves the loop by its own length', async () => {
    const { desk } = await playing();
    desk.run({ kind: 'stop' });
    desk.run({ kind: 'turn page', by: 1 });
    expect(desk.playing.getState().startBar).toBe(2);
    desk.run({ kind: 'turn page', by: -1 });
    desk.run({ kind: 'turn page', by: -1 });
    expect(desk.playing.getState().startBar).toBe(0);
    desk.run({ kind: 'loop bars', loop: { fromBar: 0, toBar: 4 } });
    desk.run({ kind: 'turn page', by: 1 });
    expect(desk.desk.getState().settings.loop).toEqual({ fromBar: 4, toBar: 8 });
  });

  it('stops when another chart is opened', async () => {
    const { desk, player, settle } = await playing();
    desk.run({ kind: 'open', chartId: desk.demos[2]?.id ?? '' });
    await settle();
    expect(player.calls).toContain('stop');
    expect(player.performance).toBeNull();
    expect(desk.desk.getState().music?.score.title).toBe(desk.demos[2]?.title);
  });

  it('sounds a touched stroke', async () => {
    const { desk, player } = await playing();
    desk.run({ kind: 'sound', midi: [62, 74], velocity: 90 });
    await turns();
    expect(player.calls.at(-1)).toBe('sound 62 74');
  });
});
