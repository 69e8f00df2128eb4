import { describe, expect, it } from 'vitest';
import { createRecorderPlayer } from '../../src/audio/recorder-player';
import { createTakes, type Recorded, type TakeTerms } from '../../src/state/listening/takes';
import { assert, halfNotesPerMinute, inputMillis } from '../../src/vocabulary';
import { BAR, everyStep, request, TEMPO } from '../audio/player-bench';

/** The recorder's clock starts at 0 on both sides, so input milliseconds are its seconds times 1000. */
const TERMS: TakeTerms = { parts: ['piano right'], pitched: true, latencyMs: 0, trust: 'calibrated', scoreOf: () => null };

function bench(terms: TakeTerms = TERMS) {
  const player = createRecorderPlayer();
  const takes = createTakes();
  const recorded: Recorded[] = [];
  let seconds = 0;
  const pass = (forSeconds: number, onTick: (atMs: number) => void = () => undefined) => {
    for (const end = seconds + forSeconds; seconds < end - 1e-9; ) {
      player.pass(0.2);
      seconds += 0.2;
      onTick(seconds * 1000);
      recorded.push(...takes.tick(player.music(), player.clock(), terms));
    }
  };
  const play = (midi: number, atMs: number, coarse = false) => {
    takes.hear({ kind: 'note on', midi, velocity: 90, at: inputMillis(atMs), coarse });
    takes.hear({ kind: 'note off', midi, at: inputMillis(atMs + 100) });
  };
  return { player, takes, recorded, pass, play, now: () => seconds };
}

describe('takes', () => {
  it('are one for every pass, end to end, with the notes where they were played', () => {
    const { player, recorded, pass, play } = bench();
    pass(0.4);
    player.play(request(everyStep(2)));
    const from = 0.4;
    play(60, from * 1000 + 5);
    play(64, (from + BAR) * 1000 - 12);
    pass(5 * BAR);
    expect(recorded.length).toBe(2);
    expect(recorded.map(({ take }) => [take.fromPlayTick, take.toPlayTick])).toEqual([
      [0, 3840],
      [3840, 7680],
    ]);
    expect(recorded.every(({ stretch }) => stretch.wholePass)).toBe(true);
    const [first] = recorded;
    assert(first, 'there is a first take');
    expect(first.take.notes.map(({ midi, at }) => [midi, Math.round(at * 1000)])).toEqual([
      [60, 5],
      [64, Math.round(BAR * 1000 - 12)],
    ]);
    expect(first.heard).toBe(2);
    expect(recorded[1]?.heard).toBe(0);
  });

  it('begin at the next clave cycle when listening begins while the music plays', () => {
    const { player, takes, recorded, pass } = bench();
    player.play(request(everyStep(4)));
    player.pass(BAR * 0.5);
    takes.begin();
    pass(7 * BAR);
    expect(recorded[0]?.take.fromPlayTick).toBe(3840);
    expect(recorded[0]?.take.toPlayTick).toBe(7680);
    expect(recorded[0]?.stretch.wholePass).toBe(false);
    pass(2 * BAR);
    expect(recorded[1]?.stretch.wholePass).toBe(true);
  });

  it('begin with the music when listening begins in the count-in', () => {
    const { player, takes, recorded, pass } = bench();
    player.play(request(everyStep(2), { countInBars: 2 }));
    player.pass(0.1);
    takes.begin();
    pass(5 * BAR);
    expect(recorded.map(({ take }) => take.fromPlayTick)).toEqual([0]);
  });

  it('are cut off by Stop at the last whole bar, and not at all when nothing was played', () => {
    for (const plays of [true, false]) {
      const { player, recorded, pass, play } = bench();
      pass(0.2);
      player.play(request(everyStep(4)));
      if (plays) play(60, 210);
      pass(2.4 * BAR);
      player.stop();
      pass(0.2);
      expect(recorded.map(({ take }) => take.toPlayTick)).toEqual(plays ? [3840] : []);
    }
  });

  it('keep the tempo of the whole pass when it changes on the way', () => {
    const { player, recorded, pass, play } = bench();
    pass(0.2);
    player.play(request(everyStep(2)));
    play(60, 250);
    pass(BAR);
    player.setTempo(halfNotesPerMinute(TEMPO / 2));
    pass(7 * BAR);
    const tempo = recorded[0]?.take.tempo ?? [];
    expect(tempo.length).toBe(2);
    expect(tempo.map((segment) => segment.tempo)).toEqual([TEMPO, TEMPO / 2]);
  });

  it('are coarse where the stamps were, and where the clock jumped or the page was away', () => {
    const rough = bench();
    rough.pass(0.2);
    rough.player.play(request(everyStep(2)));
    rough.play(60, 250, true);
    rough.pass(3 * BAR);
    expect(rough.recorded[0]?.take.timing).toBe('coarse');
    expect(rough.recorded[0]?.interrupted).toBeNull();

    const away = bench();
    away.pass(0.2);
    away.player.play(request(everyStep(2)));
    away.play(60, 250);
    away.pass(BAR);
    away.takes.interrupt('page was away');
    away.pass(4 * BAR);
    expect(away.recorded.map(({ interrupted }) => interrupted)).toEqual(['page was away', null]);
  });

  it('of thirty minutes stay small: what was judged is forgotten', () => {
    const { player, recorded, pass, play } = bench();
    pass(0.2);
    player.play(request(everyStep(2)));
    pass(1800, (atMs) => play(60 + (Math.round(atMs / 200) % 12), atMs));
    expect(recorded.length).toBeGreaterThan(300);
    expect(recorded.every(({ take }) => take.notes.length < 80)).toBe(true);
    expect(recorded.every(({ heard }) => heard > 0)).toBe(true);
  });

  it('of claps and of keys without pitch hold onsets alone', () => {
    const { player, takes, recorded, pass } = bench({ ...TERMS, pitched: false, latencyMs: 40, trust: 'uncalibrated' });
    pass(0.2);
    player.play(request(everyStep(2)));
    takes.hear({ kind: 'onset', strength: 0.5, at: inputMillis(340), coarse: false });
    pass(3 * BAR);
    const [note] = recorded[0]?.take.notes ?? [];
    expect(note).toMatchObject({ midi: null, until: null });
    expect(note && Math.round(note.at * 1000)).toBe(100);
    expect(recorded[0]?.take.timing).toBe('uncalibrated');
  });
});
