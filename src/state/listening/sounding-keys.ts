import type { Player } from '../ports';
import type { Played } from './ports';

/** Sounds what a silent controller plays, each note as long as its key or the damper pedal holds it. */
export function createSoundingKeys(player: () => Pick<Player, 'hold' | 'letGo'> | null): (played: Played) => void {
  let pedal = false;
  const waiting = new Set<number>();
  return (played) => {
    switch (played.kind) {
      case 'note on':
        waiting.delete(played.midi);
        player()?.hold(played.midi, played.velocity);
        break;
      case 'note off':
        if (pedal) waiting.add(played.midi);
        else player()?.letGo(played.midi);
        break;
      case 'pedal':
        pedal = played.down;
        if (pedal) break;
        for (const midi of waiting) player()?.letGo(midi);
        waiting.clear();
        break;
      case 'onset':
        break;
    }
  };
}
