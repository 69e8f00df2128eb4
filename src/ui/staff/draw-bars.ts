import { Stave, StaveConnector, type SVGContext } from 'vexflow/core';
import { STAFF_HEIGHT } from '../../layout/notation/system-heights';
import { STAFF_WORDS } from '../../words/sheet';
import type { SystemDrawing } from './system-drawing';
import { writeText } from './write-text';

const INK = { fillStyle: 'currentColor', strokeStyle: 'currentColor' };
const THIN = 1.2;
const THICK = 5;

/** The barlines of a system, its opening line, the brace of the grand staff, repeat signs, and `D.C.` where a form with repeats inside goes round. */
export function drawBars(context: SVGContext, drawing: SystemDrawing): void {
  const { geometry, notation, from } = drawing;
  const { right, left, bass } = geometry.lines;
  const first = geometry.bars[0];
  if (!first) return;
  const lines = (['clave', 'rhythm'] as const).flatMap((staff) => geometry.lines[staff] ?? []);
  const stretches = [...lines.map((line) => [line - 10, line + 10] as const), ...stretch(right, left), ...stretch(bass, undefined)];
  const top = lines[0] ?? Math.min(...stretches.map(([y]) => y));
  const lowest = stretches.at(-1)?.[1] ?? top;
  context.fillRect(first.x, top, THIN, lowest - top - (lowest === (lines.at(-1) ?? Number.NaN) + 10 ? 10 : 0));
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
    const look = { size: 17, weight: 750, anchor: 'end' } as const;
    if (next === undefined && notation.ends === 'da capo')
      writeText(context.svg, STAFF_WORDS.daCapo, end, geometry.chordY, look, 'da-capo');
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
