/** A microphone that hears nothing for a while, in the middle of a take: nothing is lost, and nobody is told to have missed strokes. */
import { describe, expect, it } from 'vitest';
import { inputMillis } from '../../src/vocabulary';
import { BAR, everyStep, request } from '../audio/player-bench';
import { bench } from './listening-bench';

const NAMED = [{ id: '1', name: 'Ferry 1' }];

/** Claps every step of `passes` passes of two bars from `from` seconds on. */
function playing() {
  const made = bench();
  const { listening, player, sources, pass, now } = made;
  listening.choose('microphone');
  const clap = (from: number, passes: number): void => {
    for (let step = 0; step < passes * 16; step += 1)
      sources.microphone.play({ kind: 'onset', strength: 0.5, at: inputMillis((from + (step * BAR) / 8) * 1000), coarse: false });
  };
  const begin = async (): Promise<number> => {
    await pass(0.4);
    player.play(request(everyStep(2)));
    return now();
  };
  return { ...made, clap, begin };
}

describe('a microphone that is held', () => {
  it.each(['muted', 'asleep'] as const)('(%s) keeps what was judged, leaves the pass uncounted, and goes on by itself', async (why) => {
    const { store, sources, pass, clap, begin } = playing();
    const from = await begin();
    clap(from, 1);
    await pass(2 * BAR + 0.6);
    const { report, tally } = store.getState();
    expect(report?.assessment.shareRight).toBe(1);
    expect(tally).toMatchObject({ passes: 1 });
    // In the second pass the first half is clapped, then it is held.
    clap(from + 2 * BAR, 0.5);
    await pass(0.8);
    sources.microphone.become({ kind: 'held', why, devices: NAMED });
    expect(store.getState()).toMatchObject({ source: 'microphone', device: { kind: 'held', why }, report, tally });
    await pass(2 * BAR - 0.8);
    expect(store.getState().report).toMatchObject({ pass: 1, interrupted: 'microphone was away' });
    expect(store.getState().tally).toEqual(tally);
    // A whole pass of silence is nobody's fault either.
    await pass(2 * BAR);
    expect(store.getState().silent).toBe(0);
    sources.microphone.become({ kind: 'listening', devices: NAMED });
    const next = from + 8 * BAR;
    clap(next, 1);
    await pass(4 * BAR + 0.6);
    expect(store.getState().report).toMatchObject({ pass: 4, interrupted: null });
    expect(store.getState().tally).toMatchObject({ passes: 2 });
  });

  it('is woken by a touch without a new take', async () => {
    const { listening, store, sources, pass, clap, begin } = playing();
    const from = await begin();
    clap(from, 1);
    await pass(2 * BAR + 0.6);
    const { report } = store.getState();
    sources.microphone.become({ kind: 'held', why: 'asleep', devices: NAMED });
    listening.wake();
    expect(store.getState()).toMatchObject({ device: { kind: 'listening' }, report, tally: { passes: 1 } });
  });
});
