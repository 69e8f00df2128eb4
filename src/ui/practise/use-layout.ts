import { type RefObject, useMemo } from 'react';
import type { StepGrid } from '../../layout/grid/cards';
import { type Frame, frameOf } from '../../layout/grid/frame';
import { FEW_ROWS, mostRows } from '../../layout/grid/percussion-choice';
import type { Score } from '../../music/score';
import type { PractiseBoardProps } from './board-props';
import { type BoardRoom, boardRoom, STACK_BELOW_PX } from './board-room';
import { useBoardSize } from './use-board-size';

/** How the board's room is shared out, and the frame of its panels. */
export interface BoardLayout {
  readonly room: BoardRoom;
  readonly frame: Frame;
  /** Whether percussion and pulse are shown. */
  readonly percussion: boolean;
  readonly pulse: boolean;
}

/** Measures the board and shares its room. Percussion is left out on narrow screens unless it is wished for always. */
export function useLayout(root: RefObject<HTMLElement | null>, props: PractiseBoardProps, score: Score, grid: StepGrid): BoardLayout {
  const size = useBoardSize(root);
  const { showPercussion = false } = props;
  const left = score.hands !== 'tumbao';
  const wished = showPercussion === 'always' || (showPercussion && size.width >= STACK_BELOW_PX);
  const pulse = wished && !props.silent?.includes('pulse');
  const most = useMemo(() => (wished ? mostRows(grid.cards, pulse) : 0), [wished, pulse, grid]);
  const fewRows = FEW_ROWS + (pulse ? 1 : 0);
  const banner = Boolean(props.banner);
  const room = boardRoom(size, props.strip !== false, { rows: most, fewRows, left, banner });
  const { stacked, nowUnits, enlarged, rows } = room;
  const frame = useMemo(() => frameOf(stacked, nowUnits, enlarged, { rows, left }), [stacked, nowUnits, enlarged, rows, left]);
  return { room, frame, percussion: most > 0, pulse };
}
