/** What a MIDI message means to a player of notes; everything else (clock, active sensing, other controllers) is null. */
export type MidiMessage =
  | { readonly kind: 'note on'; readonly midi: number; readonly velocity: number }
  | { readonly kind: 'note off'; readonly midi: number }
  /** The damper pedal. */
  | { readonly kind: 'pedal'; readonly down: boolean }
  | { readonly kind: 'all off' };

const NOTE_OFF = 0x80;
const NOTE_ON = 0x90;
const CONTROL = 0xb0;
/** Controllers that end every note: All Sound Off, All Notes Off and the four mode messages (MIDI 1.0 Detailed Specification, channel mode messages). */
const ALL_SOUND_OFF = 120;
const ALL_NOTES_OFF = 123;
/** Damper pedal, on from 64 (MIDI 1.0 Detailed Specification, table III: controller numbers). */
const DAMPER = 64;
const DAMPER_DOWN = 64;

/**
 * Reads one whole message, as the Web MIDI API delivers it (running status expanded). All channels are one keyboard; a note-on of
 * velocity 0 is a note-off (MIDI 1.0). `readMidiMessage([0x91, 60, 0])` is a note-off of middle C.
 */
export function readMidiMessage(bytes: ArrayLike<number>): MidiMessage | null {
  const status = bytes[0] ?? 0;
  const first = (bytes[1] ?? 0) & 0x7f;
  const second = (bytes[2] ?? 0) & 0x7f;
  // System messages have no channel: 0xF0 and above.
  if (status >= 0xf0 || bytes.length < 3) return null;
  switch (status & 0xf0) {
    case NOTE_ON:
      return second === 0 ? { kind: 'note off', midi: first } : { kind: 'note on', midi: first, velocity: second };
    case NOTE_OFF:
      return { kind: 'note off', midi: first };
    case CONTROL:
      if (first === DAMPER) return { kind: 'pedal', down: second >= DAMPER_DOWN };
      return first === ALL_SOUND_OFF || first >= ALL_NOTES_OFF ? { kind: 'all off' } : null;
    default:
      return null;
  }
}
