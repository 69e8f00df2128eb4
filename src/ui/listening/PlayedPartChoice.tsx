import { useId } from 'react';
import { type Listening, PLAYED_PARTS } from '../../state/listening/listening-state';
import { LISTENING } from '../../words/listening';
import { useHeard } from './listening-context';

/** What is played. */
export function PlayedPartChoice({ listening }: { readonly listening: Listening }) {
  const plays = useHeard(listening, (state) => state.plays);
  const id = useId();
  return (
    <div className="played-part">
      <label htmlFor={id}>{LISTENING.plays}</label>
      <select
        id={id}
        value={plays}
        onChange={(event) => listening.set({ plays: PLAYED_PARTS.find((part) => part === event.target.value) ?? plays })}
      >
        {PLAYED_PARTS.map((part) => (
          <option key={part} value={part}>
            {LISTENING.parts[part]}
          </option>
        ))}
      </select>
    </div>
  );
}
