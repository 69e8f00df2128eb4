import type { StrokeShape } from '../../layout/grid/percussion-rows';

/** What a stroke of the percussion is given: its shape, its middle and half its height. */
export interface StrokeMarkProps {
  readonly shape: StrokeShape;
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** A stroke by its shape: accent a filled wedge, open a ring, slap and muffled a cross, plain a small dot. */
export function StrokeMark({ shape, x, y, radius }: StrokeMarkProps) {
  if (shape === 'open') return <circle className="drum ring" cx={x} cy={y} r={radius * 0.85} />;
  if (shape === 'plain') return <circle className="drum" cx={x} cy={y} r={radius * 0.5} />;
  const r = radius * 0.8;
  if (shape === 'slap')
    return <path className="drum cross" d={`M${x - r} ${y - r}l${2 * r} ${2 * r}M${x + r} ${y - r}l${-2 * r} ${2 * r}`} />;
  return <path className="drum" d={`M${x} ${y - radius}l${radius} ${2 * radius}h${-2 * radius}z`} />;
}
