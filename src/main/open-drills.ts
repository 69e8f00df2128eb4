import type { Desk } from '../state/desk';
import { createDrills, type DrillsRoom } from '../state/drills/drills';
import type { Listening } from '../state/listening/listening';

/** Joins the drills to the desk and to what listens. Fetched when drills are first wanted. */
export const openDrills = (desk: Desk, listening: Listening): DrillsRoom => createDrills({ desk, listening, onEnd: () => undefined });
