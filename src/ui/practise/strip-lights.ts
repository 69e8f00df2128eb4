import { type HandShape, handShapes, shapeAt } from '../../layout/keyboard';
import type { Score } from '../../music/score';
import type { Heard } from '../../state/ports';
import { SHAPE_WORDS } from '../../words/hand-shape';

/** Shows on a strip what is heard in a score; called once a frame while playing. */
export type StripFollower = (score: Score, heard: Heard) => void;

const known = new WeakMap<Score, readonly HandShape[]>();

/** The hand shapes of a score, worked out once. */
function shapesOf(score: Score): readonly HandShape[] {
  const before = known.get(score);
  if (before) return before;
  const made = handShapes(score);
  known.set(score, made);
  return made;
}

/** Shows the stroke at a tick and the one after it: what the strip says when nothing plays. */
export function restAt(strip: HTMLElement, score: Score, tick: number): void {
  const shapes = shapesOf(score);
  const at = shapeAt(shapes, tick, score.closed);
  lightStrip(strip, shapes[at] ?? null, shapes[at + 1] ?? (score.closed ? (shapes[0] ?? null) : null));
}

/** Follows what is heard. The keys are lit once a stroke, not once a frame; in a count-in only the stroke that comes is shown. */
export function stripFollower(strip: HTMLElement): StripFollower {
  let lit: number | null = null;
  let last: readonly HandShape[] | null = null;
  return (score, heard) => {
    const shapes = shapesOf(score);
    if (shapes !== last) lit = null;
    last = shapes;
    const sounds = heard.countIn === null;
    const at = shapeAt(shapes, sounds ? heard.tick : heard.tick - 1, sounds && score.closed && heard.pass > 0);
    const wanted = sounds ? at : -at - 10;
    if (wanted === lit) return;
    lit = wanted;
    lightStrip(strip, sounds ? (shapes[at] ?? null) : null, shapes[at + 1] ?? (score.closed ? (shapes[0] ?? null) : null));
  };
}

/** Lights the keys of the hand strip and sets its words, without React. */
function lightStrip(strip: HTMLElement, now: HandShape | null, next: HandShape | null): void {
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
