import type { ListGeometry } from '../../layout/sheet/list-geometry';
import type { PencilList } from '../../layout/sheet/pencil-list';
import type { Score } from '../../music/score';
import { MUSIC_TEXTS } from '../../words/music-texts';
import { PENCIL_WORDS } from '../../words/pencil-list';
import { directionWords, keyInWords, tempoWords } from '../../words/sheet';
import { PencilSection } from './PencilSection';
import { sizesFor, textWidth } from './pencil-sizes';

/** The list as one drawing in millimetres: thin lines, large letters, nothing that a pencil would not have written. */
export function PencilDrawing({
  list,
  geometry,
  score,
  goal,
}: {
  readonly list: PencilList;
  readonly geometry: ListGeometry;
  readonly score: Score;
  readonly goal: number;
}) {
  const { width, height, edge } = geometry;
  const size = sizesFor(geometry.lineHeight);
  const order = list.order.map((one) => PENCIL_WORDS.inOrder(one.section, one.times)).join(', ');
  const titleSize = Math.min(11, (width - 2 * edge - 75) / Math.max(textWidth(score.title), 1));
  return (
    <svg className="pencil-list" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={PENCIL_WORDS.name}>
      <text className="pencil-title" x={edge} y={edge + 10} fontSize={titleSize} fontWeight={750}>
        {score.title}
      </text>
      <text x={edge} y={edge + 18} fontSize={4.4}>
        {[MUSIC_TEXTS.style(score.style), keyInWords(score.key), tempoWords(goal)].join(' · ')}
      </text>
      <text className="pencil-direction" x={width - edge} y={edge + 12.5} fontSize={16} fontWeight={800} textAnchor="end">
        {directionWords(score.clave)}
      </text>
      <text x={edge} y={edge + 28} fontSize={6} fontWeight={750}>
        {PENCIL_WORDS.order}
      </text>
      <text
        className="pencil-order"
        x={edge + 20}
        y={edge + 28}
        fontSize={Math.min(6, (width - 2 * edge - 20) / Math.max(textWidth(order), 1))}
      >
        {order}
      </text>
      <line x1={edge} x2={width - edge} y1={edge + 32} y2={edge + 32} stroke="#000" strokeWidth={0.4} />
      {geometry.blocks.map((block) => (
        <PencilSection key={block.y} block={block} geometry={geometry} size={size} />
      ))}
      {legendOf(list).map((line, i, all) => (
        <text key={line} className="pencil-legend" x={edge} y={geometry.legendY - 4.2 * (all.length - i)} fontSize={3.3}>
          {line}
        </text>
      ))}
    </svg>
  );
}

/** Explains the signs that this list uses. */
function legendOf({ sections }: PencilList): string[] {
  const bars = sections.flatMap((section) => section.bars);
  const { octave, leaveOut, odd } = PENCIL_WORDS.legend;
  return [
    ...(bars.some((bar) => bar.chords.some((chord) => chord.octave !== null)) ? [octave] : []),
    ...(bars.some((bar) => bar.leaveOutOne) ? [leaveOut] : []),
    ...(sections.some((section) => section.odd) ? [odd] : []),
  ];
}
