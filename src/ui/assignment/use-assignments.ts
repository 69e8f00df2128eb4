import { useStore } from 'zustand';
import type { AssignmentRoom, AssignmentState } from '../../state/assignment/assignment-state';

/** One value out of what teacher and student see. */
export function useAssignments<Value>(room: AssignmentRoom, select: (state: AssignmentState) => Value): Value {
  return useStore(room.store, select);
}
