import { toAscii } from './ascii';

/** Longest part of a file name that a title makes, so that what is added stays within the limits of every file system. */
const LONGEST = 60;
/** What one family of systems keeps for devices, whatever extension follows (Microsoft, "Naming files, paths, and namespaces"). */
const DEVICE = /^(con|prn|aux|nul|com\d|lpt\d)$/;

/** `text` as a part of a file name: lower-case ASCII letters, digits and hyphens, `Ana’s Last Ferry` gives `anas-last-ferry`. Empty when nothing is left. */
export function plainName(text: string): string {
  const plain = toAscii(text)
    .toLowerCase()
    .replace(/['"]/g, '')
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, LONGEST)
    .replace(/^-+|-+$/g, '');
  return DEVICE.test(plain) ? `chart-${plain}` : plain;
}
