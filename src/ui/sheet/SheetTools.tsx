import { PAPER_NAMES, type PaperName } from '../../layout/sheet/paper';
import { SHEET_WORDS } from '../../words/sheet';
import { TakeAlongButton } from '../take-along/TakeAlongButton';

/** What stands above the sheet and is not printed: print, MIDI file, choice of paper. */
export interface SheetToolsProps {
  readonly paper: PaperName;
  readonly ready: boolean;
  readonly onPaper: (paper: PaperName) => void;
  readonly onPrint: () => void;
  readonly onMidi: () => void;
}

/** The row of tools above the pages. */
export function SheetTools({ paper, ready, onPaper, onPrint, onMidi }: SheetToolsProps) {
  return (
    <div className="sheet-tools">
      <button type="button" onClick={onPrint} disabled={!ready}>
        {SHEET_WORDS.print}
      </button>
      <button type="button" onClick={onMidi}>
        {SHEET_WORDS.midi}
      </button>
      <TakeAlongButton />
      <fieldset>
        <legend>{SHEET_WORDS.paper}</legend>
        {PAPER_NAMES.map((name) => (
          <label key={name}>
            <input type="radio" name="paper" value={name} checked={name === paper} onChange={() => onPaper(name)} />
            {SHEET_WORDS.papers[name]}
          </label>
        ))}
      </fieldset>
    </div>
  );
}
