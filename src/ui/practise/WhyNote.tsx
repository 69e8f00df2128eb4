import { GRID_WORDS } from '../../words/grid';

/** One sentence about a stroke. While playing it floats over the card and takes no room. */
export function WhyNote({
  sentence,
  floating,
  onClose,
}: {
  readonly sentence: string;
  readonly floating: boolean;
  readonly onClose: () => void;
}) {
  return (
    <aside className="why" data-floating={floating || undefined} aria-label={GRID_WORDS.why} role="status">
      <p>{sentence}</p>
      <button type="button" onClick={onClose}>
        {GRID_WORDS.close}
      </button>
    </aside>
  );
}
