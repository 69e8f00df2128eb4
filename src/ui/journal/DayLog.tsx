import { useState } from 'react';
import { byDay, type JournalDay, type LoopOfDay } from '../../state/journal/by-day';
import type { Journal } from '../../state/journal/journal';
import { DRILLS } from '../../words/drills';
import { JOURNAL_WORDS } from '../../words/journal';
import { useDesk } from '../app/desk-context';
import { usePrint } from '../sheet/use-print';
import { useJournalState } from './use-journal';

/** Days that are shown before the earlier ones are asked for. */
const DAYS = 7;

/** What was played, day by day, the last first; the log that is printed and saved. */
export function DayLog({ journal }: { readonly journal: Journal }) {
  const records = useJournalState(journal, (state) => state.records);
  const [shown, setShown] = useState(DAYS);
  const { all, print } = usePrint();
  const days = byDay(records, journal.zone);
  return (
    <section aria-labelledby="lately" className="journal-log">
      <h2 id="lately">{JOURNAL_WORDS.lately}</h2>
      {(all ? days : days.slice(0, shown)).map((day) => (
        <Day key={day.day} day={day} journal={journal} />
      ))}
      <div className="journal-row no-print">
        {days.length > shown && (
          <button type="button" className="key" onClick={() => setShown(shown + DAYS * 4)}>
            {JOURNAL_WORDS.earlier}
          </button>
        )}
        <button type="button" className="key" onClick={() => journal.saveCsv()}>
          {JOURNAL_WORDS.csv}
        </button>
        <button type="button" className="key" onClick={print}>
          {JOURNAL_WORDS.print}
        </button>
      </div>
    </section>
  );
}

function Day({ day, journal }: { readonly day: JournalDay; readonly journal: Journal }) {
  return (
    <div className="journal-day">
      <h3>{JOURNAL_WORDS.day(day.at)}</h3>
      <ul>
        {day.loops.map((loop) => (
          <Loop key={loop.key} loop={loop} journal={journal} />
        ))}
        {day.others.map(({ id, record }) => {
          const what = record.kind === 'note' ? record.text : JOURNAL_WORDS.drillDone(drillName(record.drill), record.right, record.of);
          return (
            <li key={id} className="journal-entry">
              <p>
                {record.title !== '' && <span className="caption">{record.title}: </span>}
                {what}
              </p>
              <TakeOut journal={journal} ids={[id]} what={what} />
            </li>
          );
        })}
      </ul>
    </div>
  );
}

function Loop({ loop, journal }: { readonly loop: LoopOfDay; readonly journal: Journal }) {
  const unit = useDesk((state) => state.preferences.tempoUnit);
  const name = JOURNAL_WORDS.loop(loop.title, loop.fromBar, loop.toBar);
  const said = loop.said.slice(0, 3).map((kind) => wordOf(kind));
  return (
    <li className="journal-entry">
      <div>
        <p>
          <b>{name}</b> <span className="journal-tempo">{JOURNAL_WORDS.tempi(loop.slowest, loop.fastest, unit)}</span>
        </p>
        <p className="caption">
          {[JOURNAL_WORDS.passes(loop.clean, loop.passes), ...(loop.check ? [JOURNAL_WORDS.checks[loop.check]] : []), ...said].join(' · ')}
        </p>
      </div>
      <TakeOut journal={journal} ids={loop.ids} what={name} />
    </li>
  );
}

function TakeOut({ journal, ids, what }: { readonly journal: Journal; readonly ids: readonly string[]; readonly what: string }) {
  return (
    <button type="button" className="plain no-print" aria-label={JOURNAL_WORDS.removeEntry(what)} onClick={() => void journal.remove(ids)}>
      {JOURNAL_WORDS.remove}
    </button>
  );
}

function drillName(drill: string): string {
  const names: Readonly<Record<string, string>> = DRILLS.names;
  return names[drill] ?? drill;
}

function wordOf(kind: string): string {
  const words: Readonly<Record<string, string>> = JOURNAL_WORDS.said;
  return words[kind] ?? JOURNAL_WORDS.saidOther(kind);
}
