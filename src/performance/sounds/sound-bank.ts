import type { PartName } from '../performance';
import { percussionSound } from './percussion-sounds';
import type { InstrumentName } from './sample-set';
import { STRONG_FROM } from './sample-set';

/*
 * A bank holds the decoded sounds of one instrument and answers which one a note takes and how it must be bent.
 * It knows nothing of where the sounds come from, so recordings can take the place of made sounds while music plays.
 */

/** A sound in memory. `midi` is null for drums. */
export interface BankSound<Buffer> {
  readonly buffer: Buffer;
  readonly midi: number | null;
  readonly drum: string | null;
  /** Velocity at which it has its own level. */
  readonly velocity: number;
}

/** What to play for an event. */
export interface Picked<Buffer> {
  readonly buffer: Buffer;
  /** Playback rate at A = 440. */
  readonly rate: number;
  readonly gain: number;
}

/** Which instrument plays an event. */
export function instrumentOf(event: { readonly part: PartName; readonly midi: number | null }): InstrumentName {
  return event.midi === null ? 'drums' : event.part === 'bass' ? 'bass' : 'piano';
}

/** The sound for an event, or null when the bank is empty. Loudness goes with the square of velocity, as in the recordings. */
export function pickSound<Buffer>(
  bank: readonly BankSound<Buffer>[],
  event: { readonly midi: number | null; readonly drum: string | null; readonly velocity: number },
): Picked<Buffer> | null {
  const sound = event.midi === null ? drumSound(bank, event.drum ?? '') : noteSound(bank, event.midi, event.velocity);
  if (sound === undefined) return null;
  const rate = event.midi === null || sound.midi === null ? 1 : 2 ** ((event.midi - sound.midi) / 12);
  return { buffer: sound.buffer, rate, gain: (event.velocity / sound.velocity) ** 2 };
}

/** The nearest pitch of the layer for this velocity; of two equally near, the lower, so that notes are bent up. */
function noteSound<Buffer>(bank: readonly BankSound<Buffer>[], midi: number, velocity: number): BankSound<Buffer> | undefined {
  const layer = bank.filter((sound) => sound.velocity >= STRONG_FROM === velocity >= STRONG_FROM);
  return (layer.length > 0 ? layer : bank).reduce<BankSound<Buffer> | undefined>((best, sound) => {
    const distance = Math.abs((sound.midi ?? 0) - midi);
    return best === undefined || distance < Math.abs((best.midi ?? 0) - midi) ? sound : best;
  }, undefined);
}

function drumSound<Buffer>(bank: readonly BankSound<Buffer>[], drum: string): BankSound<Buffer> | undefined {
  const named = (name: string) => bank.find((sound) => sound.drum === name);
  const served = percussionSound(drum);
  return named(drum) ?? (served === null ? undefined : named(served)) ?? named('shell') ?? bank[0];
}
