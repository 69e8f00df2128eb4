import type { Key } from '../../music/pitch/key';
import { diatonicPcs, nameInKey } from '../../music/pitch/key';
import { mod12 } from '../../music/pitch/spell';

/** Where a note goes by one step of the key's scale: by how many semitones, and the name it comes to. */
export interface ScaleStep {
  readonly semitones: number;
  /** Without octave, ASCII. */
  readonly name: string;
}

/** The next note of the key's scale above or below; from a note outside the scale, the nearest of the scale that way. Example: C♯ in D goes up to D. */
export function scaleStep(midi: number, key: Key, way: 1 | -1): ScaleStep {
  const scale = diatonicPcs(key);
  let semitones: number = way;
  while (!scale.has(mod12(midi + semitones))) semitones += way;
  return { semitones, name: nameInKey(mod12(midi + semitones), key) };
}
