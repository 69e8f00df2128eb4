import type { Habit } from '../../layout/notation/notation';
import { STAFF_WORDS } from '../../words/sheet';

/** The switch between cut time in eighths and one bar a clave cycle in sixteenths; it holds for staff and sheet alike. */
export function HabitSwitch({ habit, onHabit }: { readonly habit: Habit; readonly onHabit: (habit: Habit) => void }) {
  const joined = habit === 'sixteenths';
  return (
    <button type="button" className="staff-habit" aria-pressed={joined} onClick={() => onHabit(joined ? 'eighths' : 'sixteenths')}>
      {STAFF_WORDS.sixteenths}
    </button>
  );
}
