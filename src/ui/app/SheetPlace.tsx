import { SCREEN } from '../../words/screen';
import { SheetPage } from '../sheet/SheetPage';
import { useDesk, useDeskItself } from './desk-context';

/** The Sheet place: the lesson sheet of what lies on the desk, as it prints. */
export function SheetPlace() {
  const { run, otherDirection } = useDeskItself();
  const music = useDesk((state) => state.music);
  const tempo = useDesk((state) => state.settings.tempo);
  const goal = useDesk((state) => state.settings.goalTempo);
  const paper = useDesk((state) => state.preferences.paper);
  const other = music && otherDirection();
  if (!music || !other) {
    return (
      <div className="empty">
        <p>{SCREEN.noMusic}</p>
        <a href="#/chart">{SCREEN.goToChart}</a>
      </div>
    );
  }
  return (
    <SheetPage
      score={music.whole}
      other={other}
      tempo={tempo}
      goal={goal}
      paper={paper}
      onPaper={(chosen) => run({ kind: 'prefer', preferences: { paper: chosen } })}
      onMidi={() => run({ kind: 'save midi' })}
    />
  );
}
