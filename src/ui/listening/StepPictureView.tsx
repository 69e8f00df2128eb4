import { stepPicture } from '../../layout/step-picture';
import type { StepPicture } from '../../practice/finding';
import { LISTENING } from '../../words/listening';

/** Where the strokes fell, step by step over the clave cycle: a dot for the middle, a bar for the spread; the same in words for screen readers. */
export function StepPictureView({ steps, stepMs }: { readonly steps: readonly StepPicture[]; readonly stepMs: number | null }) {
  const picture = stepPicture(steps);
  const { width, height, middle, cell, edgeMs } = picture;
  const bar = steps.length / 2;
  return (
    <figure className="step-picture">
      <figcaption>
        {LISTENING.picture} <span className="caption">{LISTENING.pictureHint}</span>
      </figcaption>
      <svg viewBox={`-52 0 ${width + 56} ${height + 24}`} aria-hidden="true">
        <rect className="picture-ground" x={0} y={0} width={width} height={height} />
        {stepMs !== null && <line className="picture-middle" x1={0} x2={width} y1={middle} y2={middle} />}
        <line className="picture-bar" x1={bar * cell} x2={bar * cell} y1={0} y2={height} />
        {[
          [14, LISTENING.early],
          [31, LISTENING.millis(edgeMs)],
          [height - 20, LISTENING.millis(edgeMs)],
          [height - 3, LISTENING.late],
        ].map(([y, words]) => (
          <text key={y} x={-6} y={y} textAnchor="end">
            {words}
          </text>
        ))}
        {picture.steps.map(({ cycleStep, x, asked, dot, missed, extra }) => (
          <g key={cycleStep} data-asked={asked || undefined}>
            <text className="picture-count" x={x} y={height + 18} textAnchor="middle">
              {LISTENING.count(cycleStep % bar, bar)}
            </text>
            {dot && <line className="picture-spread" x1={x} x2={x} y1={dot.top} y2={dot.bottom} />}
            {dot && <circle className="picture-dot" cx={x} cy={dot.y} r={6} />}
            {missed > 0 && <circle className="picture-missed" cx={x} cy={height - 12} r={6} />}
            {extra > 0 && <path className="picture-extra" d={`M${x - 6} 12h12M${x} 6v12`} />}
          </g>
        ))}
      </svg>
      <ul className="visually-hidden">
        {steps
          .filter(({ asked, extra }) => asked + extra > 0)
          .map((step) => (
            <li key={step.cycleStep}>
              {LISTENING.stepRow(
                step.cycleStep < bar ? 1 : 2,
                LISTENING.count(step.cycleStep % bar, bar),
                step.meanMs,
                step.spreadMs,
                step.played,
                step.missed,
              )}
            </li>
          ))}
      </ul>
    </figure>
  );
}
