import type { Listening } from '../../state/listening/listening-state';
import { LISTENING } from '../../words/listening';
import { useHeard } from './listening-context';

const RATINGS = ['clean', 'nearly', 'not yet'] as const;

/** For players whom nothing listens to: one touch after a pass, and what to do next. */
export function SelfRating({ listening }: { readonly listening: Listening }) {
  const last = useHeard(listening, (state) => state.ratings.at(-1) ?? null);
  return (
    <fieldset className="self-rating">
      <legend>{LISTENING.rateName}</legend>
      {RATINGS.map((rating) => (
        <button key={rating} type="button" className="key" onClick={() => listening.rate(rating)}>
          {LISTENING.ratings[rating]}
        </button>
      ))}
      <p role="status">{last && LISTENING.rateAdvice[last]}</p>
    </fieldset>
  );
}
