import type { Panel } from '../../layout/grid/cards';
import type { ChordBox } from '../../layout/grid/chord-places';
import type { BassBox, HandBox } from '../../layout/grid/hand-boxes';
import type { PanelBoxes } from '../../layout/grid/panel-boxes';
import { type Stroke, TICKS_PER_STEP } from '../../vocabulary';
import { GRID_WORDS } from '../../words/grid';
import { Lettered } from './Lettered';

export interface PanelDrawingProps {
  readonly panel: Panel;
  readonly boxes: PanelBoxes;
  readonly selected: Stroke | null;
}

/** The lanes of a panel below its heading, as one drawing. Marks carry the ticks between which they are lit. */
export function PanelDrawing({ panel, boxes, selected }: PanelDrawingProps) {
  const { frame, cell } = boxes;
  const { lanes, width, height } = frame;
  const top = lanes.chords.top;
  const countBase = lanes.count.top + lanes.count.height / 2;
  const lines = Array.from({ length: panel.steps - 1 }, (_, at) => at + 1);
  const strong = panel.fullSteps === 6 ? 3 : 2;
  return (
    <svg className="panel-drawing" viewBox={`0 ${top} ${width} ${height - top}`} aria-hidden="true">
      {lines.map((step) => (
        <line
          key={step}
          className={step % strong === 0 ? 'beat-line' : 'step-line'}
          x1={step * cell}
          x2={step * cell}
          y1={lanes.count.top}
          y2={height}
        />
      ))}
      {boxes.diamonds.map(({ x, y }) => (
        <line key={x} className="hairline" x1={x} x2={x} y1={y} y2={height} />
      ))}
      {boxes.line.length > 1 && <polyline className="octave-line" points={boxes.line.map(({ x, y }) => `${x},${y}`).join(' ')} />}
      {boxes.chords.map((chord) => (
        <ChordDrawing key={`${chord.mark.step} ${chord.mark.kind}`} chord={chord} />
      ))}
      {panel.counts.map((count) => (
        <text
          key={count.step}
          className={count.strong ? 'count strong' : 'count'}
          x={(count.step + 0.5) * cell}
          y={countBase + frame.type.count * 0.36}
          fontSize={count.strong ? frame.type.count * 1.18 : frame.type.count}
          textAnchor="middle"
        >
          {count.text}
        </text>
      ))}
      {boxes.diamonds.map(({ x, y }, at) => (
        <path key={x} className="diamond" d={diamond(x, y, 15)} {...lit(panel, panel.claveSteps[at] ?? 0, 1)} />
      ))}
      {boxes.hits.map((hit) => (
        <path key={hit.x} className="hit" d={`M${hit.x - 20} ${hit.y - 13}l40 13l-40 13`} />
      ))}
      {boxes.right.map((hand) => (
        <HandDrawing key={hand.mark.step} hand={hand} panel={panel} className="right-hand" selected={selected} radius={9} />
      ))}
      {boxes.left.map((hand) => (
        <HandDrawing key={hand.mark.step} hand={hand} panel={panel} className="left-hand" selected={selected} radius={3} />
      ))}
      {boxes.bass.map((bass) => (
        <BassDrawing key={`${bass.mark.step} ${bass.mark.stroke.midi[0]}`} bass={bass} panel={panel} selected={selected} />
      ))}
      <Silence panel={panel} boxes={boxes} />
    </svg>
  );
}

/** A diamond around a point. */
export const diamond = (x: number, y: number, radius: number): string =>
  `M${x} ${y - radius}l${radius} ${radius}l${-radius} ${radius}l${-radius} ${-radius}z`;

/** The ticks between which a mark is lit; at least a whole step, so that a short note is seen. */
function lit(panel: Panel, step: number, steps: number) {
  const from = panel.bar.tick + step * TICKS_PER_STEP;
  return { 'data-from': from, 'data-to': from + Math.max(1, steps) * TICKS_PER_STEP };
}

/** A chord symbol with its tie. */
export function ChordDrawing({ chord }: { readonly chord: ChordBox }) {
  const { tie, mark, lettering } = chord;
  return (
    <>
      {tie && (
        <path
          className="chord-tie"
          d={`M${tie.from.x} ${tie.from.y}Q${(tie.from.x + tie.to.x) / 2} ${tie.from.y + tie.dip} ${tie.to.x} ${tie.to.y}`}
        />
      )}
      <Lettered line={lettering} className={`chord ${mark.kind}`} />
    </>
  );
}

interface HandDrawingProps {
  readonly hand: HandBox;
  readonly panel: Panel;
  readonly className: string;
  readonly selected: Stroke | null;
  readonly radius: number;
}

function HandDrawing({ hand, panel, className, selected, radius }: HandDrawingProps) {
  const { mark, stem } = hand;
  return (
    <g
      className={className}
      data-role={mark.stroke.role}
      data-selected={mark.stroke === selected || undefined}
      {...lit(panel, mark.step, mark.steps)}
    >
      {hand.tails.map((tail) => (
        <rect key={tail.y} className="tail" {...tail} rx={5} />
      ))}
      {hand.cap && <rect className="cap" {...hand.cap} rx={4} />}
      {stem && <line className="stem" x1={hand.centre} x2={hand.centre} y1={stem.top} y2={stem.bottom} />}
      {hand.blocks.map(({ lettering, ...box }) => (
        <g key={box.y}>
          <rect className="block" {...box} rx={radius === 9 ? 6 : radius} />
          <Lettered line={lettering} className="block-name" />
        </g>
      ))}
      {hand.beads.map(({ lettering, ...box }) => (
        <g key={box.y}>
          <rect className="bead" {...box} rx={box.height / 2} />
          <Lettered line={lettering} className="bead-name" />
        </g>
      ))}
    </g>
  );
}

function BassDrawing({ bass, panel, selected }: { readonly bass: BassBox; readonly panel: Panel; readonly selected: Stroke | null }) {
  const { box, mark } = bass;
  const round = box.height / 2;
  const left = bass.flatLeft ? 0 : round;
  const right = bass.flatRight ? 0 : round;
  const d = `M${box.x + left} ${box.y}H${box.x + box.width - right}a${right} ${round} 0 0 1 0 ${box.height}H${box.x + left}a${left} ${round} 0 0 1 0 ${-box.height}z`;
  return (
    <g
      className="bass"
      data-first={mark.stroke.firstPassOnly || undefined}
      data-selected={mark.stroke === selected || undefined}
      {...lit(panel, mark.step, mark.steps)}
    >
      <path className="pill" d={bass.flatRight && bass.flatLeft ? `M${box.x} ${box.y}h${box.width}v${box.height}h${-box.width}z` : d} />
      {bass.lettering && <Lettered line={bass.lettering} className="bass-name" />}
    </g>
  );
}

/** What a bar without notes says: rest and stop in words. */
function Silence({ panel, boxes }: { readonly panel: Panel; readonly boxes: PanelBoxes }) {
  const { playing } = panel.bar;
  if (playing === 'band') return null;
  const { right } = boxes.frame.lanes;
  const x = (panel.steps * boxes.cell) / 2;
  const y = right.top + right.height / 2;
  return (
    <g className="silence" textAnchor="middle">
      <text x={x} y={y + 6} fontSize={54}>
        {playing === 'nobody' ? GRID_WORDS.stop : GRID_WORDS.noChord}
      </text>
      <text x={x} y={y + 42} fontSize={26}>
        {playing === 'nobody' ? GRID_WORDS.stopMeans : GRID_WORDS.noChordMeans}
      </text>
    </g>
  );
}
