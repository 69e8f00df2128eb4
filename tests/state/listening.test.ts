// long because every room of listening is tried on one bench

import { describe, expect, it } from 'vitest';
import { createRecorderPlayer } from '../../src/audio/recorder-player';
import type { Music } from '../../src/state/pipeline';
import { halfNotesPerMinute, inputMillis, TEMPO_RANGE } from '../../src/vocabulary';
import { BAR, everyStep, request } from '../audio/player-bench';
import { bench } from './listening-bench';

describe('listening', () => {
  it('opens nothing until a source is chosen, and lets it go', async () => {
    const { listening, sources, ticks, store } = bench();
    expect(sources.midi.current.kind).toBe('off');
    listening.choose('midi');
    expect(store.getState()).toMatchObject({ source: 'midi', device: { kind: 'listening' } });
    listening.choose('keys');
    expect(sources.midi.current.kind).toBe('off');
    listening.close();
    expect(sources.keys.current.kind).toBe('off');
    expect(ticks.size).toBe(0);
    expect(store.getState().source).toBeNull();
  });

  it('damps a key that still sounds when its sound is switched off, and when nothing is listened to any more', () => {
    const { listening, player, sources } = bench();
    const calls: string[] = [];
    Object.assign(player, { hold: (midi: number) => calls.push(`hold ${midi}`), letGo: (midi: number) => calls.push(`let go ${midi}`) });
    const press = (midi: number) => sources.midi.play({ kind: 'note on', midi, velocity: 90, at: inputMillis(0), coarse: false });
    listening.choose('midi');
    listening.set({ soundsNotes: true });
    press(60);
    listening.set({ soundsNotes: false });
    expect(calls).toEqual(['hold 60', 'let go 60']);
    listening.set({ soundsNotes: true });
    press(64);
    listening.close();
    expect(calls.slice(2)).toEqual(['hold 64', 'let go 64']);
  });

  it('judges every pass and counts the clean ones of the loop', async () => {
    const { listening, player, sources, pass, playAlong, store, now } = bench();
    listening.choose('midi');
    await pass(0.4);
    player.play(request(everyStep(2)));
    playAlong(sources.midi, now(), 3, 4);
    await pass(6 * BAR + 0.6);
    const { report, tally } = store.getState();
    expect(report?.assessment.clean).toBe(true);
    expect(tally).toMatchObject({ passes: 3, clean: 3, cleanInARow: 3 });
  });

  it('says when nothing is heard, and does not call it a pass', async () => {
    const { listening, player, pass, store } = bench();
    listening.choose('midi');
    await pass(0.4);
    player.play(request(everyStep(2)));
    await pass(4 * BAR + 0.6);
    expect(store.getState()).toMatchObject({ silent: 2, tally: null, report: null });
  });

  it('measures a delay, keeps it under the name of the device, and takes it off what is played', async () => {
    const { listening, player, sources, pass, playAlong, store, kept, now } = bench();
    listening.choose('midi');
    await pass(0.4);
    listening.calibrate();
    await pass(0.2);
    expect(store.getState().calibrating.kind).toBe('clicking');
    const from = player.music()?.songZero ?? 0;
    for (let click = 0; click < 18; click += 1)
      sources.midi.play({ kind: 'note on', midi: 60, velocity: 90, at: inputMillis((from + click / 2) * 1000 + 55), coarse: false });
    await pass(11);
    expect(store.getState().calibrating.kind).toBe('off');
    expect(Math.round(store.getState().calibration?.latencyMs ?? 0)).toBe(55);
    expect(kept.get('calibrations')).toContain('Ferry 1');
    player.play(request(everyStep(2)));
    playAlong(sources.midi, now(), 2, 55);
    await pass(4 * BAR + 0.6);
    const { report } = store.getState();
    expect(report?.take.timing).toBe('calibrated');
    expect(Math.abs(report?.matched.offsetMs ?? 99)).toBeLessThan(2);
  });

  it('fails kindly when nobody taps', async () => {
    const { listening, pass, store } = bench();
    listening.choose('midi');
    await pass(0.4);
    listening.calibrate();
    await pass(12);
    expect(store.getState().calibrating).toEqual({ kind: 'failed', why: 'too few' });
  });

  // Keys go to the tab in front; a keyboard and the microphone go on being heard with their own moments in a tab behind.
  it.each([
    ['keys', 'page was away'],
    ['midi', null],
    ['microphone', null],
  ] as const)(
    'in a tab that is hidden during a gap of the band, takes of %s are told to be incomplete only where they are',
    async (name, interrupted) => {
      let away = false;
      const { listening, player, sources, pass, playAlong, store, now } = bench({ hidden: () => away });
      listening.choose(name);
      listening.setBand({ gap: { on: 1, off: 1 } });
      await pass(0.4);
      player.play(request(everyStep(2)));
      playAlong(sources[name], now(), 1, 4);
      await pass(BAR * 1.2);
      away = true;
      await pass(BAR * 0.4);
      away = false;
      await pass(BAR * 0.4 + 0.6);
      expect(store.getState().report?.interrupted).toBe(interrupted);
      expect(store.getState().report?.matched.strokes.length).toBeGreaterThan(0);
    },
  );

  it('stops judging time on a wireless output', async () => {
    const player = createRecorderPlayer();
    const clock = player.clock();
    const wireless = { ...player, clock: () => clock && { ...player.clock(), latencyMs: 190 } } as typeof player;
    const { listening, pass, store } = bench({ player: () => wireless });
    listening.choose('midi');
    await pass(2);
    expect(store.getState().output).toBe('wireless');
  });

  it('replays the take, then goes back to the band', async () => {
    const { listening, player, sources, pass, playAlong, store, now } = bench();
    listening.choose('midi');
    await pass(0.4);
    player.play(request(everyStep(2)));
    playAlong(sources.midi, now(), 2, 4);
    await pass(4 * BAR + 0.6);
    listening.replay('band', 1);
    await pass(1);
    expect(store.getState().replaying).toMatchObject({ side: 'other' });
    const before = store.getState().report;
    expect(player.recorded().some(({ event }) => event.id >= 1_000_000)).toBe(true);
    player.stop();
    await pass(0.4);
    expect(store.getState().replaying).toBeNull();
    expect(store.getState().report, 'the replay itself is not judged').toBe(before);
  });

  it('plays the bars that a finding names, as a loop and slower where that is asked', async () => {
    const { listening, player, sources, commands, desk, pass, playAlong, now } = bench();
    desk.setState({ music: { score: { form: { bars: [{ tick: 0 }, { tick: 1920 }] } } } as unknown as Music });
    expect(listening.loopOf({ fromBar: 0, toBar: 2 }), 'no report yet').toBeNull();
    listening.playLoop({ fromBar: 0, toBar: 2 });
    expect(commands, 'nor anything to loop').toEqual([]);
    listening.choose('midi');
    await pass(0.4);
    player.play(request(everyStep(2)));
    playAlong(sources.midi, now(), 2, 4);
    await pass(4 * BAR + 0.6);
    const before = commands.length;
    const slower = listening.slowerThan(halfNotesPerMinute(120));
    expect(slower).toBe(96);
    expect(listening.slowerThan(halfNotesPerMinute(TEMPO_RANGE.from)), 'no slower than the slowest').toBeNull();
    listening.playLoop({ fromBar: 0, toBar: 2 }, slower ?? undefined);
    expect(commands.slice(before)).toEqual([
      { kind: 'loop bars', loop: { fromBar: 0, toBar: 2 } },
      { kind: 'set', settings: { tempo: 96 } },
      { kind: 'play' },
    ]);
  });

  it('keeps ratings by ear', () => {
    const { listening, store } = bench();
    listening.rate('nearly');
    listening.rate('clean');
    expect(store.getState().ratings).toEqual(['nearly', 'clean']);
  });
});
