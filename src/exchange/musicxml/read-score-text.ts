import { strFromU8, unzipSync } from 'fflate';
import { failed, ok, type Result } from '../../vocabulary';
import { IMPORT_WORDS, type ImportFault } from '../../words/import-screen';
import { child, readXml } from './read-xml';

/** The largest file that is read, and the largest score inside a compressed one, in bytes. */
export const MOST_BYTES = 16 * 1024 * 1024;
const MEGABYTE = 1024 * 1024;
/** The most files that an archive may name; a score has a handful. A damaged directory can claim 65,535, each with a name of 64 KB. */
const MOST_FILES = 1000;

const { expected } = IMPORT_WORDS;
const fault = (code: ImportFault['code'], wanted: string, text = ''): Result<never, ImportFault> =>
  failed({ code, line: null, column: null, text, expected: wanted });
const tooLarge = (bytes: number): Result<never, ImportFault> =>
  fault('too large', expected.size(MOST_BYTES / MEGABYTE), expected.sizeFound(Math.ceil(bytes / MEGABYTE)));

/** The XML text in a score file: a compressed archive is opened, UTF-8 and UTF-16 are told apart. Nothing larger than `MOST_BYTES` is unpacked. */
export function readScoreText(bytes: Uint8Array): Result<string, ImportFault> {
  if (bytes.length > MOST_BYTES) return tooLarge(bytes.length);
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) return fromArchive(bytes);
  const text = decoded(bytes);
  return text.trimStart().startsWith('<') ? ok(text) : fault('not a score file', expected.scoreFile);
}

function fromArchive(bytes: Uint8Array): Result<string, ImportFault> {
  let named = '';
  let largest = 0;
  /** Unpacks the files that are wanted, none of them if one is too large. */
  const unpack = (wanted: (name: string) => boolean): Readonly<Record<string, Uint8Array>> => {
    let files = 0;
    return unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        files += 1;
        if (files > MOST_FILES) throw new Error(`more than ${MOST_FILES} files`);
        if (!wanted(name)) return false;
        largest = Math.max(largest, originalSize);
        return originalSize <= MOST_BYTES;
      },
    });
  };
  try {
    const container = unpack((name) => name === 'META-INF/container.xml')['META-INF/container.xml'];
    if (container) named = rootFile(decoded(container));
    const names: string[] = [];
    unpack((name) => {
      if (/\.(musicxml|xml)$/i.test(name) && !name.startsWith('META-INF/')) names.push(name);
      return false;
    });
    const wanted = named !== '' ? named : names.length === 1 ? names[0] : undefined;
    const file = wanted === undefined ? undefined : unpack((name) => name === wanted)[wanted];
    if (largest > MOST_BYTES) return tooLarge(largest);
    return file ? ok(decoded(file)) : fault('no score in the archive', expected.container);
  } catch (error) {
    return fault('broken archive', expected.archive, error instanceof Error ? error.message : '');
  }
}

/** The score that a container names: the first root file that is a score, by its type or without one. Source: MusicXML 4.0, container.xsd. */
function rootFile(container: string): string {
  const read = readXml(container);
  const files = read.ok ? (child(read.value, 'rootfiles')?.children ?? []) : [];
  const file = files.find(({ attributes }) => /musicxml/i.test(attributes['media-type'] ?? 'musicxml')) ?? files[0];
  return file?.attributes['full-path'] ?? '';
}

/** Bytes as text by their byte order mark: UTF-16 either way round, else UTF-8. */
function decoded(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return utf16(bytes, 0);
  if (first === 0xfe && second === 0xff) return utf16(bytes, 1);
  const start = first === 0xef && second === 0xbb ? 3 : 0;
  return strFromU8(bytes.subarray(start));
}

function utf16(bytes: Uint8Array, high: 0 | 1): string {
  const pieces: string[] = [];
  let units: number[] = [];
  for (let at = 2; at + 1 < bytes.length; at += 2) {
    const [a, b] = [bytes[at] ?? 0, bytes[at + 1] ?? 0];
    units.push(high === 1 ? (a << 8) | b : (b << 8) | a);
    if (units.length === 4096) {
      pieces.push(String.fromCharCode(...units));
      units = [];
    }
  }
  return pieces.join('') + String.fromCharCode(...units);
}
