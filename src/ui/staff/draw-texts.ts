import type { NotatedBar } from '../../layout/notation/notation';
import { headX } from '../../layout/notation/system-geometry';
import { GRID_WORDS } from '../../words/grid';
import { STAFF_WORDS } from '../../words/sheet';
import type { SystemDrawing } from './system-drawing';
import { drawBox, drawLine, writeText } from './write-text';

/** Sizes of texts, in staff units. */
const CHORD_SIZE = 25;
const SIDE_SIZE = 17;
const NUMBER_SIZE = 13;
const COUNT_SIZE = 15;
const ENDING_SIZE = 14;
/** Half a note head, to centre a text over it. */
const HALF_HEAD = 6;
/** Space round the name of a section in its box. */
const BOX_PAD = 4;

/** Chord symbols on one height, the count under them, over each bar its number and side, with the section in a box where one begins, and the brackets of endings. */
export function drawTexts(svg: SVGSVGElement, drawing: SystemDrawing): void {
  const { geometry, notation, from } = drawing;
  const chords: SVGTextElement[] = [];
  const labels: SVGTextElement[] = [];
  geometry.bars.forEach((place, i) => {
    const bar = notation.bars[from + i];
    if (!bar) return;
    labels.push(...drawLabels(svg, drawing, i, bar));
    for (const chord of bar.chords) {
      const x = headX(geometry, bar.tick + chord.tick);
      chords.push(writeText(svg, (chord.push ? '> ' : '') + chord.text, x, geometry.chordY, { size: CHORD_SIZE, weight: 750 }, 'chord'));
    }
    for (const count of geometry.countY === null ? [] : bar.counts) {
      const look = {
        size: COUNT_SIZE * (notation.scale === 2 ? 0.8 : 1),
        weight: /\d/.test(count.text) ? 750 : 400,
        anchor: 'middle',
      } as const;
      writeText(
        svg,
        count.text === '&' ? GRID_WORDS.and : count.text,
        headX(geometry, bar.tick + count.tick) + HALF_HEAD,
        geometry.countY ?? 0,
        look,
        'count',
      );
    }
    if (bar.ending && geometry.endingY !== null) drawEnding(svg, place.x, place.x + place.width, geometry.endingY, bar.ending);
  });
  fitRow(chords, geometry.width);
  fitRow(labels, geometry.width);
}

/** Number and side over the start of a bar (and over its middle where it holds two), the section's name in a box, and what the band does. */
function drawLabels(svg: SVGSVGElement, drawing: SystemDrawing, i: number, bar: NotatedBar): SVGTextElement[] {
  const { geometry } = drawing;
  const place = geometry.bars[i];
  const y = geometry.labelY;
  let x = i === 0 ? (place?.x ?? 0) : (place?.noteStart ?? 0) + 4;
  if (bar.sectionStart !== null) {
    const name = writeText(svg, bar.sectionStart, x + BOX_PAD, y, { size: SIDE_SIZE, weight: 800 }, 'section-mark');
    const width = name.getComputedTextLength() + 2 * BOX_PAD;
    drawBox(svg, x, y - SIDE_SIZE + 2, width, SIDE_SIZE + 2, 'section-box');
    x += width + 8;
  }
  return bar.sides.flatMap((half, n) => {
    const at = n === 0 ? x : headX(geometry, bar.tick + half.tick);
    const number = writeText(svg, String(bar.index + n + 1), at, y, { size: NUMBER_SIZE, weight: 500 }, 'bar-number');
    const note = n === bar.sides.length - 1 ? STAFF_WORDS.barNote(bar.silence, bar.hits.length > 0, bar.repeat.end) : '';
    const look = { size: SIDE_SIZE, weight: 750 };
    return [number, writeText(svg, GRID_WORDS.sideName(half.side) + note, at + number.getComputedTextLength() + 6, y, look, 'bar-label')];
  });
}

function drawEnding(svg: SVGSVGElement, from: number, to: number, y: number, ending: NonNullable<NotatedBar['ending']>): void {
  const left = from + (ending.opens ? 3 : 0);
  const right = to - (ending.last ? 3 : 0);
  const down = y + 13;
  drawLine(
    svg,
    [...(ending.opens ? ([[left, down]] as const) : []), [left, y], [right, y], ...(ending.closes ? ([[right, down]] as const) : [])],
    'ending',
  );
  if (ending.opens) writeText(svg, `${ending.passes.join('.')}.`, left + 5, down, { size: ENDING_SIZE, weight: 750 }, 'ending-number');
}

/** Space between two texts on one height, and the share of its size that a text keeps at least. */
const TEXT_SPACE = 8;
const SMALLEST_SHARE = 0.55;

/** Sets a text of a row smaller where it would run into the next one, or off the page. */
function fitRow(row: readonly SVGTextElement[], end: number): void {
  row.forEach((text, i) => {
    if (text.classList.contains('bar-number')) return;
    const room = Number(row[i + 1]?.getAttribute('x') ?? end) - Number(text.getAttribute('x')) - TEXT_SPACE;
    const length = text.getComputedTextLength();
    if (length <= room) return;
    const share = Math.max(SMALLEST_SHARE, room / length);
    text.setAttribute('font-size', `${(Number.parseFloat(text.getAttribute('font-size') ?? '') * share).toFixed(1)}px`);
  });
}
