import { type RefObject, useMemo } from 'react';
import type { StepGrid } from '../../layout/grid/cards';
import { type Frame, frameOf, PANEL_WIDTH } from '../../layout/grid/frame';
import { FEW_ROWS, mostRows } from '../../layout/grid/percussion-choice';
import type { Score } from '../../music/score';
import type { PractiseBoardProps } from './board-props';
import { type BoardRoom, boardRoom, isStacked } from './board-room';
import { UNMEASURED, useBoardSize } from './use-board-size';

/** How the board's room is shared out, and the frame of its panels. */
export interface BoardLayout {
  /** False until the board stands for the first time: cards drawn before that would be drawn twice. */
  readonly measured: boolean;
  readonly room: BoardRoom;
  readonly frame: Frame;
  /** How much larger than its own size the staff is drawn in the place of the lanes. */
  readonly staffZoom: number;
  /** Whether percussion and pulse are shown. */
  readonly percussion: boolean;
  readonly pulse: boolean;
}

/** Measures the board and shares its room. Percussion is left out under a staff, and on narrow screens unless it is wished for always. */
export function useLayout(root: RefObject<HTMLElement | null>, props: PractiseBoardProps, score: Score, grid: StepGrid): BoardLayout {
  const known = useBoardSize(root);
  const size = known ?? UNMEASURED;
  const { showPercussion = false } = props;
  const left = score.hands !== 'tumbao';
  const wished = !props.staff && (showPercussion === 'always' || (showPercussion && !isStacked(size)));
  const pulse = wished && !props.silent?.includes('pulse');
  const most = useMemo(() => (wished ? mostRows(grid.cards, pulse) : 0), [wished, pulse, grid]);
  const fewRows = FEW_ROWS + (pulse ? 1 : 0);
  const banner = Boolean(props.banner);
  const room = boardRoom(size, props.strip !== false, { rows: most, fewRows, left, banner, asked: showPercussion === 'always' });
  const { stacked, nowUnits, enlarged, rows } = room;
  const frame = useMemo(() => frameOf(stacked, nowUnits, enlarged, { rows, left }), [stacked, nowUnits, enlarged, rows, left]);
  return { measured: known !== null, room, frame, staffZoom: zoomOf(size.width, frame), percussion: most > 0, pulse };
}

/** A staff this wide holds one clave cycle to the line, and is this high. CSS px. */
const CYCLE_PX = { width: 840, height: 346 };
/** The least width that still takes a whole cycle to the line. */
const CLOSE_PX = 502;
/** No staff is drawn smaller than this share of its own size. */
const LEAST_ZOOM = 0.6;

/** One cycle over the width of both panels as far as the card's height goes, so that the next card stays in sight. */
function zoomOf(width: number, frame: Frame): number {
  const height = (frame.height - frame.lanes.side.height) * (frame.stacked ? (2 * width) / PANEL_WIDTH : width / (2 * PANEL_WIDTH));
  if (frame.stacked) return Math.min(1, Math.max(LEAST_ZOOM, Math.min(width / CLOSE_PX, height / CYCLE_PX.height)));
  return Math.max(LEAST_ZOOM, Math.min((width - 20) / CYCLE_PX.width, height / CYCLE_PX.height));
}
