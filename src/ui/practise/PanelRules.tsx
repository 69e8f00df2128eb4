import type { Panel } from '../../layout/grid/cards';
import type { PanelBoxes } from '../../layout/grid/panel-boxes';
import { GRID_WORDS } from '../../words/grid';

interface Drawn {
  readonly panel: Panel;
  readonly boxes: PanelBoxes;
}

/** Lines between the steps, and the clave's hairlines through all lanes. */
export function Rules({ panel, boxes }: Drawn) {
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
export function Counts({ panel, boxes }: Drawn) {
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
          {count.text === '&' ? GRID_WORDS.and : count.text}
        </text>
      ))}
    </>
  );
}

/** What a bar without notes says: rest and stop in words. */
export function Silence({ panel, boxes }: Drawn) {
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
