import type { Accidental } from './notation';
import { signatureAlter, type WrittenPitch } from './written-pitch';

/** What the accidental rule needs to know of a note or chord, in order of time. */
export interface SignedEvent {
  readonly pitches: readonly WrittenPitch[];
  readonly tieIn: boolean;
}
/** The sign before one note head, if any. */
export interface Sign {
  readonly accidental: Accidental | null;
  readonly courtesy: boolean;
}

const SIGNS: Readonly<Record<number, Accidental>> = { 0: 'n', 1: '#', 2: '##', [-1]: 'b', [-2]: 'bb' };

/**
 * Signs for one staff, bar by bar. A sign holds for its own line or space until the barline. A tied note never gets one, and a sign
 * tied over the barline holds for that note alone. Where the last bar (or a note tied in from it) had the same place altered
 * otherwise, a courtesy sign reminds the reader once. Returns, for each bar, event and pitch, its sign.
 * Common practice of engraving, no source.
 */
export function signs(bars: readonly { readonly fifths: number; readonly events: readonly SignedEvent[] }[]): Sign[][][] {
  let before = new Map<string, number>();
  return bars.map((bar) => {
    const inForce = new Map<string, number>();
    const sounded = new Map<string, number>();
    const result = bar.events.map((event, at) =>
      event.pitches.map((pitch) => {
        const place = pitch.letter + pitch.octave;
        sounded.set(place, pitch.alter);
        if (event.tieIn) {
          if (at === 0) before.set(place, pitch.alter);
          return { accidental: null, courtesy: false };
        }
        const expected = inForce.get(place) ?? signatureAlter(pitch.letter, bar.fifths);
        const reminded = !inForce.has(place) && before.has(place) && before.get(place) !== pitch.alter;
        inForce.set(place, pitch.alter);
        const needed = pitch.alter !== expected;
        return { accidental: needed || reminded ? (SIGNS[pitch.alter] ?? null) : null, courtesy: !needed && reminded };
      }),
    );
    before = sounded;
    return result;
  });
}
