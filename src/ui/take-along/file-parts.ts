import type { FileKind } from '../../state/take-along/choices';
import type { TakeAlong } from '../../state/take-along/take-along';

/** What every group of the panel is given. */
export interface FileParts {
  readonly takeAlong: TakeAlong;
  /** True while a file is being made; another then waits. */
  readonly busy: boolean;
  readonly onSave: (kind: FileKind) => void;
}
