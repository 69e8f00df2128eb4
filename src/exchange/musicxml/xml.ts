/** One element of an XML document: name, attributes in order, and either text or elements. `undefined` children are left out. */
export interface Xml {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string | number | undefined>>;
  readonly content: string | readonly (Xml | undefined)[];
}

/** An element with text, a number or elements inside; `element('step', 'C')`. Attributes that are undefined are left out. */
export const element = (
  name: string,
  content: string | number | readonly (Xml | undefined)[] = [],
  attributes: Xml['attributes'] = {},
): Xml => ({ name, attributes, content: typeof content === 'number' ? String(content) : content });

/** Characters that XML 1.0 (W3C, fifth edition, production 2) does not allow, lone surrogates included. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what XML forbids
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udfff]/gu;
const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', '\n': '&#10;', '\t': '&#9;' };

const escaped = (text: string, unsafe: RegExp): string => text.replace(FORBIDDEN, '').replace(unsafe, (sign) => ESCAPES[sign] ?? '');

/** Prints a document: one element a line, two blanks a level, text on the line of its element. What XML forbids is left out. */
export function printXml(root: Xml): string {
  const lines = ['<?xml version="1.0" encoding="UTF-8" standalone="no"?>'];
  print(root, '', lines);
  return `${lines.join('\n')}\n`;
}

function print({ name, attributes, content }: Xml, indent: string, lines: string[]): void {
  const said = Object.entries(attributes).flatMap(([key, value]) =>
    value === undefined ? [] : [` ${key}="${escaped(String(value), /[&<>"\n\t]/g)}"`],
  );
  const open = `${indent}<${name}${said.join('')}`;
  if (typeof content === 'string') lines.push(content === '' ? `${open}/>` : `${open}>${escaped(content, /[&<>]/g)}</${name}>`);
  else if (content.every((child) => child === undefined)) lines.push(`${open}/>`);
  else {
    lines.push(`${open}>`);
    for (const child of content) if (child) print(child, `${indent}  `, lines);
    lines.push(`${indent}</${name}>`);
  }
}
