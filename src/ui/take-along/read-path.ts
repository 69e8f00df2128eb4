import type { Segment } from '../../layout/sheet/page-drawing';

/*
 * Reads the path of an SVG drawing. Of the commands of SVG 1.1 (clause 8.3) the engraver writes moves, lines, curves and arcs; all
 * but the smooth shorthands are read here, absolute or relative, and come out absolute.
 */

const COMMAND = /([a-zA-Z])([^a-zA-Z]*)/g;
const NUMBER = /[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?/g;
const TAKES: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, C: 6, Q: 4, A: 7, Z: 0 };

/** The outline of a path's `d`. Throws on a command that it does not know, which would leave the drawing wrong. */
export function readPath(d: string): Segment[] {
  const segments: Segment[] = [];
  let [x, y, startX, startY] = [0, 0, 0, 0];
  for (const [, letter = '', rest = ''] of d.matchAll(COMMAND)) {
    const kind = letter.toUpperCase();
    const takes = TAKES[kind];
    if (takes === undefined) throw new Error(`a drawing holds the path command ${letter}, which cannot be written`);
    const numbers = (rest.match(NUMBER) ?? []).map(Number);
    const relative = letter !== kind;
    if (kind === 'Z') {
      segments.push(['Z']);
      [x, y] = [startX, startY];
      continue;
    }
    for (let at = 0; at + takes <= numbers.length; at += takes) {
      const n = (index: number): number => numbers[at + index] ?? 0;
      const px = (index: number): number => n(index) + (relative ? x : 0);
      const py = (index: number): number => n(index) + (relative ? y : 0);
      if (kind === 'H') {
        x = px(0);
        segments.push(['L', x, y]);
      } else if (kind === 'V') {
        y = n(0) + (relative ? y : 0);
        segments.push(['L', x, y]);
      } else if (kind === 'C') {
        segments.push(['C', px(0), py(1), px(2), py(3), px(4), py(5)]);
        [x, y] = [px(4), py(5)];
      } else if (kind === 'Q') {
        segments.push(cubic(x, y, px(0), py(1), px(2), py(3)));
        [x, y] = [px(2), py(3)];
      } else if (kind === 'A') {
        const [toX, toY] = [px(5), py(6)];
        segments.push(...arc(x, y, n(0), n(1), n(3) !== 0, n(4) !== 0, toX, toY));
        [x, y] = [toX, toY];
      } else {
        // After a move, further pairs are lines.
        const move = kind === 'M' && at === 0;
        [x, y] = [px(0), py(1)];
        if (move) [startX, startY] = [x, y];
        segments.push([move ? 'M' : 'L', x, y]);
      }
    }
  }
  return segments;
}

function cubic(fromX: number, fromY: number, x1: number, y1: number, x: number, y: number): Segment {
  const third = (from: number, to: number) => from + ((to - from) * 2) / 3;
  return ['C', third(fromX, x1), third(fromY, y1), third(x, x1), third(y, y1), x, y];
}

/** An arc without rotation as curves of at most a quarter turn (SVG 1.1, appendix F.6). */
function arc(x1: number, y1: number, rx: number, ry: number, large: boolean, sweep: boolean, x2: number, y2: number): Segment[] {
  if (rx === 0 || ry === 0 || (x1 === x2 && y1 === y2)) return [['L', x2, y2]];
  const [dx, dy] = [(x1 - x2) / 2, (y1 - y2) / 2];
  const stretch = Math.max(1, Math.sqrt((dx / rx) ** 2 + (dy / ry) ** 2));
  const [a, b] = [Math.abs(rx) * stretch, Math.abs(ry) * stretch];
  const square = Math.max(0, (a * b) ** 2 - (a * dy) ** 2 - (b * dx) ** 2) / ((a * dy) ** 2 + (b * dx) ** 2);
  const side = (large === sweep ? -1 : 1) * Math.sqrt(square);
  const [cx, cy] = [(side * a * dy) / b + (x1 + x2) / 2, (-side * b * dx) / a + (y1 + y2) / 2];
  const from = Math.atan2((y1 - cy) / b, (x1 - cx) / a);
  let turn = Math.atan2((y2 - cy) / b, (x2 - cx) / a) - from;
  if (sweep && turn < 0) turn += 2 * Math.PI;
  if (!sweep && turn > 0) turn -= 2 * Math.PI;
  const pieces = Math.ceil(Math.abs(turn) / (Math.PI / 2));
  const step = turn / pieces;
  const pull = (4 / 3) * Math.tan(step / 4);
  return Array.from({ length: pieces }, (_, piece): Segment => {
    const [t1, t2] = [from + piece * step, from + (piece + 1) * step];
    const at = (t: number, along: number): [number, number] => [
      cx + a * (Math.cos(t) - along * Math.sin(t)),
      cy + b * (Math.sin(t) + along * Math.cos(t)),
    ];
    return ['C', ...at(t1, pull), ...at(t2, -pull), ...at(t2, 0)];
  });
}
