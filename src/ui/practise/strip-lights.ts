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
  strip.querySelectorAll('g.move').forEach((arrow, at) => {
    const move = next?.moves[at];
    const drawn = move ? arrowBetween(strip, move.from, move.to) : '';
    for (const path of arrow.children) path.setAttribute('d', drawn);
  });
  const kept = keptTogether((next?.stays ?? []).flatMap((midi) => placeOf(strip, midi) ?? []));
  strip.querySelectorAll('g.stays').forEach((label, at) => {
    labelKept(label, kept[at] ?? null);
  });
  say(strip, 'now', now?.words ?? '', now?.leftWords ? `${SHAPE_WORDS.left} ${now.leftWords}` : '');
  say(strip, 'next', next?.words ?? '', next?.motion ?? '');
}

function mark(key: Element, name: string, now: boolean | undefined, next: boolean | undefined): void {
  const value = `${now ? 'now' : ''}${now && next ? ' ' : ''}${next ? 'next' : ''}`;
  if (value === '') key.removeAttribute(name);
  else key.setAttribute(name, value);
}

/** Between the notes and what is said of them; a line may end with it but not begin. */
const DOT = '\u00a0· ';

/** New words are new elements: words that are moved along a line would count as a shift of the page at every stroke. */
function say(strip: HTMLElement, name: string, notes: string, more: string): void {
  const place = strip.querySelector(`[data-words="${name}"]`);
  const between = more === '' ? '' : DOT;
  if (!place || place.textContent === `${notes}${between}${more}`) return;
  const bold = document.createElement('b');
  const plain = document.createElement('span');
  bold.textContent = notes;
  plain.textContent = more;
  place.replaceChildren(bold, between, plain);
}

interface Place {
  readonly x: number;
  readonly y: number;
}

/** Width of the label over notes that stay, in the strip's units. */
export const STAYS_WIDTH = 66;

/** Notes that stay, in the runs that share one label: labels of their own would lie over each other. */
function keptTogether(places: readonly Place[]): Place[][] {
  const runs: Place[][] = [];
  for (const place of [...places].sort((one, other) => one.x - other.x)) {
    const run = runs.at(-1);
    if (run && place.x - (run[0]?.x ?? 0) < 2 * STAYS_WIDTH) run.push(place);
    else runs.push([place]);
  }
  return runs;
}

/** Puts a label over a run, with a stem down to every mark; takes it away where there is none. */
function labelKept(label: Element, run: readonly Place[] | null): void {
  label.toggleAttribute('data-shown', run !== null);
  const [path, box, text] = label.children;
  if (!run || !path || !box || !text) return;
  const first = run[0]?.x ?? 0;
  const middle = Math.max(STAYS_WIDTH / 2 + 2, (first + (run.at(-1)?.x ?? first)) / 2);
  path.setAttribute('d', run.map(({ x, y }) => `M${middle} 16H${x}V${y - 16}`).join(''));
  box.setAttribute('x', String(middle - STAYS_WIDTH / 2));
  text.setAttribute('x', String(middle));
  text.textContent = run.length > 1 ? SHAPE_WORDS.stay : SHAPE_WORDS.stays;
}

/** A straight arrow from one key's mark to the edge of another's. */
function arrowBetween(strip: HTMLElement, from: number, to: number): string {
  const start = placeOf(strip, from);
  const end = placeOf(strip, to);
  if (!start || !end) return '';
  const length = Math.hypot(end.x - start.x, end.y - start.y);
  if (length < 1) return '';
  const along = { x: (end.x - start.x) / length, y: (end.y - start.y) / length };
  const tip = { x: end.x - along.x * EDGE, y: end.y - along.y * EDGE };
  const barb = (turn: number) => {
    const x = tip.x - along.x * 11 + along.y * turn;
    const y = tip.y - along.y * 11 - along.x * turn;
    return `${x} ${y}`;
  };
  // From the edge of where the hand was, where there is room for that.
  const tail = length > 2 * EDGE + 12 ? { x: start.x + along.x * EDGE, y: start.y + along.y * EDGE } : start;
  return `M${tail.x} ${tail.y}L${tip.x} ${tip.y}M${barb(8)}L${tip.x} ${tip.y}L${barb(-8)}`;
}

/** From a mark's middle to where an arrow ends. */
const EDGE = 18;

function placeOf(strip: HTMLElement, midi: number): Place | null {
  const key = strip.querySelector<SVGGElement>(`g[data-midi="${midi}"]`);
  return key ? { x: Number(key.dataset.x), y: Number(key.dataset.y) } : null;
}
