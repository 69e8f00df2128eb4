import { memo } from 'react';
import type { Card } from '../../layout/grid/cards';
import { nextBoxes } from '../../layout/grid/next-boxes';
import type { TurnAhead } from '../../layout/grid/turns';
import { FORM_WORDS } from '../../words/form-map';
import { GRID_WORDS } from '../../words/grid';
import { sayingOf } from './CardView';
import { Lettered } from './Lettered';
import { ChordDrawing, diamond } from './Marks';
import { PanelGround } from './PanelHead';

/** What the next card is given. */
export interface NextCardProps {
  readonly card: Card;
  readonly narrow: boolean;
  readonly enlarged: number;
  /** Where the sides turn over next, and how many bars after the sounding card's first; null when nothing turns soon. */
  readonly turn: TurnAhead | null;
  readonly onStartAt: (bar: number) => void;
}

/** The whole next card, small: its chords where they are played, the count with the clave in it, and the notes of the octaves. */
export const NextCard = memo(function NextCard({ card, narrow, enlarged, turn, onStartAt }: NextCardProps) {
  return (
    <section
      className="card next-card"
      aria-label={FORM_WORDS.nextName(GRID_WORDS.bars(card.fromBar, card.toBar))}
      data-panels={card.panels.length}
      data-turn={turn ? turn.turn.kind : undefined}
    >
      {card.panels.map((panel, at) => {
        const boxes = nextBoxes(panel, narrow, enlarged);
        return (
          <button
            key={panel.bar.index}
            type="button"
            className="panel"
            data-side={panel.side}
            title={GRID_WORDS.startAt(panel.bar.index + 1, panel.side)}
            onClick={() => onStartAt(panel.bar.index)}
          >
            <PanelGround panel={panel} />
            <span className="panel-head">
              <span className="side-name">{GRID_WORDS.sideName(panel.side)}</span>{' '}
              <span className="bar-name">
                {GRID_WORDS.barName(panel.bar.index + 1)}
                {panel.sectionBar === 1 && <b> · {panel.bar.section}</b>}
              </span>
              <span className="texture" />
              {at === 0 && sayingOf(card) && <span className="saying">{sayingOf(card)}</span>}
            </span>
            <svg className="panel-drawing" viewBox={`0 0 ${boxes.width} ${boxes.height}`} aria-hidden="true">
              {boxes.counts.slice(1).map((count) => (
                <line
                  key={count.x}
                  className={count.strong ? 'beat-line' : 'step-line'}
                  x1={count.x - boxes.cell / 2}
                  x2={count.x - boxes.cell / 2}
                  y1={boxes.rule}
                  y2={boxes.height}
                />
              ))}
              {boxes.diamonds.map(({ x, y, radius }) => (
                <path key={x} className="diamond" d={diamond(x, y, radius)} />
              ))}
              {boxes.counts.map((count) => (
                <text
                  key={count.x}
                  className={`count${count.strong ? ' strong' : ''}${count.clave ? ' struck' : ''}`}
                  x={count.x}
                  y={count.y}
                  fontSize={count.size}
                  textAnchor="middle"
                >
                  {count.text === '&' ? GRID_WORDS.and : count.text}
                </text>
              ))}
              {boxes.chords.map((chord) => (
                <ChordDrawing key={`${chord.mark.step} ${chord.mark.kind}`} chord={chord} />
              ))}
              {boxes.inner.map(({ x, y }) => (
                <circle key={x} className="inner-dot" cx={x} cy={y} r={boxes.cell * 0.09} />
              ))}
              {boxes.octaves.map(({ lettering, ...box }) => (
                <g key={box.x} className="right-hand">
                  <rect className="block" {...box} rx={6} />
                  <Lettered line={lettering} className="block-name" />
                </g>
              ))}
              {panel.bar.playing !== 'band' && (
                <text className="silence" x={(panel.steps * boxes.cell) / 2} y={boxes.height - 10} fontSize={26} textAnchor="middle">
                  {panel.bar.playing === 'nobody' ? `${GRID_WORDS.stop}: ${GRID_WORDS.stopMeans}` : GRID_WORDS.noChordMeans}
                </text>
              )}
            </svg>
          </button>
        );
      })}
      {turn && (
        <p className="turn">
          <b className="turn-in" data-away={turn.away}>
            {FORM_WORDS.inBars(turn.away)}
          </b>
          : {FORM_WORDS.turn(turn.turn)}
        </p>
      )}
    </section>
  );
});
