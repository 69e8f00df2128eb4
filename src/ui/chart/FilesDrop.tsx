import type { ReactNode } from 'react';
import type { Library } from '../../state/library/library';
import { LIBRARY_WORDS } from '../../words/library';
import { useFilesDrop } from '../files/use-files-drop';

/** A place where files may be dropped; the button on the shelf is the way by keyboard. */
export function FilesDrop({ library, children }: { readonly library: Library | null; readonly children: ReactNode }) {
  const { over, handlers } = useFilesDrop((files) => void library?.takeIn(files));
  return (
    <div className="files-drop" {...handlers}>
      {children}
      {over && <p className="drop-here">{LIBRARY_WORDS.dropHere}</p>}
    </div>
  );
}
