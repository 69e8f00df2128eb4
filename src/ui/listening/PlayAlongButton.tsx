import { LISTENING } from '../../words/listening';

/** The way into playing along, and out of it. */
export function PlayAlongButton({ open, onToggle }: { readonly open: boolean; readonly onToggle: () => void }) {
  return (
    <button type="button" className="key play-along-open" aria-expanded={open} onClick={onToggle}>
      {LISTENING.open}
    </button>
  );
}
