import type { Journal } from '../../state/journal/journal';
import type { Session } from '../../state/journal/journal-state';
import { JOURNAL_WORDS } from '../../words/journal';
import { sessionBlock } from './session-block';
import { useJournalState } from './use-journal';
import './session.css';

/** What the session is at now, and, at the end of a loop, what it offers next. */
export function SessionLine({ journal }: { readonly journal: Journal }) {
  const session = useJournalState(journal, (state) => state.session);
  if (!session) return null;
  const { prompt } = session.run;
  const rests = prompt === 'rest' || prompt === 'break';
  return (
    <section className="session-line" aria-label={JOURNAL_WORDS.sessionName}>
      <p>
        <b>{partOf(session)}</b> <span role="status">{prompt && JOURNAL_WORDS.prompt[prompt]}</span>
        {prompt === 'over' && session.left.length > 0 && <span> {JOURNAL_WORDS.tomorrow(session.left.map(sessionBlock))}</span>}
      </p>
      {prompt && (
        <button type="button" className="key" onClick={journal.goOnSession}>
          {JOURNAL_WORDS.go[prompt]}
        </button>
      )}
      {(rests || prompt === null) && (
        <button type="button" className="plain" onClick={rests ? journal.passOver : journal.goOnSession}>
          {JOURNAL_WORDS.passOver}
        </button>
      )}
      <button type="button" className="plain" onClick={journal.endSession}>
        {JOURNAL_WORDS.end}
      </button>
    </section>
  );
}

function partOf({ run, items }: Session): string {
  const part = run.plan.parts[run.part];
  if (!part) return '';
  if (part.kind !== 'play') return JOURNAL_WORDS.part[part.kind];
  const item = items.find(({ id }) => id === part.item);
  return item ? sessionBlock(item) : '';
}
