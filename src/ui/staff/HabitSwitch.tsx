import type { Habit } from '../../layout/notation/notation';
import { STAFF_WORDS } from '../../words/sheet';
import { useSheetDesk, useWrittenHabit } from '../sheet/sheets-context';

/** The switch between cut time in eighths and one bar a clave cycle in sixteenths; it holds for staff and sheet alike. Nothing where the page has no sheets. */
export function HabitSwitch() {
  const sheets = useSheetDesk();
  const habit = useWrittenHabit(sheets);
  if (!sheets) return null;
  const joined = habit === 'sixteenths';
  const other: Habit = joined ? 'eighths' : 'sixteenths';
  return (
    <button type="button" className="key" aria-pressed={joined} onClick={() => sheets.choose({ habit: other })}>
      {STAFF_WORDS.sixteenths}
    </button>
  );
}
