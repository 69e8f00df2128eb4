import { type PlayInFault, type ReadFigure, readPlayedIn } from '../../practice/play-in';
import type { Take } from '../../practice/take';
import { type Direction, oppositeDirection } from '../../vocabulary';

/** A rhythm of the player's own as it was heard in a take, for the grid to confirm; or why none could be heard. */
export type PlayedFigure =
  | { readonly kind: 'read'; readonly figure: ReadFigure }
  | { readonly kind: 'fault'; readonly code: PlayInFault['code'] };

/** Reads the first clave cycle of a take. `direction` is that of the chart; a take that begins on the other side is read as such. */
export function playedFigure(take: Take, direction: Direction): PlayedFigure {
  const { performance, startTick, fromPlay } = take.music;
  const { bars, fromTick, toTick, clave } = performance;
  const steps = clave.cycleSteps === 12 ? 12 : 16;
  const length = toTick - fromTick;
  const start = fromTick + ((((startTick - fromTick + take.fromPlayTick - fromPlay) % length) + length) % length);
  const bar = bars.find(({ tick }) => tick === start);
  const crossed = bar !== undefined && bar.cycleStep === steps / 2;
  const read = readPlayedIn({
    notes: take.notes,
    tempo: take.tempo,
    fromPlayTick: take.fromPlayTick,
    steps,
    direction: crossed ? oppositeDirection(direction) : direction,
  });
  if (read.ok) return { kind: 'read', figure: read.value };
  return { kind: 'fault', code: read.faults[0]?.code ?? 'nothing played' };
}
