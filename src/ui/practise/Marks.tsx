import type { Panel } from '../../layout/grid/cards';
import type { ChordBox } from '../../layout/grid/chord-places';
import type { BassBox, HandBox } from '../../layout/grid/hand-boxes';
import { type Stroke, TICKS_PER_STEP } from '../../vocabulary';
import { GRID_WORDS } from '../../words/grid';
import { Lettered } from './Lettered';

/** A diamond around a point. */
export const diamond = (x: number, y: number, radius: number): string =>
  `M${x} ${y - radius}l${radius} ${radius}l${-radius} ${radius}l${-radius} ${-radius}z`;

/** The ticks between which a mark is lit, as attributes that `follow-playhead.ts` reads; at least a whole step, so that a short note is seen. */
export function lit(panel: Panel, step: number, steps: number, once = false) {
  const from = panel.bar.tick + step * TICKS_PER_STEP;
  return { 'data-from': from, 'data-to': from + Math.max(1, steps) * TICKS_PER_STEP, 'data-once': once || undefined };
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

/** What the drawing of a hand's stroke is given. */
export interface HandDrawingProps {
  readonly hand: HandBox;
  readonly panel: Panel;
  readonly className: string;
  readonly selected: Stroke | null;
  readonly radius: number;
}

/** A stroke of a hand: its tails, then the bracket or the beads. */
export function HandDrawing({ hand, panel, className, selected, radius }: HandDrawingProps) {
  const { mark, stem } = hand;
  return (
    <g
      className={className}
      data-role={mark.stroke.role}
      data-selected={mark.stroke === selected || undefined}
      {...lit(panel, mark.step, mark.steps, mark.stroke.firstPassOnly)}
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

/** A bass note as a pill over its length. */
export function BassDrawing({
  bass,
  panel,
  selected,
}: {
  readonly bass: BassBox;
  readonly panel: Panel;
  readonly selected: Stroke | null;
}) {
  const { box, mark } = bass;
  const { stroke } = mark;
  const chosen = selected === stroke || (panel.doubled && selected?.tick === stroke.tick && selected.midi[0] === stroke.midi[0]);
  const round = box.height / 2;
  const left = bass.flatLeft ? 0 : round;
  const right = bass.flatRight ? 0 : round;
  const d = `M${box.x + left} ${box.y}H${box.x + box.width - right}a${right} ${round} 0 0 1 0 ${box.height}H${box.x + left}a${left} ${round} 0 0 1 0 ${-box.height}z`;
  return (
    <g
      className="bass"
      data-first={mark.stroke.firstPassOnly || undefined}
      data-selected={chosen || undefined}
      {...lit(panel, mark.step, mark.steps, mark.stroke.firstPassOnly)}
    >
      <path className="pill" d={bass.flatRight && bass.flatLeft ? `M${box.x} ${box.y}h${box.width}v${box.height}h${-box.width}z` : d} />
      {bass.lettering && <Lettered line={bass.lettering} className={mark.ringsIn ? 'bass-name ringing' : 'bass-name'} />}
      {mark.stroke.firstPassOnly && box.width > 150 && (
        <text className="bass-once" x={box.x + box.width - 18} y={box.y + box.height / 2 + 7} fontSize={20} textAnchor="end">
          {GRID_WORDS.firstTime}
        </text>
      )}
    </g>
  );
}
