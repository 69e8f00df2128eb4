import { alignmentSentence } from '../../words/alignment-sentence';
import { FIGURE_SCREEN } from '../../words/figure-screen';
import { MUSIC_TEXTS } from '../../words/music-texts';
import { NOTICES } from '../../words/notice';
import { useDesk } from '../app/desk-context';
import { useHabit, useHabitsRoom } from '../app/habits-context';
import { Word } from '../glossary/Word';
import { Worded } from '../glossary/Worded';
import { EditTools } from './EditTools';

const NONE: readonly string[] = [];

/** What the figure states against the clave and why, and what else is worth knowing about chart and figure. */
export function StatesGroup() {
  const score = useDesk((state) => state.music?.score ?? null);
  if (!score) return null;
  const notices = NOTICES.sentences(score.notices);
  return (
    <section className="group" aria-label={FIGURE_SCREEN.direction}>
      <h3>
        <Word of="direction">{FIGURE_SCREEN.direction}</Word>
      </h3>
      <p>
        <strong>{score.alignment.verdict && MUSIC_TEXTS.verdict(score.alignment.verdict)}.</strong>{' '}
        <Worded text={alignmentSentence(score.alignment)} />
      </p>
      <p className="caption">{FIGURE_SCREEN.scope}</p>
      <EditTools />
      {notices.length > 0 && <WorthKnowing notices={notices} />}
    </section>
  );
}

/** Each fact once. A player who means it so puts them away, for this chart and for good. */
function WorthKnowing({ notices }: { readonly notices: readonly string[] }) {
  const chart = useDesk((state) => state.chartId);
  const room = useHabitsRoom();
  const known = useHabit(room, (habits) => habits.knownCharts, NONE);
  const away = known.includes(chart);
  const put = (): void => room?.change({ knownCharts: away ? known.filter((id) => id !== chart) : [...known, chart] });
  return (
    <>
      {!away && <h3>{FIGURE_SCREEN.notices}</h3>}
      {!away && (
        <ul className="worth-knowing">
          {notices.map((notice) => (
            <li key={notice}>
              <Worded text={notice} />
            </li>
          ))}
        </ul>
      )}
      <button type="button" className="plain put-away" onClick={put}>
        {away ? NOTICES.takeOut(notices.length) : NOTICES.putAway}
      </button>
    </>
  );
}
