/** One of many, as a list that opens. */
export function Picker<Value extends string | number>(props: {
  readonly name: string;
  readonly value: Value;
  readonly options: readonly { readonly value: Value; readonly label: string }[];
  readonly onChoose: (value: Value) => void;
}) {
  return (
    <label className="picker">
      <span>{props.name}</span>
      <select
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
    </label>
  );
}
