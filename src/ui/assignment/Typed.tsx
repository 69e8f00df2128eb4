/** A number or a day that is typed, with its label. */
export function Typed(props: {
  readonly label: string;
  readonly type: 'number' | 'date';
  readonly value: string;
  readonly onType: (typed: string) => void;
}) {
  return (
    <label>
      {props.label}
      <input
        type={props.type}
        className="line-field"
        min={props.type === 'number' ? 1 : undefined}
        value={props.value}
        onChange={(event) => props.onType(event.target.value)}
      />
    </label>
  );
}
