import type { HandShape } from '../../layout/keyboard';
import { SHAPE_WORDS } from '../../words/hand-shape';

/** Lights the keys of the hand strip and sets its words, without React: called once a stroke while playing. */
export function lightStrip(strip: HTMLElement, now: HandShape | null, next: HandShape | null): void {
  for (const key of strip.querySelectorAll<SVGGElement>('g[data-midi]')) {
    const midi = Number(key.dataset.midi);
    mark(key, 'data-right', now?.right.includes(midi), next?.right.includes(midi));
    mark(key, 'data-left', now?.left.includes(midi), next?.left.includes(midi));
    key.toggleAttribute('data-stays', next?.stays.includes(midi) ?? false);
  }
  const arrows = [...strip.querySelectorAll<SVGPathElement>('path.move')];
  arrows.forEach((arrow, at) => {
    const move = next?.moves[at];
    arrow.setAttribute('d', move ? arrowBetween(strip, move.from, move.to) : '');
  });
  say(strip, 'now', now?.words ?? '');
  say(strip, 'now-left', now?.leftWords ? `· ${SHAPE_WORDS.left} ${now.leftWords}` : '');
  say(strip, 'next', next?.words ?? '');
  say(strip, 'next-motion', next?.motion ? `· ${next.motion}` : '');
}

function mark(key: Element, name: string, now: boolean | undefined, next: boolean | undefined): void {
  const value = `${now ? 'now' : ''}${now && next ? ' ' : ''}${next ? 'next' : ''}`;
  if (value === '') key.removeAttribute(name);
  else key.setAttribute(name, value);
}

function say(strip: HTMLElement, name: string, words: string): void {
  const place = strip.querySelector(`[data-words="${name}"]`);
  if (place && place.textContent !== words) place.textContent = words;
}

/** A straight arrow from the middle of one key's mark to the edge of another's. */
function arrowBetween(strip: HTMLElement, from: number, to: number): string {
  const start = placeOf(strip, from);
  const end = placeOf(strip, to);
  if (!start || !end) return '';
  const length = Math.hypot(end.x - start.x, end.y - start.y);
  if (length < 1) return '';
  const along = { x: (end.x - start.x) / length, y: (end.y - start.y) / length };
  const tip = { x: end.x - along.x * EDGE, y: end.y - along.y * EDGE };
  const barb = (turn: number) => {
    const x = tip.x - along.x * 10 + along.y * turn;
    const y = tip.y - along.y * 10 - along.x * turn;
    return `${x} ${y}`;
  };
  return `M${start.x} ${start.y}L${tip.x} ${tip.y}M${barb(7)}L${tip.x} ${tip.y}L${barb(-7)}`;
}

/** From a mark's middle to where an arrow ends. */
const EDGE = 18;

function placeOf(strip: HTMLElement, midi: number): { readonly x: number; readonly y: number } | null {
  const key = strip.querySelector<SVGGElement>(`g[data-midi="${midi}"]`);
  return key ? { x: Number(key.dataset.x), y: Number(key.dataset.y) } : null;
}
