import { type FormEvent, useState } from 'react';
import type { ShelfEntry } from '../../state/desk-state';
import type { Library } from '../../state/library/library';
import { LIBRARY_WORDS } from '../../words/library';
import { useDesk, useDeskItself } from '../app/desk-context';

/** One chart of the player's own: open it, or have it copied, renamed, handed out, taken away. */
export function OwnChart(props: { readonly entry: ShelfEntry; readonly library: Library; readonly onOpen: () => void }) {
  const { entry, library } = props;
  const { run } = useDeskItself();
  const current = useDesk((state) => state.chartId === entry.id);
  const [more, setMore] = useState(false);
  const [renaming, setRenaming] = useState(false);
  if (renaming) return <Rename entry={entry} library={library} onDone={() => setRenaming(false)} />;
  const duplicate = async (): Promise<void> => {
    setMore(false);
    const chartId = await library.duplicate(entry.id, LIBRARY_WORDS.copyTitle(entry.title));
    run({ kind: 'open', chartId });
  };
  return (
    <li className="own-chart">
      <button type="button" className="shelf-chart" aria-current={current || undefined} onClick={props.onOpen}>
        <b>{entry.title}</b>
        {entry.changed > 0 && <span className="caption">{LIBRARY_WORDS.lastChanged(new Date(entry.changed).toLocaleDateString())}</span>}
      </button>
      <button
        type="button"
        className="plain own-more"
        aria-label={LIBRARY_WORDS.more(entry.title)}
        aria-expanded={more}
        onClick={() => setMore(!more)}
      >
        ⋯
      </button>
      {more && (
        <div className="own-acts">
          <button type="button" className="plain" onClick={() => void duplicate()}>
            {LIBRARY_WORDS.duplicate}
          </button>
          <button
            type="button"
            className="plain"
            onClick={() => {
              setMore(false);
              setRenaming(true);
            }}
          >
            {LIBRARY_WORDS.rename}
          </button>
          <button type="button" className="plain" onClick={() => library.saveText(entry.id)}>
            {LIBRARY_WORDS.saveText}
          </button>
          <button type="button" className="plain" onClick={() => library.remove(entry.id)}>
            {LIBRARY_WORDS.remove}
          </button>
        </div>
      )}
    </li>
  );
}

function Rename(props: { readonly entry: ShelfEntry; readonly library: Library; readonly onDone: () => void }) {
  const { entry, library, onDone } = props;
  const [title, setTitle] = useState(entry.title);
  const keep = (event: FormEvent): void => {
    event.preventDefault();
    if (title.trim() !== '') library.rename(entry.id, title);
    onDone();
  };
  return (
    <li className="own-chart">
      <form className="own-rename" onSubmit={keep} onKeyDown={(event) => event.key === 'Escape' && onDone()}>
        <input
          // biome-ignore lint/a11y/noAutofocus: the field takes the place of the button that was just pressed
          autoFocus
          className="line-field"
          aria-label={LIBRARY_WORDS.newTitle}
          maxLength={120}
          value={title}
          onChange={(event) => setTitle(event.target.value)}
        />
        <button type="submit" className="key">
          {LIBRARY_WORDS.keepTitle}
        </button>
        <button type="button" className="plain" onClick={onDone}>
          {LIBRARY_WORDS.leave}
        </button>
      </form>
    </li>
  );
}
