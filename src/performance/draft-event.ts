import type { PartName } from './performance';

/** A sound before it has its id and its feel. */
export interface DraftEvent {
  readonly part: PartName;
  readonly tick: number;
  readonly soundingTicks: number;
  readonly midi: number | null;
  readonly drum: string | null;
  readonly velocity: number;
  readonly firstPassOnly: boolean;
}
