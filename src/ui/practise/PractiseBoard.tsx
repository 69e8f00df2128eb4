import { type CSSProperties, Suspense, useRef } from 'react';
import { rowsOfCard } from '../../layout/grid/percussion-choice';
import type { PartName } from '../../performance/performance';
import { GRID_WORDS } from '../../words/grid';
import type { EditedPlace, PractiseBoardProps } from './board-props';
import { CardView, sayingOf } from './CardView';
import { FormMap, HandStrip, NextCard, StaffCard } from './fetched-parts';
import { OverCard } from './OverCard';
import './practise.css';
import type { StripFollower } from './strip-lights';
import { useDrawnScores } from './use-drawn-scores';
import { useGridPlace } from './use-grid-place';
import { useLayout } from './use-layout';
import { usePlayhead } from './use-playhead';
import { useSelection } from './use-selection';
import { useShownMusic } from './use-shown-music';

const NO_PARTS: readonly PartName[] = [];
const NO_EDITS: readonly EditedPlace[] = [];

/**
 * The heart of the Practise place: the map of the form, the sounding card, the whole next card and the hand strip.
 * The height it fills is the window's less its own top and `--transport-height` (a length set in CSS; 100px when missing).
 */
export function PractiseBoard(props: PractiseBoardProps) {
  const { playing, cursorBar, loop, banner, onStartAt } = props;
  const root = useRef<HTMLElement>(null);
  const strip = useRef<StripFollower>(null);
  const { gridOf } = useDrawnScores(props.whole);
  const { score, grid, index, followed, card, next, turn, onShow } = useShownMusic(props, gridOf);
  const { measured, room, frame, staffZoom, percussion, pulse } = useLayout(root, props, score, grid);
  const isShown = (bar: number) => grid.cardOfBar[bar] === index;
  const [place, onPlace] = useGridPlace({ root, cursorBar, playing, isShown, onStartAt });
  const { selected, close, onTouch, onEnter } = useSelection(props.score, grid.panels, props);
  const atPlace = isShown(place.bar) ? grid.panels[place.bar]?.cells[place.step] : undefined;
  usePlayhead(root, {
    playing,
    heard: props.heard,
    scoreOf: (heard) => props.scoreOf?.(heard.performance) ?? props.score,
    gridOf,
    strip: () => strip.current,
    shown: { score, card: index, followed },
    onShow,
  });
  if (!card) return <section className="practise" ref={root} />;
  const rows = rowsOfCard(card, room.rows, pulse);
  const low = room.stacked
    ? place.bar === card.toBar - 1
    : !card.panels.some((panel) => panel.right.some((mark) => mark.stroke === selected));
  const staff = props.staff?.(card.fromBar, card.toBar);
  const sentence = selected ? props.why(selected) : '';
  const why = sentence === '' ? null : { sentence, at: low ? ('top' as const) : ('bottom' as const), onClose: close };
  const shared = {
    card,
    frame,
    inLoop: loop !== null && card.fromBar < loop.toBar && card.toBar > loop.fromBar,
    saying: props.vamp ? GRID_WORDS.vamp[props.vamp] : sayingOf(card),
    head: banner && <p className="banner">{banner}</p>,
    onStartAt,
    over: props.over ?? null,
    children: <OverCard percussion={percussion ? rows : null} why={why} />,
  };
  return (
    <section
      className="practise"
      ref={root}
      style={{ '--enlarged': frame.enlarged, '--strip-height': `${room.stripPx}px` } as CSSProperties}
      aria-label={props.score.title}
      data-stacked={room.stacked || undefined}
      data-playing={playing || undefined}
      data-vamp={props.vamp ?? undefined}
    >
      <div className="practise-top">
        {props.children}
        <Suspense fallback={<div className="form-map" />}>
          <FormMap grid={grid} card={index} loop={loop} onStartAt={onStartAt} onLoop={props.onLoop} />
        </Suspense>
      </div>
      <p id="grid-keys" hidden>
        {GRID_WORDS.keys}
      </p>
      <output className="spoken-only">{props.vamp && GRID_WORDS.vampSpoken[props.vamp]}</output>
      {measured && (
        <>
          {staff ? (
            <Suspense fallback={<div className="card now-card" />}>
              <StaffCard {...shared} staff={staff} zoom={staffZoom} />
            </Suspense>
          ) : (
            <CardView
              {...shared}
              grid={grid}
              direction={score.clave.direction}
              selected={selected}
              silent={props.silent ?? NO_PARTS}
              edits={props.edits ?? NO_EDITS}
              place={isShown(place.bar) ? place : { bar: card.fromBar, step: 0 }}
              onPlace={onPlace}
              onEnter={onEnter}
              onTouch={onTouch}
              editing={props.onEmptyCell !== undefined}
              rows={rows.shown}
            />
          )}
          {next && (
            <Suspense fallback={<div className="card next-card" style={{ height: room.nextPx }} />}>
              <NextCard card={next} narrow={room.stacked} enlarged={room.enlarged} turn={turn} onStartAt={onStartAt} />
            </Suspense>
          )}
          {props.strip !== false && (
            <Suspense fallback={<div className="hand-strip" />}>
              <HandStrip score={score} playing={playing} cursorTick={selected?.tick ?? atPlace?.tick ?? card.tick} follower={strip} />
            </Suspense>
          )}
        </>
      )}
    </section>
  );
}
