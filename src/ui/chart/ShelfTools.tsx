import { useId, useRef } from 'react';
import type { Library } from '../../state/library/library';
import { LIBRARY_WORDS } from '../../words/library';
import { readFiles } from './FilesDrop';

const ACCEPTED = '.txt,.chart,.text,.md,.musicxml,.xml,.mxl,.json';

/** Search on the shelf, and the button that brings files in. */
export function ShelfTools(props: { readonly library: Library; readonly query: string; readonly onQuery: (query: string) => void }) {
  const input = useRef<HTMLInputElement>(null);
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
      <button type="button" className="key" title={LIBRARY_WORDS.bringInHint} onClick={() => input.current?.click()}>
        {LIBRARY_WORDS.bringIn}
      </button>
      <input
        ref={input}
        type="file"
        multiple
        hidden
        accept={ACCEPTED}
        aria-label={LIBRARY_WORDS.bringIn}
        onChange={(event) => {
          const files = [...(event.target.files ?? [])];
          // Choosing the same file again is a change too.
          event.target.value = '';
          void readFiles(files).then(props.library.takeIn);
        }}
      />
      <p className="caption">{LIBRARY_WORDS.bringInHint}</p>
    </div>
  );
}
