import { headX } from '../../layout/notation/system-geometry';
import { GRID_WORDS } from '../../words/grid';
import { MUSIC_FONTS } from './music-fonts';
import type { SystemDrawing } from './system-drawing';

const SVG = 'http://www.w3.org/2000/svg';
/** Sizes of texts, in staff units. */
const CHORD_SIZE = 25;
const LABEL_SIZE = 15;
const COUNT_SIZE = 15;
/** Half a note head, to centre a text over it. */
const HALF_HEAD = 6;
/** The face of all text in a system; Academico gives the flat and sharp signs that the text face lacks. */
const TEXT_FACE = `"Atkinson Hyperlegible Next Variable", "${MUSIC_FONTS.text}", sans-serif`;

interface TextLook {
  readonly size: number;
  readonly weight: number;
  readonly anchor?: 'start' | 'middle' | 'end';
}

/** Chord symbols on one height, the count under them, and over each bar its number and side, with the section where one begins. */
export function drawTexts(svg: SVGSVGElement, drawing: SystemDrawing): void {
  const { geometry, notation, from } = drawing;
  const chords: SVGTextElement[] = [];
  const labels: SVGTextElement[] = [];
  geometry.bars.forEach((place, i) => {
    const bar = notation.bars[from + i];
    if (!bar) return;
    const left = i === 0 ? place.x : place.noteStart + 4;
    const label = `${bar.sectionStart === null ? '' : `${bar.sectionStart} · `}${bar.index + 1} · ${GRID_WORDS.sideName(bar.side)}`;
    labels.push(write(svg, label, left, geometry.labelY, { size: LABEL_SIZE, weight: bar.sectionStart === null ? 500 : 750 }, 'bar-label'));
    for (const chord of bar.chords) {
      const x = headX(geometry, bar.tick + chord.tick);
      chords.push(write(svg, (chord.push ? '> ' : '') + chord.text, x, geometry.chordY, { size: CHORD_SIZE, weight: 750 }, 'chord'));
    }
    for (const count of bar.counts) {
      const beat = count.text !== '&';
      write(
        svg,
        count.text,
        headX(geometry, bar.tick + count.tick) + HALF_HEAD,
        geometry.countY,
        { size: COUNT_SIZE, weight: beat ? 750 : 400, anchor: 'middle' },
        'count',
      );
    }
  });
  fitRow(chords, CHORD_SIZE, geometry.width);
  fitRow(labels, LABEL_SIZE, geometry.width);
}

/** Space between two texts on one height, and the share of its size that a text keeps at least. */
const TEXT_SPACE = 8;
const SMALLEST_SHARE = 0.55;

/** Sets a text of a row smaller where it would run into the next one, or off the page. */
function fitRow(row: readonly SVGTextElement[], size: number, end: number): void {
  row.forEach((text, i) => {
    const room = Number(row[i + 1]?.getAttribute('x') ?? end) - Number(text.getAttribute('x')) - TEXT_SPACE;
    const length = text.getComputedTextLength();
    if (length > room) text.setAttribute('font-size', `${(size * Math.max(SMALLEST_SHARE, room / length)).toFixed(1)}px`);
  });
}

function write(svg: SVGSVGElement, text: string, x: number, y: number, look: TextLook, name: string): SVGTextElement {
  const element = document.createElementNS(SVG, 'text');
  for (const part of text.split(/([♭♯])/)) element.append(/[♭♯]/.test(part) ? smallSign(part) : part);
  element.setAttribute('class', name);
  element.setAttribute('x', x.toFixed(1));
  element.setAttribute('y', y.toFixed(1));
  element.setAttribute('fill', 'currentColor');
  element.setAttribute('stroke', 'none');
  element.setAttribute('font-family', TEXT_FACE);
  element.setAttribute('font-size', `${look.size}px`);
  element.setAttribute('font-weight', String(look.weight));
  element.setAttribute('text-anchor', look.anchor ?? 'start');
  svg.append(element);
  return element;
}

/** Academico's flats and sharps are as tall as they are beside notes; beside letters they are set smaller. */
function smallSign(sign: string): SVGElement {
  const part = document.createElementNS(SVG, 'tspan');
  part.textContent = sign;
  part.setAttribute('font-family', MUSIC_FONTS.text);
  part.setAttribute('font-size', '78%');
  return part;
}
