import type { HandShape } from '../../layout/keyboard';
import { GRID_WORDS } from '../../words/grid';

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
  say(strip, 'now-left', now?.leftWords ? `· ${GRID_WORDS.leftShort} ${now.leftWords}` : '');
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

/** A flat arc from one key to another with a head at its end. */
function arrowBetween(strip: HTMLElement, from: number, to: number): string {
  const place = (midi: number) => {
    const key = strip.querySelector<SVGGElement>(`g[data-midi="${midi}"]`);
    return key ? { x: Number(key.dataset.x), y: Number(key.dataset.y) } : null;
  };
  const start = place(from);
  const end = place(to);
  if (!start || !end) return '';
  const way = end.x > start.x ? 1 : -1;
  const tip = { x: end.x - way * 15, y: end.y - 9 };
  return `M${start.x + way * 8} ${start.y - 12}Q${(start.x + end.x) / 2} ${Math.min(start.y, end.y) - 26} ${tip.x} ${tip.y}m${-way * 11} ${-3}l${way * 11} 3l${way * -2} ${-11}`;
}
