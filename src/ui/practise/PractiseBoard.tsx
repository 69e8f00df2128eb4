import { type CSSProperties, useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { frameOf } from '../../layout/grid/frame';
import { keyboardAround, shapeAt } from '../../layout/keyboard';
import type { Score } from '../../music/score';
import type { PartName } from '../../performance/performance';
import type { Stroke } from '../../vocabulary';
import { GRID_WORDS } from '../../words/grid';
import type { PractiseBoardProps } from './board-props';
import { boardRoom } from './board-room';
import { CardView } from './CardView';
import { FormMap } from './FormMap';
import { followPlayhead, type PlayheadView } from './follow-playhead';
import type { Place } from './grid-keys';
import { HandStrip } from './HandStrip';
import { NextCard } from './NextCard';
import './practise.css';
import { lightStrip } from './strip-lights';
import { strokesOf } from './touch';
import { useBoardSize } from './use-board-size';
import { useDrawnScores } from './use-drawn-scores';
import { WhyNote } from './WhyNote';

const NO_PARTS: readonly PartName[] = [];

/**
 * The heart of the Practise place: the map of the form, the sounding card, the whole next card and the hand strip.
 * The height it fills is the window's less its own top and `--transport-height` (a length set in CSS; 100px when missing).
 */
export function PractiseBoard(props: PractiseBoardProps) {
  const { playing, cursorBar, loop, onStartAt, onStroke } = props;
  const root = useRef<HTMLElement>(null);
  const strip = useRef<HTMLElement>(null);
  const size = useBoardSize(root);
  const [sounding, setSounding] = useState<{ readonly score: Score; readonly card: number } | null>(null);
  const [place, setPlace] = useState<Place>({ bar: cursorBar, step: 0 });
  const [selected, setSelected] = useState<Stroke | null>(null);
  const { gridOf, shapesOf } = useDrawnScores(props.whole);

  const score = (playing && sounding?.score) || props.score;
  const grid = gridOf(score);
  const bar = place.bar < grid.cardOfBar.length && !playing ? place.bar : cursorBar;
  const shownCard = (playing && sounding ? sounding.card : grid.cardOfBar[bar]) ?? 0;
  const card = grid.cards[shownCard] ?? grid.cards[0];
  const next = nextCard(gridOf(props.score), shownCard);
  const room = boardRoom(size, props.strip !== false);
  const frame = useMemo(() => frameOf(room.stacked, room.nowUnits), [room.stacked, room.nowUnits]);
  const keyboard = useMemo(
    () => keyboardAround([...score.parts.rightHand, ...score.parts.leftHand].flatMap((stroke) => stroke.midi)),
    [score],
  );

  useEffect(() => setPlace((before) => (before.bar === cursorBar ? before : { bar: cursorBar, step: 0 })), [cursorBar]);
  useEffect(() => {
    if (!playing) setSounding(null);
  }, [playing]);

  // What the frame loop reads is renewed at each commit.
  const version = useRef(0);
  const view = useRef<PlayheadView | null>(null);
  useLayoutEffect(() => {
    version.current += 1;
    view.current = {
      heard: props.heard,
      scoreOf: (heard) => props.scoreOf?.(heard.performance) ?? props.score,
      gridOf,
      shapesOf,
      shown: { score, card: shownCard },
      version: version.current,
      onShow: (to, index) => setSounding({ score: to, card: index }),
    };
  });
  useEffect(() => {
    if (!playing || !root.current) return;
    return followPlayhead(root.current, () => view.current as PlayheadView);
  }, [playing]);

  // Stopped, the strip shows the stroke at the cursor.
  const tick = selected?.tick ?? grid.cards.flatMap((each) => each.panels)[bar]?.cells[place.step]?.tick ?? 0;
  useLayoutEffect(() => {
    if (playing || !strip.current) return;
    const shapes = shapesOf(score);
    const at = shapeAt(shapes, tick, score.closed);
    lightStrip(strip.current, shapes[at] ?? null, shapes[at + 1] ?? (score.closed ? (shapes[0] ?? null) : null));
  });

  // A move by key takes the focus along, to another card if need be; while playing it stays on the sounding card.
  const wantsFocus = useRef(false);
  const onPlace = useCallback(
    (to: Place) => {
      const elsewhere = grid.cardOfBar[to.bar] !== shownCard;
      if (elsewhere && playing) return;
      wantsFocus.current = true;
      setPlace(to);
      if (elsewhere) onStartAt(to.bar);
    },
    [grid, shownCard, playing, onStartAt],
  );
  useEffect(() => {
    if (!wantsFocus.current) return;
    wantsFocus.current = false;
    root.current?.querySelector<HTMLElement>(`.cell[data-bar="${place.bar}"][data-step="${place.step}"]`)?.focus({ preventScroll: true });
  }, [place]);
  const touchStroke = useCallback(
    (stroke: Stroke) => {
      setSelected(stroke);
      onStroke(stroke);
    },
    [onStroke],
  );
  const onEnter = (at: Place) => {
    const cell = grid.cards.flatMap((each) => each.panels)[at.bar]?.cells[at.step];
    const strokes = cell ? strokesOf(cell) : [];
    const stroke = strokes[(selected ? strokes.indexOf(selected) + 1 : 0) % Math.max(1, strokes.length)];
    if (stroke) touchStroke(stroke);
  };
  if (!card) return <section className="practise" ref={root} />;
  return (
    <section
      className="practise"
      ref={root}
      style={{ '--enlarged': frame.enlarged } as CSSProperties}
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
      </CardView>
      {selected && <WhyNote sentence={props.why(selected)} floating={playing} onClose={() => setSelected(null)} />}
      {next && <NextCard card={next} size={room.stacked ? 'narrow' : frame.enlarged > 1 ? 'enlarged' : 'wide'} onStartAt={onStartAt} />}
      {props.strip !== false && <HandStrip keyboard={keyboard} strip={strip} />}
    </section>
  );
}

/** The card after this one, as it will sound: round the loop, round the form, or none at the end of an open form. */
function nextCard(grid: ReturnType<ReturnType<typeof useDrawnScores>['gridOf']>, shown: number) {
  const card = grid.cards[shown];
  if (!card) return null;
  const ends = card.tick < grid.toTick && card.toTick >= grid.toTick;
  if (!ends) return grid.cards[shown + 1] ?? null;
  return grid.closed ? (grid.cards.find((each) => each.toTick > grid.fromTick) ?? null) : null;
}
