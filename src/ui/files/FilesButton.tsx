import { useRef } from 'react';
import type { GivenFile } from '../../state/library/intake';
import { readFiles } from './read-files';

/** What the button says, which files it offers (as the `accept` of a file field), and who takes them. */
export interface FilesButtonProps {
  readonly name: string;
  readonly accept: string;
  readonly hint?: string;
  readonly onGive: (files: readonly GivenFile[]) => void;
}

/** A button that asks for files. */
export function FilesButton({ name, accept, hint, onGive }: FilesButtonProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" className="key" title={hint} onClick={() => input.current?.click()}>
        {name}
      </button>
      <input
        ref={input}
        type="file"
        multiple
        hidden
        accept={accept}
        aria-label={name}
        onChange={(event) => {
          const files = [...(event.target.files ?? [])];
          // Choosing the same file again is a change too.
          event.target.value = '';
          void readFiles(files).then(onGive);
        }}
      />
    </>
  );
}
