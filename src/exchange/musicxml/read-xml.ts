import { SaxesParser } from 'saxes';
import { failed, ok, type Result } from '../../vocabulary';
import { IMPORT_WORDS, type ImportFault } from '../../words/import-screen';

/** One element as read: its own text without that of its children, and where it begins (from 1). */
export interface XmlNode {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly XmlNode[];
  readonly text: string;
  readonly line: number;
  readonly column: number;
}

/** The deepest nesting that is read; a score needs about ten levels. */
const DEEPEST = 64;
/** The text is handed to the parser in pieces of this many characters, so that the reading can say how far it is. */
const PIECE = 1 << 18;
/** Branches without anything that a chart takes; they are checked for form and dropped, which keeps large scores small. */
const DROPPED = new Set([
  'notations',
  'lyric',
  'beam',
  'stem',
  'notehead',
  'accidental',
  'instrument',
  'defaults',
  'appearance',
  'print',
  'play',
  'frame',
  'midi-instrument',
  'midi-device',
  'part-group',
  'time-modification',
  'figured-bass',
  'listening',
]);

interface Draft {
  readonly name: string;
  readonly attributes: Record<string, string>;
  readonly children: Draft[];
  text: string;
  readonly line: number;
  readonly column: number;
}

/** Stops the parser at the first fault. */
class Stop extends Error {
  constructor(readonly fault: ImportFault) {
    super(fault.code);
  }
}

/**
 * Reads XML text into elements. Strict about form; a document type may be named, but one that declares anything of its own (entities, external
 * parts) is refused before anything is expanded, and nothing outside the text is ever fetched. `progress` is told the share that has been read, 0 to 1.
 */
export function readXml(text: string, progress: (share: number) => void = () => {}): Result<XmlNode, ImportFault> {
  const parser = new SaxesParser();
  const open: Draft[] = [];
  let root: Draft | null = null;
  let dropping = 0;
  let place = { line: 1, column: 1 };
  const stop = (code: ImportFault['code'], found: string, expected: string, { line, column } = here()): never => {
    throw new Stop({ code, line, column, text: found, expected });
  };
  const here = (): { line: number; column: number } => ({ line: parser.line, column: parser.column + 1 });

  parser.on('doctype', (declared) => {
    if (declared.includes('[')) stop('document type', declared.trim(), IMPORT_WORDS.expected.plainType);
  });
  parser.on('opentagstart', ({ name }) => {
    // The parser has read the name and one sign behind it.
    place = { line: parser.line, column: Math.max(1, parser.column - name.length - 1) };
    if (open.length + dropping >= DEEPEST) stop('too deep', name, IMPORT_WORDS.expected.depth(DEEPEST), place);
  });
  parser.on('opentag', ({ name, attributes }) => {
    if (dropping > 0 || DROPPED.has(name)) {
      dropping += 1;
      return;
    }
    const node: Draft = { name, attributes: { ...(attributes as Record<string, string>) }, children: [], text: '', ...place };
    open.at(-1)?.children.push(node);
    root ??= node;
    open.push(node);
  });
  parser.on('closetag', () => {
    if (dropping > 0) dropping -= 1;
    else open.pop();
  });
  const addText = (more: string): void => {
    const node = open.at(-1);
    if (node && dropping === 0) node.text += more;
  };
  parser.on('text', addText);
  parser.on('cdata', addText);
  parser.on('error', ({ message }) => {
    const what = message.replace(/^\d+:\d+: /, '').replace(/\.$/, '');
    const unfinished = open.at(-1)?.name;
    const cut = ended && (unfinished !== undefined || root === null || /unclosed|unexpected end/i.test(what));
    if (cut && unfinished !== undefined) stop('cut off', what, IMPORT_WORDS.expected.rest(unfinished));
    stop('not well-formed', what, root === null ? IMPORT_WORDS.expected.scoreFile : IMPORT_WORDS.expected.wellFormed);
  });

  let ended = false;
  try {
    for (let from = 0; from < text.length; from += PIECE) {
      parser.write(text.slice(from, from + PIECE));
      progress(Math.min(1, (from + PIECE) / text.length));
    }
    ended = true;
    parser.close();
  } catch (error) {
    if (error instanceof Stop) return failed(error.fault);
    throw error;
  }
  return root ? ok(root) : failed({ code: 'not a score file', line: 1, column: 1, text: '', expected: IMPORT_WORDS.expected.scoreFile });
}

/** The first child of a name, or undefined. */
export const child = (node: XmlNode | undefined, name: string): XmlNode | undefined => node?.children.find((one) => one.name === name);
/** All children of a name, in order. */
export const childrenNamed = (node: XmlNode | undefined, name: string): readonly XmlNode[] =>
  node?.children.filter((one) => one.name === name) ?? [];
/** The text of a child without blanks around it; `''` when there is no such child. */
export const childText = (node: XmlNode | undefined, name: string): string => child(node, name)?.text.trim() ?? '';
/** The number in a child, or null when there is none. */
export function childNumber(node: XmlNode | undefined, name: string): number | null {
  const text = childText(node, name);
  return text !== '' && Number.isFinite(Number(text)) ? Number(text) : null;
}
