import type { GivenFile } from '../../state/library/intake';

/** Largest file whose bytes are read at all; whoever takes it says what each kind may hold. */
const READ_AT_MOST = 80 * 1024 * 1024;

/** Files with their bytes; of one that is far too large only as many as show that it is. */
export const readFiles = (files: readonly File[]): Promise<readonly GivenFile[]> =>
  Promise.all(files.map(async (file) => ({ name: file.name, bytes: new Uint8Array(await file.slice(0, READ_AT_MOST).arrayBuffer()) })));
