import { useId, useState } from 'react';
import type { AssignmentRoom, Order } from '../../state/assignment/assignment-state';
import { TEMPO_RANGE } from '../../vocabulary';
import { ASSIGNMENT_WORDS } from '../../words/assignment';
import { DRILLS } from '../../words/drills';
import { useDesk } from '../app/desk-context';
import { AssignmentLink } from './AssignmentLink';
import { Typed } from './Typed';

/** A number as typed, whole and held within its limits; `otherwise` where there is none. */
const held = (typed: string, low: number, high: number, otherwise: number): number => {
  const number = Number(typed);
  return typed.trim() === '' || !Number.isFinite(number) ? otherwise : Math.max(low, Math.min(high, Math.round(number)));
};
/** Clean passes in a row are what the ladder of tempi asks for, too. Design value. */
const PASSES = '3';

/** Sets an assignment of the chart on the desk, as a file or a link. */
export function MakeAssignment({ room }: { readonly room: AssignmentRoom }) {
  const { settings, faults, music, preferences } = useDesk((state) => state);
  const unit = preferences.tempoUnit;
  const perHalf = unit === 'half' ? 1 : 2;
  const { loop } = settings;
  const [whole, setWhole] = useState(false);
  const [passes, setPasses] = useState(PASSES);
  const [goal, setGoal] = useState<string | null>(null);
  const [drill, setDrill] = useState('');
  const [seed, setSeed] = useState('');
  const [due, setDue] = useState('');
  const [note, setNote] = useState('');
  const id = useId();
  const goalTyped = goal ?? String(Math.round(settings.goalTempo * perHalf));
  /** Id of what the link was asked for, or null. */
  const [linked, setLinked] = useState<string | null>(null);
  const order = (): Order => ({
    bars: whole ? 'whole' : 'loop',
    passes: held(passes, 1, 99, Number(PASSES)),
    goalTempo: Math.max(TEMPO_RANGE.from, Math.min(TEMPO_RANGE.to, held(goalTyped, 1, 999, settings.goalTempo * perHalf) / perHalf)),
    drill: drill === '' ? null : { name: drill, seed: seed.trim() === '' ? null : held(seed, 1, 9999, 1) },
    due: due === '' ? null : due,
    note,
  });
  // What is set on the desk may change under the link: it is made anew.
  const now = linked === null || faults.length > 0 ? null : room.ordered(order()).id;
  return (
    <details className="assignment-make no-print">
      <summary>{ASSIGNMENT_WORDS.make}</summary>
      <form
        className="assignment-form"
        onSubmit={(event) => {
          event.preventDefault();
          room.make(order());
        }}
        // A link made before says what stood here then.
        onChange={() => setLinked(null)}
      >
        <p className="caption">{ASSIGNMENT_WORDS.makeHint(music?.score.title ?? '')}</p>
        <div className="assignment-fields">
          <label>
            {ASSIGNMENT_WORDS.which}
            <select
              className="line-field"
              value={whole || !loop ? 'whole' : 'loop'}
              onChange={(event) => setWhole(event.target.value === 'whole')}
            >
              {loop && <option value="loop">{ASSIGNMENT_WORDS.bars(loop.fromBar, loop.toBar)}</option>}
              <option value="whole">{ASSIGNMENT_WORDS.whole}</option>
            </select>
          </label>
          <Typed label={ASSIGNMENT_WORDS.passes} type="number" value={passes} onType={setPasses} />
          <Typed label={ASSIGNMENT_WORDS.goal(unit)} type="number" value={goalTyped} onType={setGoal} />
          <Typed label={ASSIGNMENT_WORDS.due} type="date" value={due} onType={setDue} />
          <label>
            {ASSIGNMENT_WORDS.drill}
            <select className="line-field" value={drill} onChange={(event) => setDrill(event.target.value)}>
              <option value="">{ASSIGNMENT_WORDS.noDrill}</option>
              {Object.entries(DRILLS.names).map(([name, said]) => (
                <option key={name} value={name}>
                  {said}
                </option>
              ))}
            </select>
          </label>
          {drill !== '' && <Typed label={ASSIGNMENT_WORDS.seed} type="number" value={seed} onType={setSeed} />}
        </div>
        <label htmlFor={id}>{ASSIGNMENT_WORDS.note}</label>
        <textarea id={id} className="line-field" rows={2} maxLength={2000} value={note} onChange={(event) => setNote(event.target.value)} />
        {faults.length > 0 && <p className="wrong">{ASSIGNMENT_WORDS.mend}</p>}
        <div className="journal-row">
          <button type="submit" className="key" disabled={faults.length > 0}>
            {ASSIGNMENT_WORDS.save}
          </button>
          <button type="button" className="key" disabled={faults.length > 0} onClick={() => setLinked(room.ordered(order()).id)}>
            {ASSIGNMENT_WORDS.makeLink}
          </button>
        </div>
        <p className="caption" role="status">
          {now !== null && now !== linked && ASSIGNMENT_WORDS.madeAnew}
        </p>
        {now !== null && <AssignmentLink key={now} room={room} order={order()} />}
      </form>
    </details>
  );
}
