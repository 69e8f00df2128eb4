import type { Form } from '../../music/chart/chart';
import type { StepGrid, Turn } from './cards';
import { stepsOfSide } from './split';

/**
 * Where the sides turn over: a section that begins on another side than the section before it or than it did before, a restart, and a bar from which
 * the clave lies across the bars (or no longer does). In a closed form the way back to the beginning counts too.
 */
export function turnsOf(form: Form, closed: boolean): readonly Turn[] {
  const full = stepsOfSide(form.meter);
  const sounding = form.visits.map((visit) => {
    const first = form.bars[visit.fromBar];
    return first?.kind === 'pickup' ? (form.bars[visit.fromBar + 1] ?? first) : first;
  });
  const turns: Turn[] = [];
  for (const bar of form.bars) {
    const before = form.bars[bar.index - 1];
    const place = { bar: bar.index, section: bar.section, side: bar.side };
    const visit = sounding.indexOf(bar);
    const previous = visit > 0 ? sounding[visit - 1] : closed ? sounding.at(-1) : undefined;
    const within = bar.cycleStep % full;
    if (bar.restart && bar.index > 0) turns.push({ ...place, kind: 'restart' });
    else if (before && before.kind !== 'pickup' && within !== before.cycleStep % full) turns.push({ ...place, kind: 'across' });
    else if (visit >= 0 && ((previous && previous.side !== bar.side) || form.visits[visit]?.otherSide))
      turns.push({ ...place, kind: 'section' });
  }
  return turns;
}

/** A turn that is near, and how many bars away from where one asked. */
export interface TurnAhead {
  readonly turn: Turn;
  readonly away: number;
}

/** The farthest, in bars, that a turn is announced: a card of two bars begun here still leaves four. */
const AHEAD = 6;

/** The next place after a card's first bar where the sides turn over, and how many bars away it is, or null when none is near. Bars go round the loop. */
export function turnAhead(grid: StepGrid, fromBar: number): TurnAhead | null {
  const { panels } = grid;
  const inRange = panels.filter((panel) => panel.bar.tick >= grid.fromTick && panel.bar.tick < grid.toTick);
  const first = inRange[0]?.bar.index ?? 0;
  const end = first + inRange.length;
  for (let away = 1; away <= AHEAD; away++) {
    const straight = fromBar + away;
    const around = fromBar < end && straight >= end;
    if (around && !grid.closed) return null;
    const bar = around ? first + ((straight - end) % Math.max(1, inRange.length)) : straight;
    const turn = grid.turns.find((each) => each.bar === bar);
    if (turn && !(around && inRange.length < panels.length)) return { turn, away };
  }
  return null;
}
