import { type Ink, type Mark, type PageDrawing, POINTS_PER_MM, type Segment } from '../../layout/sheet/page-drawing';
import { fontNames } from './font-names';
import { inkOf } from './ink';
import { readSvg, type ToPage } from './read-svg';
import { needsPicture, wordPicture } from './word-picture';

/*
 * Reads a page of the sheet as it stands in the document: every word where the browser put it, lines and boxes, and all drawings. So
 * the file and the print are the same page. Sizes are taken from the page's own width in millimetres, whatever the zoom.
 */

/** One page element as a drawing; `widthMm` and `heightMm` are the paper's. Pauses between the blocks of the page. */
export async function readPage(page: HTMLElement, widthMm: number, heightMm: number, pause: () => Promise<void>): Promise<PageDrawing> {
  const box = page.getBoundingClientRect();
  const scale = (widthMm * POINTS_PER_MM) / box.width;
  const toPage: ToPage = { scale, x: (x) => (x - box.left) * scale, y: (y) => (y - box.top) * scale };
  // Lengths of styles are in pixels before zoom.
  const styleScale = POINTS_PER_MM * (25.4 / 96);
  const marks: Mark[] = [];
  for (const block of page.children) {
    readElement(block, toPage, styleScale, marks);
    await pause();
  }
  return { width: widthMm * POINTS_PER_MM, height: heightMm * POINTS_PER_MM, marks };
}

function readElement(element: Element, page: ToPage, styleScale: number, marks: Mark[]): void {
  if (element instanceof SVGSVGElement) {
    marks.push(...readSvg(element, page));
    return;
  }
  const style = getComputedStyle(element);
  if (style.display === 'none' || style.visibility === 'hidden' || !(element instanceof HTMLElement)) return;
  const box = element.getBoundingClientRect();
  marks.push(...boxMarks(style, { left: box.left, top: box.top, width: box.width, height: box.height }, page, styleScale));
  const before = getComputedStyle(element, '::before');
  if (before.content !== 'none' && before.content !== 'normal') marks.push(...tickBox(before, box, page, styleScale));
  for (const child of element.childNodes) {
    if (child instanceof Text) marks.push(...wordMarks(child, style, page, styleScale));
    else if (child instanceof Element) readElement(child, page, styleScale, marks);
  }
}

interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

function boxMarks(style: CSSStyleDeclaration, box: Box, page: ToPage, styleScale: number): Mark[] {
  const [left, top] = [page.x(box.left), page.y(box.top)];
  const [width, height] = [box.width * page.scale, box.height * page.scale];
  const marks: Mark[] = [];
  const ground = inkOf(style.backgroundColor);
  if (ground !== null && width > 0 && height > 0) marks.push(rectangle(left, top, width, height, ground));
  const side = (name: 'Top' | 'Right' | 'Bottom' | 'Left'): { thick: number; ink: Ink } | null => {
    const thick = Number.parseFloat(style[`border${name}Width`]) * styleScale;
    const ink = inkOf(style[`border${name}Color`]);
    return style[`border${name}Style`] === 'none' || ink === null || !(thick > 0) ? null : { thick, ink };
  };
  const [above, right, below, before] = [side('Top'), side('Right'), side('Bottom'), side('Left')];
  if (above) marks.push(rectangle(left, top, width, above.thick, above.ink));
  if (below) marks.push(rectangle(left, top + height - below.thick, width, below.thick, below.ink));
  if (before) marks.push(rectangle(left, top, before.thick, height, before.ink));
  if (right) marks.push(rectangle(left + width - right.thick, top, right.thick, height, right.ink));
  return marks;
}

/** The box before a word that is to be ticked: drawn by the style sheet, at the start and in the middle of its line. */
function tickBox(before: CSSStyleDeclaration, box: DOMRect, page: ToPage, styleScale: number): Mark[] {
  const zoom = styleScale / page.scale;
  const [width, height] = [Number.parseFloat(before.width) * zoom, Number.parseFloat(before.height) * zoom];
  if (!(width > 0) || !(height > 0)) return [];
  const outer = before.boxSizing === 'border-box' ? 0 : 2 * Number.parseFloat(before.borderTopWidth) * zoom;
  const size = { width: width + outer, height: height + outer };
  return boxMarks(before, { left: box.left, top: box.top + (box.height - size.height) / 2, ...size }, page, styleScale);
}

/** Every word of a text where it stands; a word that is broken over lines comes in as many pieces. */
function wordMarks(node: Text, style: CSSStyleDeclaration, page: ToPage, styleScale: number): Mark[] {
  const ink = inkOf(style.color);
  if (ink === null) return [];
  const fonts = fontNames(style.fontFamily, style.fontWeight);
  const size = Number.parseFloat(style.fontSize) * styleScale;
  const upper = style.textTransform === 'uppercase';
  const range = document.createRange();
  return [...node.data.matchAll(/\S+/g)].flatMap((match) =>
    piecesOf(node, range, match.index, match.index + match[0].length).flatMap(({ text, box }) => {
      const x = page.x(box.left);
      const width = box.width * page.scale;
      const at = { top: page.y(box.top), height: box.height * page.scale };
      if (needsPicture(text)) return wordPicture(text, style, size, { left: x, width, ...at }, ink);
      const mark: Mark = { kind: 'text', text: upper ? text.toUpperCase() : text, fonts, size, x, at, width, ink };
      if (!style.textDecorationLine.includes('underline')) return [mark];
      return [mark, rectangle(x, at.top + at.height * 0.86, width, size / 14, ink)];
    }),
  );
}

function piecesOf(node: Text, range: Range, from: number, to: number): { readonly text: string; readonly box: DOMRect }[] {
  range.setStart(node, from);
  range.setEnd(node, to);
  const boxes = [...range.getClientRects()].filter(({ width }) => width > 0);
  const [only] = boxes;
  if (only === undefined) return [];
  if (boxes.length === 1 || to - from === 1) return [{ text: node.data.slice(from, to), box: only }];
  const middle = (from + to) >> 1;
  return [...piecesOf(node, range, from, middle), ...piecesOf(node, range, middle, to)];
}

function rectangle(left: number, top: number, width: number, height: number, ink: Ink): Mark {
  const path: Segment[] = [['M', left, top], ['L', left + width, top], ['L', left + width, top + height], ['L', left, top + height], ['Z']];
  return { kind: 'fill', path, ink };
}
