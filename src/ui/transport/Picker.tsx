import { useId } from 'react';
import type { WordId } from '../../words/glossary';
import { Word } from '../glossary/Word';

/** One of many, as a list that opens. */
export function Picker<Value extends string | number>(props: {
  readonly name: string;
  /** The word of the glossary that the name stands for. */
  readonly word?: WordId;
  readonly value: Value;
  readonly options: readonly { readonly value: Value; readonly label: string }[];
  readonly onChoose: (value: Value) => void;
}) {
  const id = useId();
  return (
    <div className="picker">
      {props.word ? (
        <span id={`${id}-name`}>
          <Word of={props.word}>{props.name}</Word>
        </span>
      ) : (
        <label id={`${id}-name`} htmlFor={id}>
          {props.name}
        </label>
      )}
      <select
        id={id}
        aria-labelledby={`${id}-name`}
        value={props.value}
        onChange={(event) => {
          const chosen = props.options.find(({ value }) => String(value) === event.target.value);
          if (chosen) props.onChoose(chosen.value);
        }}
      >
        {props.options.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
    </div>
  );
}
