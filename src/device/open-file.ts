import type { OpenFile } from '../state/take-along/ports';
import { download } from './download';

/** The part of the file system access that is used; browsers without it save through a download. */
interface Picker {
  showSaveFilePicker?(options: { suggestedName: string; types: { accept: Record<string, string[]> }[] }): Promise<{
    createWritable(): Promise<{ write(bytes: Uint8Array<ArrayBuffer>): Promise<void>; close(): Promise<void>; abort(): Promise<void> }>;
  }>;
}

/**
 * Opens a file for writing: a large one where the person says, piece by piece to the disk, or, small or where the browser has no such thing, collected by the
 * browser (which keeps large ones on its own disk) and handed over as a download at the end. Null when the person closes the question.
 */
export async function openFile(name: string, type: string, large: boolean): Promise<OpenFile | null> {
  const { showSaveFilePicker } = window as unknown as Picker;
  if (showSaveFilePicker === undefined || !large) return collected(name, type);
  try {
    const extension = name.slice(name.lastIndexOf('.'));
    const handle = await showSaveFilePicker.call(window, { suggestedName: name, types: [{ accept: { [type]: [extension] } }] });
    // Written beside the file and moved there at the end, by definition of the interface.
    return await handle.createWritable();
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return null;
    // Frames and some policies have the question but not the right to ask it.
    if (error instanceof DOMException && error.name === 'SecurityError') return collected(name, type);
    throw error;
  }
}

function collected(name: string, type: string): OpenFile {
  let pieces: Blob[] = [];
  return {
    write: async (bytes) => void pieces.push(new Blob([bytes])),
    close: async () => download(document, name, new Blob(pieces, { type })),
    abort: async () => {
      pieces = [];
    },
  };
}
