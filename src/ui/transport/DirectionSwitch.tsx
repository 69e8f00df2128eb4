import type { Direction, Side } from '../../vocabulary';
import { GRID_WORDS } from '../../words/grid';
import { SCREEN } from '../../words/screen';

/** The direction of the clave as its two panels in playing order; a press makes them change places. */
export function DirectionSwitch(props: { readonly direction: Direction; readonly onExchange: () => void }) {
  const [first, second] = props.direction === '2-3' ? ([2, 3] as const) : ([3, 2] as const);
  return (
    <button type="button" className="direction" title={SCREEN.exchange(props.direction)} onClick={props.onExchange}>
      <span className="visually-hidden">{SCREEN.exchange(props.direction)}</span>
      <Panel side={first} />
      <span className="direction-turn" aria-hidden="true">
        ⇄
      </span>
      <Panel side={second} />
    </button>
  );
}

function Panel({ side }: { readonly side: Side }) {
  return (
    <span className={side === 2 ? 'panel-two' : 'panel-three'} aria-hidden="true">
      <span className="panel-name">{GRID_WORDS.sideName(side)}</span>
      <span className="panel-name panel-number">{side}</span>
    </span>
  );
}
