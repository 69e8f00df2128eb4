import type { Panel } from '../../layout/grid/cards';
import { cellWidth, type Frame } from '../../layout/grid/frame';
import type { LabelledStroke, StrokeLabel } from '../../practice/labelled';
import type { PassReport } from '../../state/listening/listening-state';
import { TICKS_PER_STEP } from '../../vocabulary';
import { LISTENING } from '../../words/listening';
import type { PanelOver } from '../practise/board-props';
import { plainName } from './plain-name';

/** A stroke with its place in the score. */
interface Placed {
  readonly tick: number;
  readonly stroke: LabelledStroke;
}

/** What became of the strokes of a pass, drawn over the panels: a shape and a word for each that was not right, a small tick for each that was. */
export function verdictsOver(report: PassReport): PanelOver {
  const { performance, startTick, fromPlay } = report.take.music;
  const length = performance.toTick - performance.fromTick;
  const placed = report.matched.strokes.map((stroke): Placed => {
    const travelled = startTick - performance.fromTick + stroke.playTick - fromPlay;
    return { tick: performance.fromTick + (((travelled % length) + length) % length), stroke };
  });
  return (panel, frame) => <PanelVerdicts panel={panel} frame={frame} placed={placed} />;
}

function PanelVerdicts({ panel, frame, placed }: { readonly panel: Panel; readonly frame: Frame; readonly placed: readonly Placed[] }) {
  const { tick, ticks } = panel.bar;
  const half = TICKS_PER_STEP / 2;
  const here = placed.filter((each) => each.tick >= tick - half && each.tick < tick + ticks - half).sort((a, b) => a.tick - b.tick);
  if (here.length === 0) return null;
  const cell = cellWidth(frame, panel.fullSteps);
  const { lanes, width, height, type } = frame;
  const size = type.note * 0.62;
  // Half over the lane of the clave: the names of the strokes stay free.
  const y = lanes.right.top + size * 0.2;
  return (
    <svg className="verdicts" viewBox={`0 ${lanes.chords.top} ${width} ${height - lanes.chords.top}`} aria-hidden="true">
      {here.map(({ tick: at, stroke }, index) => (
        <Verdict
          key={`${at} ${stroke.label}`}
          stroke={stroke}
          x={((at - tick) / TICKS_PER_STEP + 0.5) * cell}
          y={y}
          cell={cell}
          size={size}
          // Closer together than a cell, each is its shape alone.
          close={[here[index - 1], here[index + 1]].some((near) => near && Math.abs(near.tick - at) < TICKS_PER_STEP * 0.95)}
        />
      ))}
    </svg>
  );
}

interface VerdictProps {
  readonly stroke: LabelledStroke;
  readonly x: number;
  readonly y: number;
  readonly cell: number;
  readonly size: number;
  readonly close: boolean;
}

/** Early and late are arrows that point to where the stroke came from; a wrong note is a cross, a missed one a hollow ring, an extra one a plus. */
function Verdict({ stroke, x, y, cell, size, close }: VerdictProps) {
  const { label } = stroke;
  if (label === 'right')
    return <path className="verdict-right" d={`M${x - size * 0.35} ${y}l${size * 0.25} ${size * 0.28}l${size * 0.5} ${-size * 0.6}`} />;
  const word = close ? '' : wordOf(stroke, label);
  const wide = close ? size * 1.24 : Math.min(cell - 2, Math.max(1.2, word.length * 0.56) * size + size * 1.3);
  const left = x - wide / 2;
  return (
    <g className="verdict" data-label={label}>
      <rect x={left} y={y - size * 0.72} width={wide} height={size * 1.44} rx={size * 0.3} />
      <path d={shape(label, left + size * 0.62, y, size * 0.3)} />
      <text
        x={left + size * 1.12}
        y={y + size * 0.34}
        fontSize={size}
        {...(word.length > 3 ? { textLength: wide - size * 1.4, lengthAdjust: 'spacingAndGlyphs' } : {})}
      >
        {word}
      </text>
    </g>
  );
}

/** A wrong or an extra stroke says which note was heard, or which was not; the others say their name. */
function wordOf({ wrong, missing, played }: LabelledStroke, label: Exclude<StrokeLabel, 'right'>): string {
  const heard = wrong[0]?.midi ?? null;
  const absent = missing[0]?.midi ?? null;
  const added = played?.notes.at(-1)?.midi ?? null;
  if (label === 'extra' && added !== null) return plainName(added);
  if (label !== 'wrong note') return LISTENING.marks[label];
  if (heard !== null) return plainName(heard);
  return absent === null ? LISTENING.marks[label] : LISTENING.without(plainName(absent));
}

function shape(label: Exclude<StrokeLabel, 'right'>, x: number, y: number, r: number): string {
  switch (label) {
    case 'early':
      return `M${x + r} ${y - r}L${x - r} ${y}L${x + r} ${y + r}`;
    case 'late':
      return `M${x - r} ${y - r}L${x + r} ${y}L${x - r} ${y + r}`;
    case 'wrong note':
      return `M${x - r} ${y - r}l${2 * r} ${2 * r}M${x + r} ${y - r}l${-2 * r} ${2 * r}`;
    case 'wrong octave':
      return `M${x} ${y + r}V${y - r}M${x - r * 0.7} ${y - r * 0.3}L${x} ${y - r}L${x + r * 0.7} ${y - r * 0.3}`;
    case 'missed':
      return `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;
    case 'extra':
      return `M${x - r} ${y}h${2 * r}M${x} ${y - r}v${2 * r}`;
  }
}
