import { useId, useState } from 'react';
import { breaksFrom, lineCounts, type PencilList } from '../../layout/sheet/pencil-list';
import { PENCIL_WORDS } from '../../words/pencil-list';

/** What the field is given. */
export interface LineCountsProps {
  readonly list: PencilList;
  readonly breaks: readonly number[] | null;
  readonly onBreaks: (breaks: readonly number[] | null) => void;
}

const MOST_BARS = 32;

/** Bars in each line of the part, typed; what cannot be read stays in the field and is named. */
export function LineCounts({ list, breaks, onBreaks }: LineCountsProps) {
  const [typed, setTyped] = useState<string | null>(null);
  const hint = useId();
  const wrong =
    typed === null ? undefined : words(typed).find((word) => !/^\d{1,2}$/.test(word) || Number(word) < 1 || Number(word) > MOST_BARS);
  const type = (text: string): void => {
    setTyped(text);
    const counts = words(text).map(Number);
    if (counts.every((count) => Number.isInteger(count) && count >= 1 && count <= MOST_BARS)) {
      onBreaks(counts.length === 0 ? null : breaksFrom(counts, list));
    }
  };
  return (
    <div className="sheet-line-counts">
      <label>
        {PENCIL_WORDS.setLines}
        <input
          type="text"
          inputMode="numeric"
          autoComplete="off"
          value={typed ?? lineCounts(list, breaks).join(' ')}
          aria-describedby={hint}
          aria-invalid={wrong !== undefined}
          onChange={(event) => type(event.target.value)}
          onBlur={() => wrong === undefined && setTyped(null)}
        />
      </label>
      <button
        type="button"
        onClick={() => {
          setTyped(null);
          onBreaks(null);
        }}
      >
        {PENCIL_WORDS.fours}
      </button>
      <p id={hint} role={wrong === undefined ? undefined : 'alert'}>
        {wrong === undefined ? PENCIL_WORDS.setLinesHint : PENCIL_WORDS.badLines(wrong)}
      </p>
    </div>
  );
}

const words = (text: string): string[] => text.split(/[\s,;]+/).filter((word) => word !== '');
