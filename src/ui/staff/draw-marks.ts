import { eventMarks } from '../../layout/notation/event-marks';
import { type Articulation, isLine, type PitchedStaff } from '../../layout/notation/notation';
import type { SystemGeometry } from '../../layout/notation/system-geometry';
import { fingersGo } from '../../layout/notation/system-heights';
import type { PlacedNote } from './draw-ties';
import type { SystemDrawing } from './system-drawing';
import { drawBox, drawGlyph, drawLine } from './write-text';

/** Glyphs by the SMuFL standard: signs over notes (E4A0 ff.), digits for fingers (ED10 ff.), octave lines (E510 ff.). */
const SIGNS: Readonly<Record<Articulation, string>> = { accent: '\uE4A0', staccato: '\uE4A2', tenuto: '\uE4A4', marcato: '\uE4AC' };
const FINGER_ZERO = 0xed10;
const OCTAVES: Readonly<Record<number, string>> = { 1: '\uE511', 2: '\uE515', [-1]: '\uE51C' };
const PARENTHESES = ['\uE51A', '\uE51B'] as const;
/** Half a note head, to centre a mark over it; half the heights of a sign and of a finger. */
const HALF_HEAD = 6;
const HALF_SIGN = 4;
const HALF_FINGER = 4;
const FINGER_SIZE = 1;
/** From the number of an octave line to its dashes, and the length of its hook. */
const NUMBER_ROOM = 24;
const HOOK = 9;

/** Signs, fingers and boxes for missing notes over the notes of one pitched staff. */
export function drawMarks(svg: SVGSVGElement, notes: readonly PlacedNote[], drawing: SystemDrawing): void {
  for (const placed of notes) {
    const { staff, event } = placed;
    const line = drawing.geometry.lines[staff];
    if (isLine(staff) || line === undefined) continue;
    const x = placed.note.getAbsoluteX() + HALF_HEAD;
    if (event.kind === 'gap' && !event.tieIn) drawBox(svg, x - 9, line - 6, 18, 52, 'gap');
    if (event.kind !== 'notes') continue;
    for (const mark of eventMarks(event, drawing.notation.clefs[staff], fingersGo(staff))) {
      if (mark.kind === 'articulation') drawGlyph(svg, SIGNS[mark.articulation], x, line + mark.y + HALF_SIGN, `sign ${mark.articulation}`);
      else drawGlyph(svg, String.fromCodePoint(FINGER_ZERO + mark.finger), x, line + mark.y + HALF_FINGER, 'finger', FINGER_SIZE);
    }
  }
}

/** The octave lines of a system: the number, in brackets where the line goes on from the system before, dashes and a hook. */
export function drawOctaveLines(svg: SVGSVGElement, geometry: SystemGeometry): void {
  for (const line of geometry.octaveLines) {
    const start = line.opens ? line.fromX : (geometry.bars[0]?.noteStart ?? line.fromX);
    const end = line.closes ? line.toX + 4 : (geometry.bars.at(-1)?.x ?? 0) + (geometry.bars.at(-1)?.width ?? 0);
    const number = OCTAVES[line.octaves] ?? '';
    const text = line.opens ? number : `${PARENTHESES[0]}${number}${PARENTHESES[1]}`;
    const down = line.octaves > 0 ? HOOK : -HOOK;
    drawGlyph(svg, text, start + 8, line.y + (line.octaves > 0 ? 5 : 7), octaveClass(line.staff));
    const from = start + NUMBER_ROOM + (line.opens ? 0 : 10);
    if (end > from)
      drawLine(
        svg,
        [
          [from, line.y],
          [end, line.y],
        ],
        'octave-dashes',
        '5 4',
      );
    if (line.closes)
      drawLine(
        svg,
        [
          [end, line.y],
          [end, line.y + down],
        ],
        'octave-hook',
      );
  }
}

const octaveClass = (staff: PitchedStaff): string => `octave-line octave-line-${staff}`;
