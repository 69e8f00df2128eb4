import { LISTENING } from '../../words/listening';

/** The way into playing along. */
export function PlayAlongButton({ onOpen }: { readonly onOpen: () => void }) {
  return (
    <button type="button" className="key play-along-open" onClick={onOpen}>
      {LISTENING.open}
    </button>
  );
}
