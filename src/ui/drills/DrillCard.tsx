import { DRILLS } from '../../words/drills';
import { Worded } from '../glossary/Worded';

/** One drill of the list: its name, why it helps, and the button that begins it. */
export function DrillCard(props: { readonly name: keyof typeof DRILLS.names; readonly disabled?: boolean; readonly onBegin: () => void }) {
  const id = `drill-${props.name.replaceAll(' ', '-')}`;
  return (
    <li className="drill-card">
      <h2 id={id}>
        <Worded text={DRILLS.names[props.name]} />
      </h2>
      <p>
        <Worded text={DRILLS.why[props.name]} />
      </p>
      <button type="button" className="key" aria-describedby={id} disabled={props.disabled} onClick={props.onBegin}>
        {DRILLS.begin}
      </button>
    </li>
  );
}
