/** The damper pedal: notes ring until it comes up, in what is judged and in what sounds. */
import { describe, expect, it } from 'vitest';
import { createPlayedNotes } from '../../src/state/listening/played-notes';
import type { Played } from '../../src/state/listening/ports';
import { createSoundingKeys } from '../../src/state/listening/sounding-keys';
import { inputMillis } from '../../src/vocabulary';

const on = (midi: number, at: number): Played => ({ kind: 'note on', midi, velocity: 80, at: inputMillis(at), coarse: false });
const off = (midi: number, at: number): Played => ({ kind: 'note off', midi, at: inputMillis(at) });
const pedal = (down: boolean, at: number): Played => ({ kind: 'pedal', down, at: inputMillis(at) });

describe('Notes under the pedal', () => {
  it('ring until it comes up, or until their key is struck again', () => {
    const played = createPlayedNotes();
    for (const one of [pedal(true, 0), on(60, 10), off(60, 20), on(64, 30), off(64, 40), on(60, 50), pedal(false, 90), off(60, 100)])
      played.hear(one);
    expect(played.notes().map(({ midi, at, until }) => [midi, at, until])).toEqual([
      [60, 10, 50],
      [64, 30, 90],
      [60, 50, 100],
    ]);
  });

  it('end with their key where no pedal is down', () => {
    const played = createPlayedNotes();
    for (const one of [on(60, 10), off(60, 20), pedal(true, 30), pedal(false, 40)]) played.hear(one);
    expect(played.notes().map(({ until }) => until)).toEqual([20]);
  });

  it('are damped in what sounds when it comes up', () => {
    const calls: string[] = [];
    const { hear } = createSoundingKeys(() => ({
      hold: (midi) => calls.push(`hold ${midi}`),
      letGo: (midi) => calls.push(`let go ${midi}`),
    }));
    for (const one of [on(60, 0), off(60, 5), pedal(true, 10), on(62, 20), off(62, 30), on(64, 40), pedal(false, 50), off(64, 60)])
      hear(one);
    expect(calls).toEqual(['hold 60', 'let go 60', 'hold 62', 'hold 64', 'let go 62', 'let go 64']);
  });

  it('are damped, held by key or by pedal, when they are not to sound any more', () => {
    const calls: string[] = [];
    const keys = createSoundingKeys(() => ({ hold: (midi) => calls.push(`hold ${midi}`), letGo: (midi) => calls.push(`let go ${midi}`) }));
    for (const one of [on(60, 0), pedal(true, 10), on(62, 20), off(62, 30)]) keys.hear(one);
    keys.silence();
    keys.silence();
    expect(calls).toEqual(['hold 60', 'hold 62', 'let go 60', 'let go 62']);
  });
});
