import { Stave, StaveConnector, type SVGContext } from 'vexflow/core';
import { STAFF_HEIGHT } from '../../layout/notation/system-geometry';
import type { SystemDrawing } from './system-drawing';

const INK = { fillStyle: 'currentColor', strokeStyle: 'currentColor' };
const THIN = 1.2;
const THICK = 5;

/** The barlines of a system, its opening line, the brace of the grand staff, and repeat signs round a closed score. */
export function drawBars(context: SVGContext, drawing: SystemDrawing): void {
  const { geometry, notation, from } = drawing;
  const { clave, right, left, bass } = geometry.lines;
  const first = geometry.bars[0];
  if (!first) return;
  const stretches = [
    ...(clave === undefined ? [] : [[clave - 10, clave + 10] as const]),
    ...stretch(right, left),
    ...stretch(bass, undefined),
  ];
  const top = Math.min(...stretches.map(([y]) => y));
  const bottom = Math.max(...stretches.map(([, y]) => y));
  context.fillRect(first.x, top === (clave ?? 0) - 10 ? top + 10 : top, THIN, bottom - top - (top === (clave ?? 0) - 10 ? 10 : 0));
  if (right !== undefined && left !== undefined) brace(context, first.x, right, left);
  geometry.bars.forEach((place, i) => {
    const next = notation.bars[from + i + 1];
    const end = place.x + place.width;
    for (const [y, to] of stretches) {
      if (place.repeatEnd) repeatEnd(context, end, y, to);
      else if (next === undefined) finalBar(context, end, y, to);
      else if (next.sectionStart !== null) doubleBar(context, end, y, to);
      else context.fillRect(end - THIN / 2, y, THIN, to - y);
      if (place.repeatStart) repeatStart(context, place.noteStart - 14, y, to);
    }
  });
}

function stretch(top: number | undefined, bottom: number | undefined): (readonly [number, number])[] {
  const from = top ?? bottom;
  const to = bottom ?? top;
  return from === undefined || to === undefined ? [] : [[from, to + STAFF_HEIGHT]];
}

function brace(context: SVGContext, x: number, right: number, left: number): void {
  const stave = (line: number): Stave => new Stave(x, line - 40, 10, { leftBar: false, rightBar: false });
  new StaveConnector(stave(right), stave(left)).setType('brace').setStyle(INK).setContext(context).drawWithStyle();
}

function doubleBar(context: SVGContext, end: number, y: number, to: number): void {
  context.fillRect(end - THIN / 2 - 4, y, THIN, to - y);
  context.fillRect(end - THIN / 2, y, THIN, to - y);
}
function finalBar(context: SVGContext, end: number, y: number, to: number): void {
  context.fillRect(end - THICK - 5, y, THIN, to - y);
  context.fillRect(end - THICK, y, THICK, to - y);
}
function repeatStart(context: SVGContext, x: number, y: number, to: number): void {
  context.fillRect(x, y, THICK, to - y);
  context.fillRect(x + THICK + 4, y, THIN, to - y);
  repeatDots(context, x + THICK + 11, y, to);
}
function repeatEnd(context: SVGContext, end: number, y: number, to: number): void {
  finalBar(context, end, y, to);
  repeatDots(context, end - THICK - 11, y, to);
}
/** Two dots round the middle line of each staff in the stretch. */
function repeatDots(context: SVGContext, x: number, y: number, to: number): void {
  const middles = to - y <= STAFF_HEIGHT ? [(y + to) / 2] : [y + STAFF_HEIGHT / 2, to - STAFF_HEIGHT / 2];
  for (const middle of middles) {
    for (const offset of [-5, 5]) {
      context.beginPath();
      context.arc(x, middle + offset, 2, 0, 2 * Math.PI, false);
      context.fill();
    }
  }
}
