import { useEffect, useState } from 'react';
import type { Card, StepGrid } from '../../layout/grid/cards';
import { cardAfter } from '../../layout/grid/split';
import { type TurnAhead, turnAhead } from '../../layout/grid/turns';
import type { Score } from '../../music/score';
import type { PractiseBoardProps } from './board-props';

/** What is on the board: the score that sounds (stopped, the one to be played), its cards, the large one and the one after it. */
export interface ShownMusic {
  readonly score: Score;
  readonly grid: StepGrid;
  readonly index: number;
  /** True once the frame loop has said what is heard: from then on only it changes the card, and a change waits until it sounds. */
  readonly followed: boolean;
  readonly card: Card | null;
  readonly next: Card | null;
  /** Where the sides turn over soon, seen from the large card. */
  readonly turn: TurnAhead | null;
  /** Called by the frame loop when another card is heard. */
  readonly onShow: (score: Score, card: number) => void;
}

/** Which card is shown: the sounding one while playing, else the one at the cursor. */
export function useShownMusic(props: PractiseBoardProps, gridOf: (score: Score) => StepGrid): ShownMusic {
  const { playing, cursorBar } = props;
  const [sounding, setSounding] = useState<{ readonly score: Score; readonly card: number } | null>(null);
  useEffect(() => {
    if (!playing) setSounding(null);
  }, [playing]);
  const score = (playing && sounding?.score) || props.score;
  const grid = gridOf(score);
  const index = (playing && sounding ? sounding.card : grid.cardOfBar[cursorBar]) ?? 0;
  const card = grid.cards[index] ?? grid.cards[0] ?? null;
  const coming = gridOf(props.score);
  return {
    score,
    grid,
    index,
    followed: playing && sounding !== null,
    card,
    next: cardAfter(coming, index),
    turn: card && turnAhead(coming, card.fromBar),
    onShow: (to, at) => setSounding({ score: to, card: at }),
  };
}
