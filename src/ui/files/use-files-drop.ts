import { type DragEvent, useState } from 'react';
import type { GivenFile } from '../../state/library/intake';
import { readFiles } from './read-files';

/** What an element needs so that files may be dropped on it, and whether some are held over it. */
export interface FilesDropping {
  readonly over: boolean;
  readonly handlers: {
    readonly onDragOver: (event: DragEvent) => void;
    readonly onDragLeave: (event: DragEvent) => void;
    readonly onDrop: (event: DragEvent) => void;
  };
}

const holdsFiles = (event: DragEvent): boolean => event.dataTransfer.types.includes('Files');

/** Lets files be dropped on an element: `handlers` go onto it, `give` gets what was dropped. */
export function useFilesDrop(give: (files: readonly GivenFile[]) => void): FilesDropping {
  const [over, setOver] = useState(false);
  return {
    over,
    handlers: {
      onDragOver: (event) => {
        if (!holdsFiles(event)) return;
        event.preventDefault();
        setOver(true);
      },
      onDragLeave: (event) => {
        if (!event.currentTarget.contains(event.relatedTarget as Node | null)) setOver(false);
      },
      onDrop: (event) => {
        setOver(false);
        if (!holdsFiles(event)) return;
        event.preventDefault();
        void readFiles([...event.dataTransfer.files]).then(give);
      },
    },
  };
}
