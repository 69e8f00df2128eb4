import type { StrokeShape } from '../../layout/grid/percussion-rows';
import { FORM_WORDS } from '../../words/form-map';
import { GRID_WORDS } from '../../words/grid';
import { Worded } from '../glossary/Worded';
import { StrokeMark } from './StrokeMark';

const SHAPES: readonly StrokeShape[] = ['accent', 'open', 'slap', 'plain'];

/** What the line under the percussion is given. */
export interface PercussionCaptionProps {
  readonly shown: readonly string[];
  /** Instruments that sound and have no row. */
  readonly told: readonly string[];
}

/** Under the rows: which instruments sound besides, and what the shapes mean. */
export function PercussionCaption({ shown, told }: PercussionCaptionProps) {
  const names = told.map(GRID_WORDS.instrumentName);
  return (
    <p className="percussion-caption">
      <span>{names.length > 0 && <Worded text={shown.length > 0 ? FORM_WORDS.alsoPlaying(names) : FORM_WORDS.allPlaying(names)} />}</span>
      {shown.length > 0 && (
        <span className="shapes" aria-hidden="true">
          {SHAPES.map((shape) => (
            <span key={shape}>
              <svg viewBox="0 0 20 20" aria-hidden="true">
                <StrokeMark shape={shape} x={10} y={10} radius={9} />
              </svg>
              {FORM_WORDS.shapes[shape]}
            </span>
          ))}
        </span>
      )}
    </p>
  );
}
