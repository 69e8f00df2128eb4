/** How long the browser may take to begin a download before its address is given back. */
const RELEASE_MS = 60_000;

/** Hands `contents` to the person as a download of the browser under `name`. */
export function download(page: Document, name: string, contents: Blob): void {
  const address = URL.createObjectURL(contents);
  const link = page.createElement('a');
  link.href = address;
  link.download = name;
  page.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), RELEASE_MS);
}
