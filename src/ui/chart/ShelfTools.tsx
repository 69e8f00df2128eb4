import { useId } from 'react';
import type { Library } from '../../state/library/library';
import { LIBRARY_WORDS } from '../../words/library';
import { FilesButton } from '../files/FilesButton';

const ACCEPTED = '.txt,.chart,.text,.md,.musicxml,.xml,.mxl,.json';

/** Search on the shelf, and the button that brings files in. */
export function ShelfTools(props: { readonly library: Library; readonly query: string; readonly onQuery: (query: string) => void }) {
  const id = useId();
  return (
    <div className="shelf-tools">
      <label className="visually-hidden" htmlFor={id}>
        {LIBRARY_WORDS.search}
      </label>
      <input
        id={id}
        type="search"
        className="line-field"
        placeholder={LIBRARY_WORDS.search}
        value={props.query}
        onChange={(event) => props.onQuery(event.target.value)}
      />
      <FilesButton
        name={LIBRARY_WORDS.bringIn}
        accept={ACCEPTED}
        hint={LIBRARY_WORDS.bringInHint}
        onGive={(files) => void props.library.takeIn(files)}
      />
      <p className="caption">{LIBRARY_WORDS.bringInHint}</p>
    </div>
  );
}
