import type { Lettering } from '../../layout/grid/chord-places';

/** ♭ and ♯ on a square of 1000 units standing on the baseline, as heavy as the type around them. Drawn for this program. */
const ACCIDENTALS = {
  flat: 'M45 -810h88v336c42-36 90-56 140-56 84 0 136 54 136 136 0 156-176 280-364 424zM133 -384v262c92-80 164-158 164-254 0-44-22-68-60-68-40 0-76 22-104 60z',
  sharp:
    'M120 -640h78v-150h76v132l78-18v-150h76v132l52-12v112l-52 12v190l52-12v112l-52 12v150h-76v-132l-78 18v150h-76v-132h0l-78 18v-112l78-18v-190l-78 18v-112zM274 -546v190l78-18v-190z',
} as const;

/** A line of type with its accidentals, at its place. */
export function Lettered({ line, className }: { readonly line: Lettering; readonly className?: string }) {
  return (
    <g className={className} transform={`translate(${line.x} ${line.y})`}>
      {line.runs.map((run) =>
        run.kind === 'text' ? (
          <text key={run.x} x={run.x} fontSize={line.size}>
            {run.text}
          </text>
        ) : (
          <path key={run.x} fillRule="evenodd" d={ACCIDENTALS[run.kind]} transform={`translate(${run.x} 0) scale(${line.size / 1000})`} />
        ),
      )}
    </g>
  );
}
