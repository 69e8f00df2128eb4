import type { PartName } from '../performance';

/** The levels that a player finds at first, 0 to 1. */
export const FIRST_LEVELS: Readonly<Record<PartName, number>> = {
  'piano right': 0.8,
  'piano left': 0.7,
  bass: 0.7,
  clave: 0.65,
  pulse: 0.35,
  percussion: 0.5,
};
