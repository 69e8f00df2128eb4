/** One element of an XML document: name, attributes in order, and either text or elements. `undefined` children are left out. Many children may come one at a time, printed as they are made. */
export interface Xml {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string | number | undefined>>;
  readonly content: string | Iterable<Xml | undefined>;
}

/** An element with text, a number or elements inside; `element('step', 'C')`. Attributes that are undefined are left out. */
export const element = (
  name: string,
  content: string | number | Iterable<Xml | undefined> = [],
  attributes: Xml['attributes'] = {},
): Xml => ({ name, attributes, content: typeof content === 'number' ? String(content) : content });

/** Characters that XML 1.0 (W3C, fifth edition, production 2) does not allow, lone surrogates included. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what XML forbids
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udfff]/gu;
const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', '\n': '&#10;', '\t': '&#9;' };

/** Almost every text of a score: ASCII without a sign that means something in XML. Asked first, since nothing is to be done about it. */
const PLAIN = /^[ !#-%'-;=?-~]*$/;

const escaped = (text: string, unsafe: RegExp): string =>
  PLAIN.test(text) ? text : text.replace(FORBIDDEN, '').replace(unsafe, (sign) => ESCAPES[sign] ?? '');

/** Prints a document, `doctype` before its root: one element a line, two blanks a level, text on the line of its element. What XML forbids is left out. */
export function printXml(root: Xml, doctype = ''): string {
  const lines = ['<?xml version="1.0" encoding="UTF-8" standalone="no"?>', ...(doctype === '' ? [] : [doctype])];
  print(root, '', lines);
  return `${lines.join('\n')}\n`;
}

function print({ name, attributes, content }: Xml, indent: string, lines: string[]): void {
  let open = `${indent}<${name}`;
  for (const key in attributes) {
    const value = attributes[key];
    if (value !== undefined) open += ` ${key}="${escaped(String(value), /[&<>"\n\t]/g)}"`;
  }
  if (typeof content === 'string') lines.push(content === '' ? `${open}/>` : `${open}>${escaped(content, /[&<>]/g)}</${name}>`);
  else {
    const at = lines.push(`${open}>`);
    const inside = `${indent}  `;
    for (const child of content) if (child) print(child, inside, lines);
    if (lines.length > at) lines.push(`${indent}</${name}>`);
    else lines[at - 1] = `${open}/>`;
  }
}
