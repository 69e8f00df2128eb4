import { alignmentSentence } from '../../words/alignment-sentence';
import { FIGURE_SCREEN } from '../../words/figure-screen';
import { MUSIC_TEXTS } from '../../words/music-texts';
import { NOTICES } from '../../words/notice';
import { useDesk } from '../app/desk-context';
import { Word } from '../glossary/Word';
import { Worded } from '../glossary/Worded';
import { EditTools } from './EditTools';

/** What the figure states against the clave and why, and what else is worth knowing about chart and figure. */
export function StatesGroup() {
  const score = useDesk((state) => state.music?.score ?? null);
  if (!score) return null;
  const notices = [...new Set(score.notices.map((notice) => NOTICES.sentence(notice)))];
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
      {notices.length > 0 && (
        <>
          <h3>{FIGURE_SCREEN.notices}</h3>
          <ul className="worth-knowing">
            {notices.map((notice) => (
              <li key={notice}>
                <Worded text={notice} />
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
