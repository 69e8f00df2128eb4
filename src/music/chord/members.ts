import type { Degree } from '../../vocabulary';
import { mod12 } from '../pitch/spell';
import type { Chord, ChordTone } from './chord';

/** The chord members that voicings and lines are built from. */
export type Member = 'root' | 'third' | 'fifth' | 'sixth' | 'seventh';

const MEMBERS: Readonly<Record<Member, readonly Degree[]>> = {
  root: ['1'],
  third: ['3', 'b3'],
  fifth: ['5', 'b5', '#5'],
  sixth: ['6', 'b6'],
  seventh: ['b7', '7', 'bb7'],
};

/**
 * A member of the chord, or null if the symbol has none: sus chords have no third, `alt` has no fifth, and a 13 is not a sixth.
 * Example: `tone(chord, 'seventh')` of Cdim7 is Bbb, the degree bb7.
 */
export const tone = (chord: Chord, member: Member): ChordTone | null =>
  chord.tones.find(({ degree }) => MEMBERS[member].includes(degree)) ?? null;

/** A chord as the command line prints it. `degrees` and `tones` are parallel, root first; `pcs` ascending, each once, with the bass. */
export interface ChordDescription {
  readonly symbol: string;
  readonly root: string;
  readonly bass: string | null;
  readonly degrees: readonly Degree[];
  readonly tones: readonly string[];
  readonly pcs: readonly number[];
}

/** Describes a chord for people and programs outside: `C7/Bb` has the bass `Bb` and the pcs 0 4 7 10. */
export function describeChord(chord: Chord): ChordDescription {
  const pcs = new Set([...chord.tones.map(({ pc }) => mod12(pc)), chord.bassPc]);
  return {
    symbol: chord.symbol,
    root: chord.root,
    bass: chord.bass,
    degrees: chord.tones.map(({ degree }) => degree),
    tones: chord.tones.map(({ name }) => name),
    pcs: [...pcs].sort((a, b) => a - b),
  };
}
