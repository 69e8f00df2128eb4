import type { FileSaver } from '../state/ports';

/** How long the browser may take to begin the download before its address is given back. */
const RELEASE_MS = 60_000;

/** Hands a file to the person as a download of the browser. */
export function createFileSaver(page: Document): FileSaver {
  return {
    save: (name, type, bytes) => {
      const address = URL.createObjectURL(new Blob([bytes.slice()], { type }));
      const link = page.createElement('a');
      link.href = address;
      link.download = name;
      page.body.append(link);
      link.click();
      link.remove();
      setTimeout(() => URL.revokeObjectURL(address), RELEASE_MS);
    },
  };
}
