import { FORM_WORDS } from '../../words/form-map';
import { usePanel } from '../app/use-panel';
import { Worded } from '../glossary/Worded';

/** What the note is given. */
export interface WhyNoteProps {
  readonly sentence: string;
  /** Where it floats: at the end of the card that the explained stroke is not at. */
  readonly at: 'top' | 'bottom';
  readonly onClose: () => void;
}

/** One sentence about a stroke. It floats over the card and takes no room, so that the next card stays where it is. */
export function WhyNote({ sentence, at, onClose }: WhyNoteProps) {
  const note = usePanel(onClose, { leavesFocus: true });
  return (
    <aside ref={note} className="why" data-at={at} aria-label={FORM_WORDS.why} role="status">
      <p>
        <Worded text={sentence} />
      </p>
      <button type="button" onClick={onClose}>
        {FORM_WORDS.close}
      </button>
    </aside>
  );
}
