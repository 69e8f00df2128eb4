import type { StepGrid } from '../../layout/grid/cards';
import type { Score } from '../../music/score';
import type { Heard } from '../../state/ports';
import { TICKS_PER_STEP } from '../../vocabulary';
import { FORM_WORDS } from '../../words/form-map';
import type { StripFollower } from './strip-lights';

/** What the frame loop reads; kept in a ref and renewed at each React commit. */
export interface PlayheadView {
  readonly heard: () => Heard | null;
  readonly scoreOf: (heard: Heard) => Score;
  readonly gridOf: (score: Score) => StepGrid;
  /** What the hand strip is lit by, once it is there. */
  readonly strip: () => StripFollower | null;
  /** What is on the screen. */
  readonly shown: { readonly score: Score; readonly card: number; readonly followed: boolean };
  /** Changes with each commit, so that the marks are looked up again. */
  readonly version: number;
  /** Asks React for another card; the only way from here into React. */
  readonly onShow: (score: Score, card: number) => void;
}

interface Marks {
  readonly version: number;
  readonly panels: readonly {
    readonly element: HTMLElement;
    readonly column: HTMLElement | null;
    readonly line: HTMLElement | null;
    readonly tick: number;
    readonly ticks: number;
    readonly full: number;
  }[];
  /** `lit` is what the mark shows now, so that the page is asked nothing per frame. */
  readonly lights: readonly {
    readonly element: Element;
    readonly from: number;
    readonly to: number;
    readonly once: boolean;
    lit: boolean;
  }[];
  readonly countIn: HTMLElement | null;
  /** The words that say in how many bars the sides turn over, and how many they are at the card's first bar. */
  readonly turn: { readonly element: HTMLElement; readonly away: number } | null;
}

/**
 * Runs one animation-frame loop that moves the now column, lights what sounds, by reference and without
 * React. Returns the way to stop it, which takes all light away.
 */
export function followPlayhead(root: HTMLElement, view: () => PlayheadView): () => void {
  const calm = matchMedia('(prefers-reduced-motion: reduce)');
  let marks = lookUp(root, -1);
  let frame = requestAnimationFrame(function step() {
    const now = view();
    if (marks.version !== now.version) marks = lookUp(root, now.version);
    const heard = now.heard();
    paint(heard, now);
    frame = requestAnimationFrame(step);
  });

  function paint(heard: Heard | null, now: PlayheadView): void {
    const counting = heard?.countIn ?? null;
    say(marks.countIn, counting === null ? '' : String(Math.ceil(counting)));
    if (!heard) {
      dark(marks);
      return;
    }
    const score = now.scoreOf(heard);
    const grid = now.gridOf(score);
    const card = cardAt(grid, heard.tick);
    const { shown } = now;
    if (card !== null && (!shown.followed || card !== shown.card || score !== shown.score)) now.onShow(score, card);
    now.strip()?.(score, heard);
    if (counting !== null) {
      dark(marks);
      return;
    }
    marks.panels.forEach((panel, at) => {
      if (column(panel, heard.tick, calm.matches) && marks.turn) say(marks.turn.element, FORM_WORDS.inBars(marks.turn.away - at));
    });
    for (const light of marks.lights) {
      const heardNow = light.once ? heard.pass === 0 : light.from >= grid.fromTick || heard.pass > 0;
      const on = heardNow && heard.tick >= light.from && heard.tick < light.to;
      if (light.lit === on) continue;
      light.lit = on;
      light.element.toggleAttribute('data-lit', on);
    }
  }

  return () => {
    cancelAnimationFrame(frame);
    dark(marks);
    say(marks.countIn, '');
  };
}

function column(panel: Marks['panels'][number], tick: number, calm: boolean): boolean {
  const inside = tick >= panel.tick && tick < panel.tick + panel.ticks;
  if (panel.element.hasAttribute('data-now') !== inside) panel.element.toggleAttribute('data-now', inside);
  if (!inside) return false;
  const place = (tick - panel.tick) / TICKS_PER_STEP;
  const beat = panel.full === 6 ? 3 : 2;
  const step = calm ? Math.floor(place / beat) * beat : Math.floor(place);
  if (panel.column) panel.column.style.transform = `translateX(${step * 100}%)`;
  if (panel.line && !calm) panel.line.style.transform = `translateX(${(place / panel.full) * 100}%)`;
  return true;
}

function dark(marks: Marks): void {
  for (const panel of marks.panels) panel.element.removeAttribute('data-now');
  for (const light of marks.lights) {
    light.lit = false;
    light.element.removeAttribute('data-lit');
  }
}

function say(element: HTMLElement | null, words: string): void {
  if (element && element.textContent !== words) element.textContent = words;
}

/** The card that holds a tick. */
function cardAt(grid: StepGrid, tick: number): number | null {
  const card = grid.cards.find((each) => tick >= each.tick && tick < each.toTick);
  return card ? card.index : null;
}

function lookUp(root: HTMLElement, version: number): Marks {
  const number = (element: HTMLElement | SVGElement, name: string) => Number(element.dataset[name] ?? 0);
  const turn = root.querySelector<HTMLElement>('.turn-in');
  return {
    version,
    panels: [...root.querySelectorAll<HTMLElement>('.now-card .panel')].map((element) => ({
      element,
      column: element.querySelector<HTMLElement>('.now-column'),
      line: element.querySelector<HTMLElement>('.now-line'),
      tick: number(element, 'tick'),
      ticks: number(element, 'ticks'),
      full: number(element, 'full'),
    })),
    lights: [...root.querySelectorAll<SVGElement>('.now-card svg [data-from]')].map((element) => ({
      element,
      from: number(element, 'from'),
      to: number(element, 'to'),
      once: element.dataset.once !== undefined,
      lit: element.hasAttribute('data-lit'),
    })),
    countIn: root.querySelector<HTMLElement>('.count-in'),
    turn: turn && { element: turn, away: number(turn, 'away') },
  };
}
