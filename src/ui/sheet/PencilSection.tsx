import type { ListBlock, ListGeometry } from '../../layout/sheet/list-geometry';
import { PENCIL_WORDS } from '../../words/pencil-list';
import { PencilBar } from './PencilBar';
import { chordSizeOf, type SizeOf, textWidth } from './pencil-sizes';

/** One section: its letter, ringed where it is odd, the sides on which it begins, and its lines of bars. */
export function PencilSection({
  block,
  geometry,
  size,
}: {
  readonly block: ListBlock;
  readonly geometry: ListGeometry;
  readonly size: SizeOf;
}) {
  const { section, y, lines } = block;
  const { edge, lineHeight } = geometry;
  const letter = Math.min(size('letter'), 25 / Math.max(textWidth(section.name), 1));
  const nameWidth = textWidth(section.name) * letter;
  const baseline = y + 0.1 * lineHeight + letter * 0.8;
  const sides = section.sides.every((side) => side === section.sides[0]) ? section.sides.slice(0, 1) : section.sides;
  const side = Math.min(size('side'), 26 / textWidth(PENCIL_WORDS.sides(sides)));
  return (
    <g className="pencil-section">
      <text className="pencil-letter" x={edge + 2} y={baseline} fontSize={letter} fontWeight={800}>
        {section.name}
      </text>
      {section.odd && (
        <path
          className="pencil-ring"
          d={ringPath(edge + 2 + nameWidth / 2, baseline - letter * 0.34, nameWidth / 2 + 2.2, letter * 0.74)}
          fill="none"
          stroke="#000"
          strokeWidth={0.5}
        />
      )}
      <text className="pencil-side" x={edge + 2} y={baseline + side * 1.25} fontSize={side} fontWeight={750}>
        {PENCIL_WORDS.sides(sides)}
      </text>
      {(section.odd || section.onCue) && (
        <text x={edge + 2} y={baseline + side * 2.3} fontSize={Math.min(size('signs'), side)}>
          {[...(section.odd ? [PENCIL_WORDS.bars(section.bars.length)] : []), ...(section.onCue ? [PENCIL_WORDS.onCue] : [])].join(', ')}
        </text>
      )}
      {lines.map((line) => {
        const chordSize = chordSizeOf(line.bars, size('chord'));
        return line.bars.map((place, i) => (
          <PencilBar
            key={place.bar.place}
            place={place}
            y={line.y}
            lineHeight={lineHeight}
            size={size}
            chordSize={chordSize}
            first={i === 0}
          />
        ));
      })}
    </g>
  );
}

/** A ring drawn by hand: an oval that begins a little over its own end. */
function ringPath(x: number, y: number, rx: number, ry: number): string {
  const at = (dx: number, dy: number): string => `${(x + dx * rx).toFixed(2)} ${(y + dy * ry).toFixed(2)}`;
  return `M${at(-0.3, -1.08)}C${at(0.5, -1.2)} ${at(1.05, -0.7)} ${at(1.02, -0.05)}C${at(1, 0.65)} ${at(0.45, 1)} ${at(-0.1, 1)}C${at(-0.7, 1)} ${at(-1.03, 0.6)} ${at(-1.02, 0)}C${at(-1, -0.6)} ${at(-0.5, -1.02)} ${at(0.25, -1)}`;
}
