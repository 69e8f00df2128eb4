import { type DragEvent, type ReactNode, useState } from 'react';
import type { GivenFile } from '../../state/library/intake';
import type { Library } from '../../state/library/library';
import { LIBRARY_WORDS } from '../../words/library';

/** Largest file whose bytes are read at all; the library says what each kind may hold. */
const READ_AT_MOST = 80 * 1024 * 1024;

/** Files with their bytes; of one that is far too large only as many as show that it is. */
export const readFiles = (files: readonly File[]): Promise<readonly GivenFile[]> =>
  Promise.all(files.map(async (file) => ({ name: file.name, bytes: new Uint8Array(await file.slice(0, READ_AT_MOST).arrayBuffer()) })));

/** A place where files may be dropped. */
export function FilesDrop({ library, children }: { readonly library: Library | null; readonly children: ReactNode }) {
  const [over, setOver] = useState(false);
  const holdsFiles = (event: DragEvent): boolean => event.dataTransfer.types.includes('Files');
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is a second way; the button on the shelf is the way by keyboard
    <div
      className="files-drop"
      onDragOver={(event) => {
        if (!holdsFiles(event)) return;
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget as Node | null)) setOver(false);
      }}
      onDrop={(event) => {
        setOver(false);
        if (!holdsFiles(event)) return;
        event.preventDefault();
        void readFiles([...event.dataTransfer.files]).then((files) => library?.takeIn(files));
      }}
    >
      {children}
      {over && <p className="drop-here">{LIBRARY_WORDS.dropHere}</p>}
    </div>
  );
}
