import { useId, useState } from 'react';
import type { Journal } from '../../state/journal/journal';
import { JOURNAL_WORDS } from '../../words/journal';
import { useDesk } from '../app/desk-context';

/** A line for player or teacher, on the chart that lies on the desk. */
export function Notes({ journal }: { readonly journal: Journal }) {
  const title = useDesk((state) => state.music?.score.title ?? '');
  const [text, setText] = useState('');
  const id = useId();
  return (
    <section aria-labelledby="journal-notes" className="no-print">
      <h2 id="journal-notes">{JOURNAL_WORDS.notes}</h2>
      <form
        className="journal-note"
        onSubmit={(event) => {
          event.preventDefault();
          void journal.note(text);
          setText('');
        }}
      >
        <label htmlFor={id}>{JOURNAL_WORDS.noteLabel(title)}</label>
        <textarea id={id} className="line-field" rows={2} maxLength={2000} value={text} onChange={(event) => setText(event.target.value)} />
        <button type="submit" className="key" disabled={text.trim() === ''}>
          {JOURNAL_WORDS.keepNote}
        </button>
      </form>
    </section>
  );
}
