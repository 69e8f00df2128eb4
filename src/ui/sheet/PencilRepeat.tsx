/** A repeat sign behind (1) or before (−1) a barline: a second stroke and two dots. */
export function PencilRepeat({
  x,
  y,
  lineHeight,
  facing,
}: {
  readonly x: number;
  readonly y: number;
  readonly lineHeight: number;
  readonly facing: 1 | -1;
}) {
  const at = x + 0.9 * facing;
  return (
    <g className="pencil-repeat">
      <line x1={at} x2={at} y1={y + 0.34 * lineHeight} y2={y + 0.76 * lineHeight} stroke="#000" strokeWidth={0.7} />
      {[0.48, 0.62].map((share) => (
        <circle key={share} cx={x + 2 * facing} cy={y + share * lineHeight} r={0.5} />
      ))}
    </g>
  );
}
