import type { FileKind } from '../../state/take-along/choices';
import { TAKE_ALONG_WORDS } from '../../words/take-along';

/** Saves one kind of file. While another is made it stays where it is, and says so. */
export function SaveButton(props: {
  readonly kind: FileKind;
  readonly busy: boolean;
  readonly nothing?: boolean;
  readonly onSave: (kind: FileKind) => void;
}) {
  const idle = !props.busy && props.nothing !== true;
  return (
    <button
      type="button"
      className="key"
      aria-label={TAKE_ALONG_WORDS.saveKind(props.kind)}
      aria-disabled={!idle}
      onClick={() => idle && props.onSave(props.kind)}
    >
      {TAKE_ALONG_WORDS.save}
    </button>
  );
}
