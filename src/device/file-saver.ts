import type { FileSaver } from '../state/ports';
import { download } from './download';

/** Hands a file to the person as a download of the browser. */
export function createFileSaver(page: Document): FileSaver {
  return { save: (name, type, bytes) => download(page, name, new Blob([bytes.slice()], { type })) };
}
