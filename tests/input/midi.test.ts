import { describe, expect, it } from 'vitest';
import { createMidi } from '../../src/input/midi';
import type { Played } from '../../src/state/listening/ports';
import { inputMillis } from '../../src/vocabulary';
import { FakeMidi, FakePort } from './fake-midi';

function desk(midi = new FakeMidi(), request: (() => Promise<MIDIAccess>) | null = async () => midi.asAccess()) {
  let now = 1000;
  let away: () => void = () => undefined;
  let asked = 0;
  const made = createMidi({
    request:
      request &&
      (() => {
        asked += 1;
        return request();
      }),
    now: () => now,
    onAway: (listener) => {
      away = listener;
      return () => {
        away = () => undefined;
      };
    },
  });
  const played: Played[] = [];
  made.source.onPlayed((each) => played.push(each));
  return {
    ...made,
    midi,
    played,
    asked: () => asked,
    leave: () => away(),
    at: (ms: number) => {
      now = ms;
    },
  };
}

describe('a MIDI keyboard', () => {
  it('is asked for only when it is wanted', async () => {
    const { source, asked } = desk();
    expect(asked()).toBe(0);
    expect(source.state()).toEqual({ kind: 'off' });
    await source.open();
    expect(asked()).toBe(1);
  });

  it('plays notes with the stamps of its messages, on all channels of all inputs', async () => {
    const { source, midi, played, at } = desk();
    const one = midi.plug('1');
    const two = midi.plug('2');
    await source.open();
    at(1010);
    one.play([0x90, 60, 90], 1008.5);
    two.play([0x95, 64, 70], 1009);
    one.play([0x90, 60, 0], 1009.5);
    expect(played).toEqual([
      { kind: 'note on', midi: 60, velocity: 90, at: 1008.5, coarse: false },
      { kind: 'note on', midi: 64, velocity: 70, at: 1009, coarse: false },
      { kind: 'note off', midi: 60, at: 1009.5 },
    ]);
    expect(source.state()).toEqual({
      kind: 'listening',
      devices: [
        { id: '1', name: 'Ferry 1' },
        { id: '2', name: 'Ferry 2' },
      ],
    });
  });

  it('waits for a plug, and meets a device that comes later', async () => {
    const { source, midi, played } = desk();
    await source.open();
    expect(source.state()).toEqual({ kind: 'no device' });
    midi.plug('1').play([0x90, 60, 90], 1000);
    expect(source.state().kind).toBe('listening');
    expect(played).toHaveLength(1);
  });

  it('lets go what was held when it is unplugged, says so, and comes back by itself', async () => {
    const { source, midi, played, at } = desk();
    const keyboard = midi.plug('1');
    await source.open();
    keyboard.play([0x90, 60, 90], 1000);
    keyboard.play([0x90, 64, 90], 1000);
    keyboard.play([0x80, 60, 0], 1000);
    at(1500);
    midi.unplug('1');
    expect(played.at(-1)).toEqual({ kind: 'note off', midi: 64, at: 1500 });
    expect(played.filter(({ kind }) => kind === 'note off')).toHaveLength(2);
    expect(source.state()).toEqual({ kind: 'lost', device: 'Ferry 1' });
    midi.plug('1');
    expect(source.state().kind).toBe('listening');
  });

  it('lets go what is held when the page is left, when it is closed, and on All Notes Off', async () => {
    for (const how of ['leave', 'close', 'all off'] as const) {
      const { source, midi, played, leave } = desk();
      const keyboard = midi.plug('1');
      await source.open();
      keyboard.play([0x90, 60, 90], 1000);
      if (how === 'leave') leave();
      else if (how === 'close') source.close();
      else keyboard.play([0xb0, 123, 0], 1000);
      expect(played.at(-1), how).toMatchObject({ kind: 'note off', midi: 60 });
      keyboard.play([0x80, 60, 0], 1001);
      expect(
        played.filter(({ kind }) => kind === 'note off'),
        how,
      ).toHaveLength(1);
    }
  });

  it.each([
    ['NotAllowedError', 'refused'],
    ['SecurityError', 'refused'],
    ['NotSupportedError', 'missing'],
    ['InvalidStateError', 'failed'],
  ])('%s on asking is the state "%s", and asking again is possible', async (name, kind) => {
    let first = true;
    const midi = new FakeMidi();
    midi.plug('1');
    const { source } = desk(midi, async () => {
      if (!first) return midi.asAccess();
      first = false;
      throw new DOMException('no', name);
    });
    await source.open();
    expect(source.state().kind).toBe(kind);
    await source.open();
    expect(source.state().kind).toBe('listening');
  });

  it('is missing where the browser has none', async () => {
    const { source } = desk(new FakeMidi(), null);
    await source.open();
    expect(source.state()).toEqual({ kind: 'missing' });
  });

  it('handles a message in well under half a millisecond', async () => {
    const { source, midi } = desk();
    const keyboard = midi.plug('1');
    await source.open();
    for (let warm = 0; warm < 2000; warm += 1) keyboard.play([0x90, 60, 90], 1000);
    const times: number[] = [];
    for (let turn = 0; turn < 20_000; turn += 1) {
      const from = performance.now();
      keyboard.play([turn % 2 ? 0x80 : 0x90, 60, 90], 1000);
      times.push(performance.now() - from);
    }
    times.sort((a, b) => a - b);
    expect(times[Math.floor(times.length * 0.95)]).toBeLessThan(0.5);
  });
});

describe('a piano that notes are sent to', () => {
  it('gets notes with their moments, and silence ends them', async () => {
    const midi = new FakeMidi();
    const piano = new FakePort('out', 'Stage piano');
    midi.outputs.set('out', piano);
    const { source, sink } = desk(midi);
    await source.open();
    expect(sink.outputs()).toEqual([{ id: 'out', name: 'Stage piano' }]);
    sink.send('out', 60, 90.4, inputMillis(1200), inputMillis(1400));
    expect(piano.sent).toEqual([
      { bytes: [0x90, 60, 90], at: 1200 },
      { bytes: [0x80, 60, 0], at: 1400 },
    ]);
    sink.silence();
    expect(piano.sent.slice(2).map(({ bytes }) => bytes)).toEqual([
      [0x80, 60, 0],
      [0x80, 60, 0],
      [0xb0, 123, 0],
    ]);
    piano.state = 'disconnected';
    sink.send('out', 61, 90, inputMillis(1500), inputMillis(1600));
    expect(piano.sent).toHaveLength(5);
  });
});
