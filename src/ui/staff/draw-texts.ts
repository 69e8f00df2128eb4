import { headX } from '../../layout/notation/system-geometry';
import { sideName } from '../../words/grid';
import { MUSIC_FONTS } from './music-fonts';
import type { SystemDrawing } from './system-drawing';

const SVG = 'http://www.w3.org/2000/svg';
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
  geometry.bars.forEach((place, i) => {
    const bar = notation.bars[from + i];
    if (!bar) return;
    const left = i === 0 ? place.x : place.noteStart + 4;
    const label = `${bar.sectionStart === null ? '' : `${bar.sectionStart} · `}${bar.index + 1} · ${sideName(bar.side)}`;
    write(svg, label, left, geometry.labelY, { size: 15, weight: bar.sectionStart === null ? 500 : 750 }, 'bar-label');
    for (const chord of bar.chords) {
      write(
        svg,
        (chord.push ? '> ' : '') + chord.text,
        headX(geometry, bar.tick + chord.tick),
        geometry.chordY,
        { size: 25, weight: 750 },
        'chord',
      );
    }
    for (const count of bar.counts) {
      const beat = count.text !== '&';
      write(
        svg,
        count.text,
        headX(geometry, bar.tick + count.tick) + HALF_HEAD,
        geometry.countY,
        { size: 15, weight: beat ? 750 : 400, anchor: 'middle' },
        'count',
      );
    }
  });
}

function write(svg: SVGSVGElement, text: string, x: number, y: number, look: TextLook, name: string): void {
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
}

/** Academico's flats and sharps are as tall as they are beside notes; beside letters they are set smaller. */
function smallSign(sign: string): SVGElement {
  const part = document.createElementNS(SVG, 'tspan');
  part.textContent = sign;
  part.setAttribute('font-family', MUSIC_FONTS.text);
  part.setAttribute('font-size', '78%');
  return part;
}
