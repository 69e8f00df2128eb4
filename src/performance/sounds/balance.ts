import type { PartName } from '../performance';
import type { InstrumentName } from './sample-set';

/* How loud the parts are against each other and how notes end: the live sound and the files read the same rows. */

/** How the parts stand to each other at equal levels: set on offline renderings so that the clave is heard over the full piano. */
export const PART_GAIN: Readonly<Record<PartName, number>> = {
  'piano right': 1.5,
  'piano left': 1.2,
  bass: 1.2,
  clave: 1.1,
  pulse: 0.8,
  percussion: 0.8,
};
/** How loud the count-in is, whatever the parts' levels. */
export const COUNT_IN_GAIN = 0.6;

/** A damper falls, a finger leaves the string: seconds of fading after a note's end. */
export const RELEASE_SECONDS: Readonly<Record<InstrumentName, number>> = { piano: 0.09, bass: 0.07, drums: 0.02 };
/** No note is held for less. */
export const SHORTEST_NOTE_SECONDS = 0.03;
