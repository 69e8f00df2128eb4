import type { Degree } from '../../vocabulary';

/** The family a chord belongs to, by its third, fifth and seventh. */
export type ChordFamily = 'major' | 'minor' | 'dominant' | 'half-diminished' | 'diminished' | 'augmented' | 'minor-major' | 'sus' | 'power';

/** One tone of a chord: what it is above the root, and how it is spelled. */
export interface ChordTone {
  readonly degree: Degree;
  /** 0 to 11 above the root. */
  readonly semitones: number;
  /** Pitch class, C = 0. */
  readonly pc: number;
  /** Spelled without octave, ASCII: `Ab`, `F#`, `Bbb`. */
  readonly name: string;
}

/** A chord symbol that has been read. `tones` holds exactly what the symbol says, root first, ascending by degree number. */
export interface Chord {
  /** The symbol as typed. */
  readonly symbol: string;
  /** Root, spelled as typed, ASCII. */
  readonly root: string;
  readonly rootPc: number;
  /** What stands after the root and before a slash, as typed. */
  readonly suffix: string;
  /** Written bass of a slash chord, or null. */
  readonly bass: string | null;
  /** Pitch class of the written bass, or of the root. */
  readonly bassPc: number;
  readonly family: ChordFamily;
  readonly tones: readonly ChordTone[];
}
