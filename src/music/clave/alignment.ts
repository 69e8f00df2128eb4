import type { Direction } from '../../vocabulary';

/** Why a rhythm states a direction, as data for one plain sentence. */
export interface AlignmentReason {
  /** A rhythm recognised by name (`son clave`, `cáscara`, …), or null when the score decided. */
  readonly name: string | null;
  /** Steps of the stated 2-side (0–7) whose strokes or rests speak most for the verdict, largest first. */
  readonly twoSideSounds: readonly number[];
  readonly twoSideSilent: readonly number[];
  readonly threeSideSounds: readonly number[];
  readonly threeSideSilent: readonly number[];
}

/** What a rhythm states against a clave, and why. */
export interface Alignment {
  /** Against the clave asked about; null when none was given. */
  readonly verdict: 'aligned' | 'neutral' | 'crossed' | null;
  readonly states: Direction | 'neutral';
  /** Positive states 2-3, whatever the clave. */
  readonly score: number;
  readonly reason: AlignmentReason;
}
