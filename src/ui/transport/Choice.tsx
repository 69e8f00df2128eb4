import { useId } from 'react';
import type { WordId } from '../../words/glossary';
import { Word } from '../glossary/Word';

/** One of a few: a named row of options, of which one is taken. Arrow keys move within it. */
export function Choice<Value extends string | number>(props: {
  readonly name: string;
  /** The word of the glossary that the name stands for. */
  readonly word?: WordId;
  readonly options: readonly { readonly value: Value; readonly label: string }[];
  readonly value: Value;
  readonly onChoose: (value: Value) => void;
  readonly loose?: boolean;
}) {
  const group = useId();
  return (
    <fieldset className={props.loose ? 'choice choice-loose' : 'choice'}>
      <legend>{props.word ? <Word of={props.word}>{props.name}</Word> : props.name}</legend>
      <div className="choice-row">
        {props.options.map((option) => (
          <label key={option.value} className="choice-option">
            <input type="radio" name={group} checked={option.value === props.value} onChange={() => props.onChoose(option.value)} />
            <span>{option.label}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
