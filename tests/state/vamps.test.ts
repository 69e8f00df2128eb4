import { describe, expect, it } from 'vitest';
import { createRecorderPlayer } from '../../src/audio/recorder-player';
import { readChart } from '../../src/music/chart/read';
import { arrange } from '../../src/music/score';
import { perform } from '../../src/performance/perform';
import { createPipeline } from '../../src/state/pipeline';
import { DEFAULT_SETTINGS, type Settings } from '../../src/state/settings';
import { halfNotesPerMinute } from '../../src/vocabulary';
import { chartOf } from '../engine/progressions';
import { deskBench } from './desk-fixture';

const TEXT = 'key: D\nclave: 2-3 son\n[A]\n| Em7 | A7 |\n[Coro, on cue]\n| D6 | G6 |\n[B]\n| F#m7 | B7b9 |\nform: A, Coro, B';
/** Seconds of a bar at 60 half notes a minute. */
const BAR = 2;

/** The chart through the real stages of the page to a player on a clock turned by hand. */
function band({ text = TEXT, settings = {} }: { text?: string; settings?: Partial<Settings> } = {}) {
  const pipeline = createPipeline({ readChart, arrange, perform });
  const made = (more: Partial<Settings> = {}) =>
    pipeline.make(chartOf(text), { ...DEFAULT_SETTINGS, round: 'once, then end', percussion: 'none', ...settings, ...more });
  const music = made();
  const player = createRecorderPlayer();
  player.play({ performance: music.performance, fromTick: music.performance.fromTick, tempo: halfNotesPerMinute(60), countInBars: 0 });
  /** Roots of the bass on beat 4, in order, as pitch classes. */
  const roots = () =>
    player
      .recorded()
      .filter(({ event }) => event.part === 'bass' && event.tick % 1920 === 1440)
      .map(({ event }) => (event.midi ?? 0) % 12);
  /** Steps that the clave strikes, counted from the start. */
  const clave = () =>
    player
      .recorded()
      .filter(({ event }) => event.part === 'clave')
      .map(({ at }) => Math.round(at * 4));
  return { player, pipeline, made, music, roots, clave };
}
const [A, B, D, FS, G] = [9, 11, 2, 6, 7];

describe('an open vamp of a chart', () => {
  it('goes round until it is cued, its bass leading to its own first chord, and then leads on', () => {
    const { player, roots } = band();
    player.pass(BAR * 2 + 0.1);
    expect(player.vamp()?.state).toBe('holding');
    player.pass(BAR * 6);
    expect(roots().slice(0, 8)).toEqual([A, D, G, D, G, D, G, D]);
    expect(player.cue()).toBe('leaving');
    player.pass(BAR * 3.5);
    expect(roots().slice(8)).toEqual([G, FS, B]);
    expect(player.vamp()).toBeNull();
  });

  it('says “one more round” when the cue comes after the bass has played the next root', () => {
    const { player, roots } = band();
    player.pass(BAR * 4 - 0.3);
    expect(player.cue()).toBe('one more round');
    player.pass(BAR * 4);
    expect(roots().slice(0, 7)).toEqual([A, D, G, D, G, FS, B]);
  });

  it('is held also where nobody watches: no frame is drawn, and the clave keeps its sides round after round', () => {
    const { player, clave } = band();
    player.pass(BAR * 33);
    expect(player.vamp()?.state).toBe('holding');
    // Son 2-3: strokes 2 4 8 11 14 of every cycle of 16 steps, a step lasting a quarter of a second.
    expect(clave()).toEqual(
      Array.from({ length: 17 }, (_, cycle) => [2, 4, 8, 11, 14].map((step) => cycle * 16 + step))
        .flat()
        .slice(0, clave().length),
    );
    expect(clave().length).toBeGreaterThanOrEqual(80);
  });

  it('of an odd number of bars is held two passes at a time, so that its sides close', () => {
    const { player, clave } = band({ text: TEXT.replace('| D6 | G6 |', '| D6 | G6 | A7 |') });
    player.pass(BAR * 30);
    expect(player.vamp()).toMatchObject({ state: 'holding', fromTick: 2 * 1920, toTick: 8 * 1920 });
    expect(clave().every((step) => [2, 4, 8, 11, 14].includes(step % 16))).toBe(true);
  });

  it('that is played so many times at least asks for one cue, in its last pass', () => {
    const { player, roots } = band({ text: TEXT.replace('[Coro, on cue]', '[Coro, x4, on cue]') });
    player.pass(BAR * 7);
    expect(player.vamp()).toBeNull();
    player.pass(BAR * 2);
    expect(player.cue()).toBe('leaving');
    player.pass(BAR * 3.5);
    expect(roots()).toEqual([A, D, G, D, G, D, G, D, G, FS, B, ...roots().slice(11)]);
  });

  it('does not hold inside a loop that is chosen', () => {
    const { player } = band({ settings: { loop: { fromBar: 0, toBar: 4 } } });
    player.pass(BAR * 3);
    expect(player.vamp()).toBeNull();
    player.pass(BAR * 2);
    expect(player.heard()?.tick).toBeLessThan(2 * 1920);
  });

  it('keeps holding through a change, even one asked for after the cue, which stays given', () => {
    const { player, made, clave, pipeline } = band();
    player.pass(BAR * 4.2);
    const next = made({ level: 4 });
    expect(player.cue()).toBe('leaving');
    expect(player.change(next.performance)).toBe(4 * 1920);
    player.pass(BAR * 2);
    expect(player.heard()?.performance).toBe(next.performance);
    expect(player.vamp()).toBeNull();
    expect(new Set(clave()).size).toBe(clave().length);
    const round = next.performance.vamps?.[0]?.round;
    expect(round && pipeline.scoreOf(round)?.bars.map(({ index }) => index)).toEqual([2, 3]);
  });
});

describe('the desk', () => {
  it('says what the vamp that is heard does, and hands the cue to the player', async () => {
    const bench = deskBench();
    await bench.desk.restore();
    await bench.desk.warm();
    bench.desk.run({ kind: 'cue' });
    expect(bench.desk.playing.getState().vamp).toBeNull();
    bench.player.sounding = { fromTick: 0, toTick: 3840, state: 'holding' };
    bench.desk.run({ kind: 'play' });
    bench.desk.run({ kind: 'cue' });
    expect(bench.player.calls.filter((call) => call === 'cue')).toHaveLength(2);
    expect(bench.desk.playing.getState().vamp).toBe('leaving');
    bench.desk.run({ kind: 'stop' });
    expect(bench.desk.playing.getState().vamp).toBeNull();
  });
});
