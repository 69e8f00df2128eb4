import { MUSIC_FONTS } from './music-fonts';

const SVG = 'http://www.w3.org/2000/svg';
/** The face of all text in a system; Academico gives the flat and sharp signs that the text face lacks. */
const TEXT_FACE = `"Atkinson Hyperlegible Next Variable", "${MUSIC_FONTS.text}", sans-serif`;
/** Four staff spaces to the em, as the SMuFL specification defines. */
const MUSIC_SIZE = 40;

/** How a text looks: size in staff units, weight, which end of it stands at its place. */
export interface TextLook {
  readonly size: number;
  readonly weight: number;
  readonly anchor?: 'start' | 'middle' | 'end';
}

/** Writes a text with its baseline at `y`. */
export function writeText(svg: SVGSVGElement, text: string, x: number, y: number, look: TextLook, name: string): SVGTextElement {
  const element = placed(svg, x, y, look.anchor ?? 'start', name);
  for (const part of text.split(/([♭♯])/)) element.append(/[♭♯]/.test(part) ? smallSign(part) : part);
  element.setAttribute('font-family', TEXT_FACE);
  element.setAttribute('font-size', `${look.size}px`);
  element.setAttribute('font-weight', String(look.weight));
  return element;
}

/** Draws a glyph of the music font, centred, its origin at `y`; `size` is a share of its usual size. */
export function drawGlyph(svg: SVGSVGElement, glyph: string, x: number, y: number, name: string, size = 1): SVGTextElement {
  const element = placed(svg, x, y, 'middle', name);
  element.append(glyph);
  element.setAttribute('font-family', MUSIC_FONTS.music);
  element.setAttribute('font-size', `${MUSIC_SIZE * size}px`);
  element.setAttribute('aria-hidden', 'true');
  return element;
}

/** Draws a line in staff units, broken into dashes where asked. */
export function drawLine(svg: SVGSVGElement, points: readonly (readonly [number, number])[], name: string, dashes?: string): void {
  const element = document.createElementNS(SVG, 'path');
  element.setAttribute('class', name);
  element.setAttribute('d', `M${points.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`);
  element.setAttribute('fill', 'none');
  element.setAttribute('stroke', 'currentColor');
  element.setAttribute('stroke-width', '1.2');
  if (dashes) element.setAttribute('stroke-dasharray', dashes);
  svg.append(element);
}

/** Draws the outline of a box with rounded corners. */
export function drawBox(svg: SVGSVGElement, x: number, y: number, width: number, height: number, name: string): void {
  const element = document.createElementNS(SVG, 'rect');
  const values = { class: name, x, y, width, height, rx: 2, fill: 'none', stroke: 'currentColor', 'stroke-width': 1.2 };
  for (const [key, value] of Object.entries(values)) element.setAttribute(key, typeof value === 'number' ? value.toFixed(1) : value);
  svg.append(element);
}

function placed(svg: SVGSVGElement, x: number, y: number, anchor: string, name: string): SVGTextElement {
  const element = document.createElementNS(SVG, 'text');
  element.setAttribute('class', name);
  element.setAttribute('x', x.toFixed(1));
  element.setAttribute('y', y.toFixed(1));
  element.setAttribute('fill', 'currentColor');
  element.setAttribute('stroke', 'none');
  element.setAttribute('text-anchor', anchor);
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
