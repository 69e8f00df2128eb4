import type { DraftEvent } from './draft-event';

/*
 * How percussion is struck: how loud each kind of stroke is, and what a roll is made of. Heard sound and MIDI file both read it,
 * so they cannot differ.
 */

/**
 * Loudness by kind of stroke, 1 to 127: accents and tones stand out, what the hand does between them is felt more than heard
 * (common practice, no source).
 */
export const STROKE_VELOCITIES: Readonly<Record<string, number>> = {
  stroke: 100,
  accent: 104,
  plain: 78,
  rimshot: 112,
  open: 96,
  'open low': 98,
  muffled: 74,
  low: 92,
  slap: 96,
  heel: 60,
  toe: 54,
  thumb: 60,
  fingers: 56,
  'soft open': 68,
  'soft slap': 64,
  mouth: 100,
  neck: 80,
  'long scrape': 90,
  'short scrape': 74,
};
const UNNAMED_VELOCITY = 80;

/** Velocity of a kind of stroke; a kind without a row is struck in the middle. */
export const strokeVelocity = (stroke: string): number => STROKE_VELOCITIES[stroke] ?? UNNAMED_VELOCITY;

/** One blow of a stroke: ticks after its place, and velocity. */
export interface Blow {
  readonly after: number;
  readonly velocity: number;
}

/** A roll fills a quarter note with eight blows that grow (common practice, no source). */
const ROLL: readonly Blow[] = Array.from({ length: 8 }, (_, blow) => ({ after: blow * 60, velocity: 60 + blow * 6 }));

/** The blows of a stroke: one, or those of a roll, which grow with the tempo's length of a quarter note. */
export const blowsOf = (stroke: string): readonly Blow[] => (stroke === 'roll' ? ROLL : [{ after: 0, velocity: strokeVelocity(stroke) }]);

/** Single sounds of a percussion part, named by instrument and kind of stroke (`conga open low`); none at or after `toTick`. */
export function percussionEvents(
  instrument: string,
  strokes: readonly { readonly tick: number; readonly stroke: string }[],
  soundingTicks: number,
  toTick: number,
): DraftEvent[] {
  return strokes.flatMap(({ tick, stroke }) =>
    blowsOf(stroke).flatMap(({ after, velocity }) =>
      after > 0 && tick + after >= toTick
        ? []
        : [
            {
              part: 'percussion',
              tick: tick + after,
              soundingTicks,
              midi: null,
              drum: `${instrument} ${stroke}`,
              velocity,
              firstPassOnly: false,
            },
          ],
    ),
  );
}
