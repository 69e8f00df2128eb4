import { DRILLS } from '../../words/drills';

/** One drill of the list: its name, why it helps, and the button that begins it. */
export function DrillCard(props: { readonly name: keyof typeof DRILLS.names; readonly disabled?: boolean; readonly onBegin: () => void }) {
  const id = `drill-${props.name.replaceAll(' ', '-')}`;
  return (
    <li className="drill-card">
      <h2 id={id}>{DRILLS.names[props.name]}</h2>
      <p>{DRILLS.why[props.name]}</p>
      <button type="button" className="key" aria-describedby={id} disabled={props.disabled} onClick={props.onBegin}>
        {DRILLS.begin}
      </button>
    </li>
  );
}
