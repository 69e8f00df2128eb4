import { type CSSProperties, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { frameOf } from '../../layout/grid/frame';
import { cardAfter } from '../../layout/grid/split';
import { keyboardAround } from '../../layout/keyboard';
import type { Score } from '../../music/score';
import type { PartName } from '../../performance/performance';
import type { Stroke } from '../../vocabulary';
import { GRID_WORDS } from '../../words/grid';
import type { PractiseBoardProps } from './board-props';
import { boardRoom } from './board-room';
import { CardView } from './CardView';
import { FormMap } from './FormMap';
import type { Place } from './grid-keys';
import { HandStrip } from './HandStrip';
import { NextCard } from './NextCard';
import './practise.css';
import { strokesOf } from './touch';
import { useBoardSize } from './use-board-size';
import { useDrawnScores } from './use-drawn-scores';
import { useGridPlace } from './use-grid-place';
import { usePlayhead } from './use-playhead';
import { WhyNote } from './WhyNote';

const NO_PARTS: readonly PartName[] = [];

/**
 * The heart of the Practise place: the map of the form, the sounding card, the whole next card and the hand strip.
 * The height it fills is the window's less its own top and `--transport-height` (a length set in CSS; 100px when missing).
 */
export function PractiseBoard(props: PractiseBoardProps) {
  const { playing, cursorBar, loop, onStartAt, onStroke } = props;
  const root = useRef<HTMLElement>(null);
  const size = useBoardSize(root);
  const [sounding, setSounding] = useState<{ readonly score: Score; readonly card: number } | null>(null);
  const [selected, setSelected] = useState<Stroke | null>(null);
  const { gridOf, shapesOf } = useDrawnScores(props.whole);

  const score = (playing && sounding?.score) || props.score;
  const grid = gridOf(score);
  const shownCard = (playing && sounding ? sounding.card : grid.cardOfBar[cursorBar]) ?? 0;
  const [place, onPlace] = useGridPlace({ root, cursorBar, playing, isShown: (bar) => grid.cardOfBar[bar] === shownCard, onStartAt });
  const card = grid.cards[shownCard] ?? grid.cards[0];
  const next = cardAfter(gridOf(props.score), shownCard);
  const room = boardRoom(size, props.strip !== false);
  const frame = useMemo(() => frameOf(room.stacked, room.nowUnits, room.enlarged), [room.stacked, room.nowUnits, room.enlarged]);
  const keyboard = useMemo(
    () => keyboardAround([...score.parts.rightHand, ...score.parts.leftHand].flatMap((stroke) => stroke.midi)),
    [score],
  );
  const cellAt = (at: Place) => card?.panels.find((panel) => panel.bar.index === at.bar)?.cells[at.step];
  useEffect(() => {
    if (!playing) setSounding(null);
  }, [playing]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: other music, so the stroke that was explained is gone
  useEffect(() => setSelected(null), [props.score]);
  usePlayhead(root, {
    playing,
    heard: props.heard,
    scoreOf: (heard) => props.scoreOf?.(heard.performance) ?? props.score,
    gridOf,
    shapesOf,
    shown: { score, card: shownCard },
    cursorTick: selected?.tick ?? cellAt(place)?.tick ?? card?.tick ?? 0,
    onShow: (to, index) => setSounding({ score: to, card: index }),
  });
  const touchStroke = useCallback(
    (stroke: Stroke) => {
      setSelected(stroke);
      onStroke(stroke);
    },
    [onStroke],
  );
  const onEnter = (at: Place) => {
    const cell = cellAt(at);
    const strokes = cell ? strokesOf(cell) : [];
    const stroke = strokes[(selected ? strokes.indexOf(selected) + 1 : 0) % Math.max(1, strokes.length)];
    if (stroke) touchStroke(stroke);
  };
  const note = selected && <WhyNote sentence={props.why(selected)} floating={playing} onClose={() => setSelected(null)} />;
  if (!card) return <section className="practise" ref={root} />;
  return (
    <section
      className="practise"
      ref={root}
      style={{ '--enlarged': frame.enlarged, '--strip-height': `${room.stripPx}px` } as CSSProperties}
      aria-label={props.score.title}
      data-stacked={room.stacked || undefined}
      data-playing={playing || undefined}
    >
      <div className="practise-top">
        {props.children}
        <FormMap grid={grid} card={shownCard} loop={loop} onStartAt={onStartAt} onLoop={props.onLoop} />
      </div>
      <p id="grid-keys" hidden>
        {GRID_WORDS.keys}
      </p>
      <CardView
        grid={grid}
        card={card}
        frame={frame}
        direction={score.clave.direction}
        inLoop={loop !== null && card.fromBar < loop.toBar && card.toBar > loop.fromBar}
        selected={selected}
        silent={props.silent ?? NO_PARTS}
        place={card.fromBar <= place.bar && place.bar < card.toBar ? place : { bar: card.fromBar, step: 0 }}
        onPlace={onPlace}
        onEnter={onEnter}
        onStartAt={onStartAt}
        onStroke={touchStroke}
        staff={props.staff?.(card.fromBar, card.toBar) ?? null}
      >
        <output className="count-in" aria-hidden="true" />
        {playing && note}
      </CardView>
      {!playing && note}
      {next && <NextCard card={next} narrow={room.stacked} enlarged={room.enlarged} onStartAt={onStartAt} />}
      {props.strip !== false && <HandStrip keyboard={keyboard} />}
    </section>
  );
}
