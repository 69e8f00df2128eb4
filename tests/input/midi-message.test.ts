import { describe, expect, it } from 'vitest';
import { readMidiMessage } from '../../src/input/midi-message';

/** Status bytes and channel mode messages of the MIDI 1.0 Detailed Specification (tables I to III), entered from the published tables. */
const TABLE: readonly (readonly [string, readonly number[], ReturnType<typeof readMidiMessage>])[] = [
  ['note on, channel 1', [0x90, 60, 100], { kind: 'note on', midi: 60, velocity: 100 }],
  ['note on, channel 16', [0x9f, 127, 1], { kind: 'note on', midi: 127, velocity: 1 }],
  ['note on of velocity 0 is a note off', [0x93, 61, 0], { kind: 'note off', midi: 61 }],
  ['note off', [0x80, 60, 64], { kind: 'note off', midi: 60 }],
  ['note off, channel 10', [0x89, 60, 0], { kind: 'note off', midi: 60 }],
  ['all sound off', [0xb0, 120, 0], { kind: 'all off' }],
  ['all notes off', [0xb5, 123, 0], { kind: 'all off' }],
  ['poly mode on ends notes too', [0xb0, 127, 0], { kind: 'all off' }],
  ['reset all controllers does not', [0xb0, 121, 0], null],
  ['damper pedal down', [0xb0, 64, 127], { kind: 'pedal', down: true }],
  ['damper pedal half way counts as down', [0xb2, 64, 64], { kind: 'pedal', down: true }],
  ['damper pedal up', [0xb0, 64, 63], { kind: 'pedal', down: false }],
  ['soft pedal', [0xb0, 67, 127], null],
  ['pitch bend', [0xe0, 0, 64], null],
  ['channel pressure', [0xd0, 64], null],
  ['timing clock', [0xf8], null],
  ['active sensing', [0xfe], null],
  ['system exclusive', [0xf0, 0x7e, 0x7f, 0x06, 0x01, 0xf7], null],
  ['a message cut short', [0x90, 60], null],
  ['nothing', [], null],
];

describe('a MIDI message', () => {
  it.each(TABLE)('%s', (_, bytes, meaning) => {
    expect(readMidiMessage(Uint8Array.from(bytes))).toEqual(meaning);
  });

  it('means the same on all sixteen channels', () => {
    for (let channel = 0; channel < 16; channel += 1) {
      expect(readMidiMessage([0x90 + channel, 64, 80])).toEqual({ kind: 'note on', midi: 64, velocity: 80 });
      expect(readMidiMessage([0x80 + channel, 64, 80])).toEqual({ kind: 'note off', midi: 64 });
    }
  });
});
