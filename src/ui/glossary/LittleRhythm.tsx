import { GLOSSARY_WORDS } from '../../words/glossary';
import { GRID_WORDS } from '../../words/grid';
import { SPOKEN } from '../../words/spoken';
import type { RhythmBar } from '../../words/word-links';

/** A rhythm of one or two bars in eighths: the counts above, a dot for each stroke, the side of the clave under each bar. */
export function LittleRhythm({ bars }: { readonly bars: readonly RhythmBar[] }) {
  const spoken = bars.map(({ strokes }, bar) =>
    GLOSSARY_WORDS.bar(
      bar + 1,
      [...strokes].flatMap((sign, step) => (sign === 'x' ? [SPOKEN.count(step, false)] : [])),
    ),
  );
  return (
    <div className="little-rhythm" role="img" aria-label={spoken.join('; ')}>
      {bars.map(({ strokes, side }, bar) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: bars have no other name than their place
        <div key={bar} className="little-bar" data-side={side ?? undefined} aria-hidden="true">
          <div className="little-counts">
            {GLOSSARY_WORDS.counts.map((count, step) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: steps have no other name than their place
              <span key={step} data-struck={strokes[step] === 'x'}>
                <span>{count}</span>
                <i />
              </span>
            ))}
          </div>
          {side !== null && <span className="little-side">{GRID_WORDS.sideName(side)}</span>}
        </div>
      ))}
    </div>
  );
}
