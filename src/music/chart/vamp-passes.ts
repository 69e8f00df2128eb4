import { TICKS_PER_STEP } from '../../vocabulary';
import type { Section } from './chart';
import { findRepeats, playSection } from './repeats';
import type { ResolvedBar } from './resolve-bars';

/** How many passes of this many steps end where the clave cycle does: 1, 2 or 4; 1 if none of them does. */
export function passesToClose(steps: number, cycle: number): number {
  return [1, 2, 4].find((passes) => (steps * passes) % cycle === 0) ?? 1;
}

/** Times an open section is held when nobody says: the number in its head, else as often as closes the clave cycle of `cycle` steps. */
export function heldPasses(section: Section, resolved: readonly ResolvedBar[], cycle: number): number {
  return section.times > 1 ? section.times : passesToClose(sectionSteps(section, resolved), cycle);
}

/** Steps of one time through a section, repeats taken, pickups left out. */
function sectionSteps(section: Section, resolved: readonly ResolvedBar[]): number {
  let ticks = 0;
  for (const { bar } of playSection(section, findRepeats(section.bars).repeats, 0, true)) {
    const unit = resolved[bar];
    if (!unit || section.bars[bar]?.pickup) continue;
    ticks += unit.times * unit.bars.reduce((sum, plain) => sum + plain.ticks, 0);
  }
  return ticks / TICKS_PER_STEP;
}
