import { BOARD_DRILLS } from '../../state/drills/board-drill';
import type { DrillsRoom } from '../../state/drills/drills';
import { goTo } from '../app/use-place';
import { drillsBegun, drillWanted, isOwnDrill } from './drills-context';

/** Begins a drill by its name, with the number that sets it where there is one: on the board, or in the Drills place; only the board where the name is not known. */
export function beginDrill(room: DrillsRoom, name: string, seed: number | null): void {
  if (isOwnDrill(name)) {
    drillWanted.setState({ name, seed }, true);
    goTo('drills');
    return;
  }
  const known = BOARD_DRILLS.find((each) => each === name);
  if (known) {
    room.begin(known, { seed: seed ?? Math.floor(Date.now() / 1000) % 10_000 });
    drillsBegun.setState(true, true);
  }
  goTo('practise');
}
