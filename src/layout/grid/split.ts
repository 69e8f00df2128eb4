import type { Form, SectionVisit, SoundingBar } from '../../music/chart/chart';
import { type Meter, type Side, TICKS_PER_STEP } from '../../vocabulary';
import type { Card, CardNote, StepGrid } from './cards';

/** Steps in a whole bar of the meter, which is one side of the clave: 8 in 4/4, 6 in 6/8. */
export const stepsOfSide = (meter: Meter): number => (meter === '6/8' ? 6 : 8);

/** Bars of one card, [fromBar, toBar), and what is to be said about it. */
export interface BarGroup {
  readonly fromBar: number;
  readonly toBar: number;
  readonly notes: readonly CardNote[];
}

/**
 * Splits the form into cards of one clave cycle. A card takes two whole bars; it ends early where a section ends, where a bar
 * is shorter than a side, and before a restart, so that the next one begins with whatever side comes. A section of a single
 * bar (a break) that completes the cycle stays on the card of the bar before it.
 */
export function splitForm(form: Form): readonly BarGroup[] {
  const side = stepsOfSide(form.meter);
  const groups: BarGroup[] = [];
  let from = 0;
  while (from < form.bars.length) {
    const first = barAt(form, from);
    const second = form.bars[from + 1];
    const pair =
      second !== undefined &&
      isWhole(first, side) &&
      isWhole(second, side) &&
      !second.restart &&
      first.kind !== 'pickup' &&
      sameCard(form, first, second);
    const toBar = pair ? from + 2 : from + 1;
    groups.push({ fromBar: from, toBar, notes: notesOf(form, first, pair, side) });
    from = toBar;
  }
  return groups;
}

function notesOf(form: Form, first: SoundingBar, pair: boolean, side: number): readonly CardNote[] {
  const notes: CardNote[] = [];
  const visit = form.visits[first.visit];
  if (first.restart && first.index > 0) notes.push('restart');
  else if (visit && visit.fromBar === first.index && first.side !== homeSide(form)) notes.push('other side');
  if (!isWhole(first, side) && first.kind !== 'pickup') notes.push('half side');
  else if (!pair && first.kind !== 'pickup' && visit && isOdd(visit)) notes.push('lone bar');
  return notes;
}

/** The side on which the form begins, a pickup not counted. */
export const homeSide = (form: Form): Side => (form.clave.direction === '2-3' ? 2 : 3);

/** True for a visit with an odd number of bars. */
export const isOdd = (visit: SectionVisit): boolean => (visit.toBar - visit.fromBar) % 2 === 1;

const isWhole = (bar: SoundingBar, side: number): boolean => bar.ticks === side * TICKS_PER_STEP;

function sameCard(form: Form, first: SoundingBar, second: SoundingBar): boolean {
  if (first.visit === second.visit) return true;
  const next = form.visits[second.visit];
  const here = form.visits[first.visit];
  return next !== undefined && here !== undefined && next.toBar - next.fromBar === 1 && isOdd(here);
}

function barAt(form: Form, index: number): SoundingBar {
  const bar = form.bars[index];
  if (!bar) throw new Error(`bar ${index} of ${form.bars.length}`);
  return bar;
}

/** The card after one, as it will sound: round the loop, round the form, or null at the end of an open form. */
export function cardAfter(grid: StepGrid, index: number): Card | null {
  const card = grid.cards[index];
  if (!card) return null;
  const ends = card.tick < grid.toTick && card.toTick >= grid.toTick;
  if (!ends) return grid.cards[index + 1] ?? null;
  return grid.closed ? (grid.cards.find((each) => each.toTick > grid.fromTick) ?? null) : null;
}
