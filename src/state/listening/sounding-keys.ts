import type { Player } from '../ports';
import type { Played } from './ports';

/** Sounds what is played; `silence` damps everything that still sounds, for when it is switched off with keys held. */
export interface SoundingKeys {
  readonly hear: (played: Played) => void;
  readonly silence: () => void;
}

/** Sounds what a silent controller plays, each note as long as its key or the damper pedal holds it. */
export function createSoundingKeys(player: () => Pick<Player, 'hold' | 'letGo'> | null): SoundingKeys {
  let pedal = false;
  /** Notes that sound, and whether a finger is on their key. */
  const held = new Map<number, boolean>();
  const letGo = (midi: number): void => {
    held.delete(midi);
    player()?.letGo(midi);
  };
  const release = (): void => {
    for (const [midi, down] of held) if (!down) letGo(midi);
  };
  return {
    hear: (played) => {
      switch (played.kind) {
        case 'note on':
          held.set(played.midi, true);
          player()?.hold(played.midi, played.velocity);
          break;
        case 'note off':
          if (pedal && held.has(played.midi)) held.set(played.midi, false);
          else letGo(played.midi);
          break;
        case 'pedal':
          pedal = played.down;
          if (!pedal) release();
          break;
        case 'onset':
          break;
      }
    },
    silence: () => {
      pedal = false;
      for (const midi of held.keys()) letGo(midi);
    },
  };
}
