import { useId } from 'react';
import type { WordId } from '../../words/glossary';
import { Word } from '../glossary/Word';

/** One choice among a few, each in words. */
export function ChoiceRow<Value extends string>({
  name,
  word,
  values,
  labels,
  value,
  onChange,
}: {
  readonly name: string;
  /** The word of the glossary that the name stands for. */
  readonly word?: WordId;
  readonly values: readonly Value[];
  readonly labels: Readonly<Record<Value, string>>;
  readonly value: Value;
  readonly onChange: (value: Value) => void;
}) {
  const group = useId();
  return (
    <fieldset className="sheet-choice">
      <legend>{word ? <Word of={word}>{name}</Word> : name}</legend>
      {values.map((one) => (
        <label key={one}>
          <input type="radio" name={group} value={one} checked={one === value} onChange={() => onChange(one)} />
          {labels[one]}
        </label>
      ))}
    </fieldset>
  );
}
