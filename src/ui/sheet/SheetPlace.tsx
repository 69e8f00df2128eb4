import { useStore } from 'zustand';
import type { SheetDesk } from '../../state/sheet/sheet-desk';
import { SCREEN } from '../../words/screen';
import { useDesk, useDeskItself } from '../app/desk-context';
import { NoMusic } from '../app/NoMusic';
import { Sheet } from './Sheet';
import { useSheetDesk } from './sheets-context';

/** The Sheet place: the sheets of what lies on the desk, as they print. */
export function SheetPlace() {
  const sheets = useSheetDesk();
  const music = useDesk((state) => state.music);
  if (!music) {
    return <NoMusic />;
  }
  return sheets ? <Sheets sheets={sheets} /> : <p className="empty">{SCREEN.loading}</p>;
}

function Sheets({ sheets }: { readonly sheets: SheetDesk }) {
  const { run } = useDeskItself();
  const desk = useDesk((state) => state);
  const { choice, notes, refused } = useStore(sheets.sheet);
  const scores = sheets.scores(desk, choice);
  if (!scores || !notes) return <p className="empty">{SCREEN.loading}</p>;
  return (
    <Sheet
      scores={scores}
      choice={choice}
      onChoose={sheets.choose}
      notes={notes}
      onNote={sheets.note}
      refused={refused}
      tempo={desk.settings.tempo}
      goal={desk.settings.goalTempo}
      paper={desk.preferences.paper}
      onPaper={(chosen) => run({ kind: 'prefer', preferences: { paper: chosen } })}
      onMidi={() => run({ kind: 'save midi' })}
    />
  );
}
