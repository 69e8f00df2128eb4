import { dayOfDate, dueItems, dueNow } from '../../state/journal/due-items';
import type { Journal } from '../../state/journal/journal';
import type { Library } from '../../state/library/library';
import { JOURNAL_WORDS } from '../../words/journal';
import { TeacherAndStudent } from '../assignment/TeacherAndStudent';
import { useLibrary, useLibraryState } from '../chart/use-library';
import { DayLog } from './DayLog';
import { DueAgain } from './DueAgain';
import { Evening } from './Evening';
import { Notes } from './Notes';
import { Reached } from './Reached';
import { SessionOffer } from './SessionOffer';
import { TimingSteps } from './TimingSteps';
import { useJournal, useJournalState } from './use-journal';
import './journal.css';

/** The Journal place: what deserves the evening, what is due, what was played. */
export function JournalPlace() {
  const journal = useJournal();
  const library = useLibrary();
  if (!journal || !library) return <p className="empty">{JOURNAL_WORDS.loading}</p>;
  return <OpenJournal journal={journal} library={library} />;
}

function OpenJournal({ journal, library }: { readonly journal: Journal; readonly library: Library }) {
  const records = useJournalState(journal, (state) => state.records);
  const sets = useLibraryState(library, (state) => state.sets);
  const today = journal.today();
  const gig = sets.find(({ date }) => date !== null && dayOfDate(date) >= today) ?? null;
  const items = dueItems(
    records.map(({ record }) => record),
    journal.zone,
  );
  const due = dueNow(items, today, gig?.date ? dayOfDate(gig.date) : null);
  const any = records.length > 0;
  return (
    <div className="journal">
      <JournalNotices journal={journal} />
      {!any && (
        <div className="empty journal-empty">
          <p>
            <b>{JOURNAL_WORDS.empty}</b> {JOURNAL_WORDS.emptyHow}
          </p>
          <a href="#/practise">{JOURNAL_WORDS.emptyWay}</a>
        </div>
      )}
      <div className="journal-ahead">
        <Evening journal={journal} sets={sets} gig={gig} />
        {any && <DueAgain journal={journal} due={due} gig={gig} today={today} />}
        <SessionOffer journal={journal} due={due} today={today} />
      </div>
      <div className="journal-behind">
        {any && <DayLog journal={journal} />}
        {any && <Reached records={records} />}
        {any && <TimingSteps records={records} />}
        <Notes journal={journal} />
      </div>
      <TeacherAndStudent journal={journal} />
      <p className="caption journal-strain">
        {JOURNAL_WORDS.strain} {JOURNAL_WORDS.onThisDevice}
      </p>
    </div>
  );
}

function JournalNotices({ journal }: { readonly journal: Journal }) {
  const { refused, newer, unread, removed } = useJournalState(journal, (state) => state);
  return (
    <div className="journal-notices" aria-live="polite">
      {refused !== null && <p className="notice">{JOURNAL_WORDS.refused(refused)}</p>}
      {newer > 0 && <p className="caption">{JOURNAL_WORDS.newer(newer)}</p>}
      {unread > 0 && <p className="caption">{JOURNAL_WORDS.unread(unread)}</p>}
      {removed.length > 0 && (
        <p className="notice">
          {JOURNAL_WORDS.removed(removed.length)}
          <button type="button" className="plain" onClick={() => void journal.undoRemoval()}>
            {JOURNAL_WORDS.undo}
          </button>
        </p>
      )}
    </div>
  );
}
