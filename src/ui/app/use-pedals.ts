import { useEffect } from 'react';
import type { Desk } from '../../state/desk';
import type { HabitsRoom } from '../../state/habits/habits';
import { PEDAL_ACTIONS } from '../../state/habits/names';
import { isTextField } from './own-keys';

/** In a dialog keys are taught, not obeyed. */
const isInDialog = (target: EventTarget | null): boolean => target instanceof Element && target.closest('dialog') !== null;

/** Keys that were given to pedals do what they were given for, before any other use of them and whether or not single keys are on. */
export function usePedals(desk: Desk, room: HabitsRoom | null): void {
  useEffect(() => {
    if (!room) return;
    const onKeyDown = (event: KeyboardEvent): void => {
      const { pedals } = room.habits.getState();
      const action = PEDAL_ACTIONS.find((each) => pedals[each] !== null && pedals[each] === event.key);
      if (action === undefined || isTextField(event.target) || isInDialog(event.target)) return;
      event.preventDefault();
      event.stopPropagation();
      if (event.repeat) return;
      if (action === 'play or stop') desk.run({ kind: 'play or stop' });
      else if (action === 'forward' && desk.playing.getState().vamp === 'holding') desk.run({ kind: 'cue' });
      else desk.run({ kind: 'turn page', by: action === 'forward' ? 1 : -1 });
    };
    window.addEventListener('keydown', onKeyDown, true);
    return () => window.removeEventListener('keydown', onKeyDown, true);
  }, [desk, room]);
}
