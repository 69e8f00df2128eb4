import type { Mark, Segment } from '../../layout/sheet/page-drawing';
import { fontNames } from './font-names';
import { inkOf } from './ink';
import { readPath } from './read-path';
import { needsPicture, wordPicture } from './word-picture';

/** Turns a place on the screen into one on the page. */
export interface ToPage {
  /** Page points in a screen pixel. */
  readonly scale: number;
  readonly x: (screen: number) => number;
  readonly y: (screen: number) => number;
}

/** The marks of an SVG drawing, as it stands on the screen. Elements other than path, rect, line, circle and text are gone through for theirs. */
export function readSvg(svg: SVGSVGElement, page: ToPage): Mark[] {
  return [...svg.querySelectorAll<SVGGraphicsElement>('path, rect, line, circle, text')].flatMap((element) => {
    const style = getComputedStyle(element);
    const matrix = element.getScreenCTM();
    if (matrix === null || style.visibility === 'hidden' || style.display === 'none' || style.opacity === '0') return [];
    const place = (x: number, y: number): [number, number] => [
      page.x(matrix.a * x + matrix.c * y + matrix.e),
      page.y(matrix.b * x + matrix.d * y + matrix.f),
    ];
    const size = Math.hypot(matrix.a, matrix.b) * page.scale;
    if (element instanceof SVGTextElement) return textMarks(element, style, place, size);
    const path = outlineOf(element).map((segment) => placed(segment, place));
    const fill = inkOf(style.fill);
    const stroke = inkOf(style.stroke);
    const width = Number.parseFloat(style.strokeWidth) * size;
    const dash = style.strokeDasharray === 'none' ? [] : style.strokeDasharray.split(/[ ,]+/).map((part) => Number.parseFloat(part) * size);
    const marks: Mark[] = [];
    if (path.length === 0) return marks;
    if (fill !== null && !(element instanceof SVGLineElement)) marks.push({ kind: 'fill', path, ink: fill });
    if (stroke !== null && width > 0) marks.push({ kind: 'stroke', path, width, ink: stroke, dash });
    return marks;
  });
}

function textMarks(
  element: SVGTextElement,
  style: CSSStyleDeclaration,
  place: (x: number, y: number) => [number, number],
  scale: number,
): Mark[] {
  const ink = inkOf(style.fill);
  const text = element.textContent ?? '';
  if (ink === null || text.trim() === '' || element.getNumberOfChars() === 0) return [];
  if (needsPicture(text)) {
    const box = element.getBBox();
    const [left, top] = place(box.x, box.y);
    const size = Number.parseFloat(style.fontSize) * scale;
    return wordPicture(text, style, size, { left, top, width: box.width * scale, height: box.height * scale }, ink);
  }
  const start = element.getStartPositionOfChar(0);
  const [x, baseline] = place(start.x, start.y);
  return [
    {
      kind: 'text',
      text,
      fonts: fontNames(style.fontFamily, style.fontWeight),
      size: Number.parseFloat(style.fontSize) * scale,
      x,
      at: { baseline },
      width: element.getComputedTextLength() * scale,
      ink,
    },
  ];
}

function outlineOf(element: SVGGraphicsElement): Segment[] {
  if (element instanceof SVGPathElement) return readPath(element.getAttribute('d') ?? '');
  const number = (name: string): number => Number(element.getAttribute(name) ?? 0);
  if (element instanceof SVGRectElement) {
    const [x, y, width, height] = ['x', 'y', 'width', 'height'].map(number) as [number, number, number, number];
    return width === 0 && height === 0 ? [] : readPath(`M${x} ${y}H${x + width}V${y + height}H${x}Z`);
  }
  if (element instanceof SVGLineElement) return readPath(`M${number('x1')} ${number('y1')}L${number('x2')} ${number('y2')}`);
  if (element instanceof SVGCircleElement) {
    const [x, y, r] = [number('cx'), number('cy'), number('r')];
    return readPath(`M${x - r} ${y}A${r} ${r} 0 1 1 ${x + r} ${y}A${r} ${r} 0 1 1 ${x - r} ${y}Z`);
  }
  return [];
}

function placed(segment: Segment, place: (x: number, y: number) => [number, number]): Segment {
  switch (segment[0]) {
    case 'Z':
      return segment;
    case 'C':
      return ['C', ...place(segment[1], segment[2]), ...place(segment[3], segment[4]), ...place(segment[5], segment[6])];
    default:
      return [segment[0], ...place(segment[1], segment[2])];
  }
}
