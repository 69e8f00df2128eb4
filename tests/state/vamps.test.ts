import { describe, expect, it } from 'vitest';
import { createRecorderPlayer } from '../../src/audio/recorder-player';
import { arrange } from '../../src/music/score';
import { perform } from '../../src/performance/perform';
import type { Music } from '../../src/state/pipeline';
import type { Loop } from '../../src/state/settings';
import { createVampKeeper, openVampAt } from '../../src/state/vamps';
import { chartOf } from '../engine/progressions';

const TEXT = 'key: D\nclave: 2-3 son\n[A]\n| Em7 | A7 |\n[Coro, on cue]\n| D6 | G6 |\n[B]\n| F#m7 | B7b9 |\nform: A, Coro, B';
const plain = { sounding: { right: true, left: true }, pulse: 'halves', ending: false } as const;
/** Seconds of a bar at 60 half notes a minute. */
const BAR = 2;

function band() {
  const chart = chartOf(TEXT);
  const score = arrange(chart, { closed: false, percussion: 'none' });
  const performance = perform(score, plain);
  const music: Music = { chart, loop: null, score, whole: score, performance };
  const vampOf = (_: Music, range: Loop) => perform(arrange(chart, { range, percussion: 'none' }), plain);
  const player = createRecorderPlayer();
  const keeper = createVampKeeper(player, vampOf, () => undefined);
  player.play({ performance, fromTick: 0, tempo: 60 as typeof score.tempo, countInBars: 0 });
  const pass = (seconds: number): void => {
    for (let at = 0; at < seconds; at += 0.02) {
      player.pass(0.02);
      const heard = player.heard();
      if (heard) keeper.follow(heard, music);
    }
  };
  /** Roots of the bass on beat 4, in order, as pitch classes. */
  const roots = () =>
    player
      .recorded()
      .filter(({ event }) => event.part === 'bass' && event.tick % 1920 === 1440)
      .map(({ event }) => (event.midi ?? 0) % 12);
  return { player, keeper, music, pass, roots };
}
const [A, B, D, FS, G] = [9, 11, 2, 6, 7];

describe('an open vamp', () => {
  it('goes round until it is cued, its bass leading to its own first chord, and then leads on', () => {
    const { player, keeper, music, pass, roots } = band();
    pass(BAR * 2 + 0.1);
    expect(keeper.state()).toBe('holding');
    pass(BAR * 6);
    expect(roots().slice(0, 8)).toEqual([A, D, G, D, G, D, G, D]);
    keeper.cue(player.heard(), music);
    expect(keeper.state()).toBe('leaving');
    pass(BAR * 3.5);
    expect(roots().slice(8)).toEqual([G, FS, B]);
    expect(keeper.state()).toBeNull();
  });

  it('says “one more round” when the cue comes after the bass has played the next root', () => {
    const { player, keeper, music, pass, roots } = band();
    pass(BAR * 4 - 0.3);
    keeper.cue(player.heard(), music);
    expect(keeper.state()).toBe('one more round');
    pass(BAR * 4);
    expect(roots().slice(0, 7)).toEqual([A, D, G, D, G, FS, B]);
  });

  it('loses and doubles nothing at its seams', () => {
    const { player, keeper, music, pass } = band();
    pass(BAR * 9);
    keeper.cue(player.heard(), music);
    pass(BAR * 6);
    const clave = player
      .recorded()
      .filter(({ event }) => event.part === 'clave')
      .map(({ at }) => Math.round(at * 4));
    expect(new Set(clave).size).toBe(clave.length);
    // Strokes 2 4 8 11 14 of every cycle of 16 steps, a step lasting a quarter of a second.
    for (let cycle = 0; cycle < Math.floor((clave.at(-1) ?? 0) / 16); cycle++)
      for (const step of [2, 4, 8, 11, 14]) expect(clave).toContain(cycle * 16 + step);
    const keys = player.recorded().map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('is found by its place in the form', () => {
    const { music } = band();
    expect(openVampAt(music.whole.form, 0)).toBeNull();
    expect(openVampAt(music.whole.form, 2 * 1920)).toEqual({ fromBar: 2, toBar: 4 });
    expect(openVampAt(music.whole.form, 4 * 1920)).toBeNull();
  });
});
