import type { Span } from './strokes-to-events';
import type { WrittenPitch } from './written-pitch';

/** How much fingering is printed: none, where it differs from the last of its shape in the system of bars, or on every note. */
export const FINGERINGS = ['none', 'changes', 'every note'] as const;
export type Fingering = (typeof FINGERINGS)[number];

const BLACK: readonly number[] = [1, 3, 6, 8, 10];
const isBlack = (midi: number): boolean => BLACK.includes(midi % 12);

/**
 * Fingers for the notes of one hand, lowest first; empty where the hand's own choice serves as well (single notes). Octaves 1–5, or 1–4 with
 * a black key on top; thirds and fourths 2–4, seconds 2–3, fifths and sixths 1–4. Inner notes of a full octave take 2 and 3. The left hand mirrors
 * this, its black key at the bottom. Common practice, no source; a hand that is small or hurts takes what its teacher says.
 */
export function fingersFor(pitches: readonly Pick<WrittenPitch, 'midi'>[], hand: 'right' | 'left'): number[] {
  const midi = pitches.map((pitch) => pitch.midi);
  if (midi.length < 2) return [];
  const low = midi[0] ?? 0;
  const high = midi.at(-1) ?? 0;
  const span = high - low;
  // Which end the weak fingers are on: the top of the right hand, the bottom of the left.
  const outer = hand === 'right' ? high : low;
  const inner = midi.slice(1, -1).map((note) => (hand === 'right' ? note - low : high - note));
  const rising = outerFingers(span, isBlack(outer), inner);
  return hand === 'right' ? rising : rising.toReversed();
}

/** Fingers from the thumb's side outwards. */
function outerFingers(span: number, black: boolean, inner: readonly number[]): number[] {
  if (inner.length === 0) {
    if (span <= 2) return [2, 3];
    if (span <= 5) return [2, 4];
    if (span <= 9) return [1, 4];
    return [1, black ? 4 : 5];
  }
  if (span < 10) return inner.length === 1 ? [1, 2, 4] : [1, 2, 3, 5];
  if (inner.length === 1) return [1, (inner[0] ?? 0) <= 5 ? 2 : 3, 5];
  return inner.length === 2 ? [1, 2, 3, 5] : [1, 2, 3, 4, 5];
}

/**
 * The spans with the fingers that are printed. With `changes`, a shape (by its number of notes and whether it is an octave) shows its fingers when it
 * first comes after one of `freshAt` (ticks in order, where the reader starts anew) and whenever they differ from the last time.
 */
export function withFingers(spans: readonly Span[], hand: 'right' | 'left', fingering: Fingering, freshAt: readonly number[]): Span[] {
  if (fingering === 'none') return [...spans];
  const shown = new Map<string, string>();
  let next = 0;
  return spans.map((span) => {
    while ((freshAt[next] ?? Number.POSITIVE_INFINITY) <= span.from) {
      shown.clear();
      next++;
    }
    const fingers = fingersFor(span.pitches, hand);
    const reach = (span.pitches.at(-1)?.midi ?? 0) - (span.pitches[0]?.midi ?? 0);
    const shape = `${span.pitches.length} ${reach >= 10 ? 'octave' : 'inside'}`;
    const same = shown.get(shape) === String(fingers);
    shown.set(shape, String(fingers));
    return { ...span, fingers: fingering === 'changes' && same ? [] : fingers };
  });
}
