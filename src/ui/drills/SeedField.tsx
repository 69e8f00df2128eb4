import type { DrillsRoom } from '../../state/drills/drills';

/** The largest number of a drill. */
const LARGEST = 9999;

/** A number that nobody chose. */
export const anySeed = (): number => 1 + (Date.now() % LARGEST);

/** What is given to a drill with a page of its own. */
export interface OwnDrillProps {
  readonly room: DrillsRoom;
  /** The number that sets it, or null for one that nobody chose. */
  readonly seed: number | null;
  readonly onLeave: () => void;
}

/** The number after another, round again after the largest. */
export const nextSeed = (seed: number): number => (seed % LARGEST) + 1;

/** The number that makes the same drill for a whole class. */
export function SeedField(props: { readonly label: string; readonly seed: number; readonly onSeed: (seed: number) => void }) {
  return (
    <label>
      {props.label}
      <input
        type="number"
        min={1}
        max={LARGEST}
        value={props.seed}
        onChange={(event) => props.onSeed(Math.max(1, Math.min(LARGEST, Math.round(event.target.valueAsNumber) || 1)))}
      />
    </label>
  );
}
