import type { Panel } from '../../layout/grid/cards';
import type { PanelBoxes } from '../../layout/grid/panel-boxes';
import type { PartName } from '../../performance/performance';
import type { Stroke } from '../../vocabulary';
import { GRID_WORDS } from '../../words/grid';
import { BassDrawing, ChordDrawing, diamond, HandDrawing, lit } from './Marks';

export interface PanelDrawingProps {
  readonly panel: Panel;
  readonly boxes: PanelBoxes;
  readonly selected: Stroke | null;
  /** Parts that do not sound. */
  readonly silent: readonly PartName[];
}

/** The lanes of a panel below its heading, as one drawing. Marks carry the ticks between which they are lit. */
export function PanelDrawing({ panel, boxes, selected, silent }: PanelDrawingProps) {
  const { width, height, lanes } = boxes.frame;
  const cut = 100 * (1 - panel.steps / panel.fullSteps);
  const quiet = (part: PartName) => silent.includes(part) || undefined;
  return (
    <svg
      className="panel-drawing"
      viewBox={`0 ${lanes.chords.top} ${width} ${height - lanes.chords.top}`}
      style={cut > 0 ? { clipPath: `inset(0 ${cut}% 0 0)` } : undefined}
      aria-hidden="true"
    >
      <Rules panel={panel} boxes={boxes} />
      {boxes.line.length > 1 && <polyline className="octave-line" points={boxes.line.map(({ x, y }) => `${x},${y}`).join(' ')} />}
      {boxes.chords.map((chord) => (
        <ChordDrawing key={`${chord.mark.step} ${chord.mark.kind}`} chord={chord} />
      ))}
      <Counts panel={panel} boxes={boxes} />
      {boxes.diamonds.map(({ x, y }, at) => (
        <path key={x} className="diamond" d={diamond(x, y, 15 * boxes.frame.enlarged)} {...lit(panel, panel.claveSteps[at] ?? 0, 1)} />
      ))}
      <g data-silent={quiet('piano right')}>
        {boxes.right.map((hand) => (
          <HandDrawing key={hand.mark.step} hand={hand} panel={panel} className="right-hand" selected={selected} radius={6} />
        ))}
      </g>
      <g data-silent={quiet('piano left')}>
        {boxes.left.map((hand) => (
          <HandDrawing key={hand.mark.step} hand={hand} panel={panel} className="left-hand" selected={selected} radius={3} />
        ))}
      </g>
      <g data-silent={quiet('bass')}>
        {boxes.bass.map((bass) => (
          <BassDrawing key={`${bass.mark.step} ${bass.mark.stroke.midi[0]}`} bass={bass} panel={panel} selected={selected} />
        ))}
      </g>
      <Silence panel={panel} boxes={boxes} />
    </svg>
  );
}

type Drawn = Pick<PanelDrawingProps, 'panel' | 'boxes'>;

/** Lines between the steps, and the clave's hairlines through all lanes. */
function Rules({ panel, boxes }: Drawn) {
  const { lanes, height } = boxes.frame;
  const strong = panel.fullSteps === 6 ? 3 : 2;
  const steps = Array.from({ length: panel.steps - 1 }, (_, at) => at + 1);
  return (
    <>
      {steps.map((step) => (
        <line
          key={step}
          className={step % strong === 0 ? 'beat-line' : 'step-line'}
          x1={step * boxes.cell}
          x2={step * boxes.cell}
          y1={lanes.count.top}
          y2={height}
        />
      ))}
      {boxes.diamonds.map(({ x, y }) => (
        <line key={x} className="hairline" x1={x} x2={x} y1={y} y2={height} />
      ))}
    </>
  );
}

/** The count; a hit of the whole band is a count in a filled plate, with a bar behind it when it is held. */
function Counts({ panel, boxes }: Drawn) {
  const { lanes, type } = boxes.frame;
  const middle = lanes.count.top + lanes.count.height / 2;
  const half = lanes.count.height / 2;
  return (
    <>
      {boxes.hits.map(({ x, held }) => (
        <g key={x} className="hit">
          {held && <rect className="held" x={x} y={middle - 5} width={boxes.cell * 0.8} height={10} />}
          <rect x={x - boxes.cell * 0.3} y={middle - half + 1} width={boxes.cell * 0.6} height={2 * half - 2} rx={4} />
        </g>
      ))}
      {panel.counts.map((count) => (
        <text
          key={count.step}
          className={`count${count.strong ? ' strong' : ''}${panel.hits.some((hit) => hit.step === count.step) ? ' struck' : ''}`}
          x={(count.step + 0.5) * boxes.cell}
          y={middle + type.count * 0.36}
          fontSize={count.strong ? type.count * 1.18 : type.count}
          textAnchor="middle"
        >
          {count.text}
        </text>
      ))}
    </>
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
