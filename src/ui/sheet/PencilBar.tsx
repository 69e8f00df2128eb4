import type { ListBarPlace } from '../../layout/sheet/list-geometry';
import { PENCIL_WORDS } from '../../words/pencil-list';
import { PencilRepeat } from './PencilRepeat';
import { chordText, chordX, ROWS, type SizeOf, textWidth } from './pencil-sizes';

/** One bar: its chords, the octave notes over them, and under them what to mind. */
export function PencilBar({
  place,
  y,
  lineHeight,
  size,
  chordSize,
  first,
}: {
  readonly place: ListBarPlace;
  readonly y: number;
  readonly lineHeight: number;
  readonly size: SizeOf;
  /** Size of the chords of its line. */
  readonly chordSize: number;
  readonly first: boolean;
}) {
  const { bar, x, width } = place;
  const top = y + 0.34 * lineHeight;
  const bottom = y + 0.76 * lineHeight;
  const line = (at: number) => <line x1={at} x2={at} y1={top} y2={bottom} stroke="#000" strokeWidth={0.3} />;
  const signs = size('signs');
  const note = [
    ...(bar.hits.length > 0 ? [PENCIL_WORDS.hitsOn(bar.hits)] : []),
    ...(bar.reentry ? [PENCIL_WORDS.reentry(bar.reentry.step, bar.reentry.side)] : []),
  ].join(', ');
  const noteX = x + 1.6 + (bar.leaveOutOne ? signs * 1.1 : 0);
  const noteSize = Math.min(signs, (width - 2) / Math.max(textWidth(note), 1));
  return (
    <g className="pencil-bar">
      {first && line(x)}
      {line(x + width)}
      {bar.repeatStart && <PencilRepeat x={x} y={y} lineHeight={lineHeight} facing={1} />}
      {bar.repeatEnd !== null && <PencilRepeat x={x + width} y={y} lineHeight={lineHeight} facing={-1} />}
      {bar.repeatEnd !== null && bar.repeatEnd > 2 && (
        <text
          className="pencil-times"
          x={x + width - 1}
          y={y + ROWS.octave * lineHeight}
          fontSize={signs}
          textAnchor="end"
          fontWeight={750}
        >
          {PENCIL_WORDS.times(bar.repeatEnd)}
        </text>
      )}
      {bar.ending && (
        <text className="pencil-ending" x={x - 0.6} y={y + ROWS.octave * lineHeight} fontSize={signs} textAnchor="end" fontWeight={750}>
          {PENCIL_WORDS.ending(bar.ending)}
        </text>
      )}
      {bar.silence && (
        <text className="pencil-chord" x={x + 1.6} y={y + ROWS.chord * lineHeight} fontSize={size('chord') * 0.7}>
          {PENCIL_WORDS[bar.silence]}
        </text>
      )}
      {bar.chords.map((chord) => {
        const at = chordX(place, chord.at);
        return (
          <g key={chord.at}>
            {chord.octave !== null && (
              <text className="pencil-octave" x={at} y={y + ROWS.octave * lineHeight} fontSize={size('octave')}>
                {chord.octave}
              </text>
            )}
            <text className="pencil-chord" x={at} y={y + ROWS.chord * lineHeight} fontSize={chordSize} fontWeight={750}>
              {chordText(chord)}
            </text>
          </g>
        );
      })}
      {bar.leaveOutOne && (
        <g className="pencil-leave-out">
          <text x={x + 1.6} y={y + ROWS.signs * lineHeight} fontSize={signs}>
            1
          </text>
          <line
            x1={x + 1}
            x2={x + 1.8 + signs * 0.6}
            y1={y + (ROWS.signs + 0.02) * lineHeight}
            y2={y + (ROWS.signs - 0.02) * lineHeight - signs * 0.62}
            stroke="#000"
            strokeWidth={0.4}
          />
        </g>
      )}
      {note !== '' && (
        <text className="pencil-note" x={noteX} y={y + ROWS.signs * lineHeight} fontSize={noteSize} fontWeight={750}>
          {note}
        </text>
      )}
    </g>
  );
}
