import { PARTS as ALL, type PartName } from '../performance/performance';

/** The parts that can be balanced, in the order they are shown. */
export const PARTS: readonly PartName[] = ALL;
