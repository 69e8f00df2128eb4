import { type FormEvent, useId, useState } from 'react';
import { halfNotesPerMinute, inputMillis, TEMPO_RANGE } from '../../vocabulary';
import { SCREEN } from '../../words/screen';
import { SETTINGS_SCREEN } from '../../words/settings-screen';
import { useDesk, useRun } from '../app/desk-context';
import { Choice } from './Choice';
import { GoalStepper } from './GoalStepper';

/** Tempo in full: typed, tapped, its unit, and the goal. */
export function TempoGroup() {
  const run = useRun();
  const goal = useDesk((state) => state.settings.goalTempo);
  const unit = useDesk((state) => state.preferences.tempoUnit);
  return (
    <section className="group" aria-label={SCREEN.tempoName}>
      <h3>{SCREEN.tempoName}</h3>
      <div className="group-row">
        <TempoField key={unit} unit={unit} />
        <button
          type="button"
          className="key"
          title={SETTINGS_SCREEN.tapHint}
          onPointerDown={(event) => run({ kind: 'tap', at: inputMillis(event.timeStamp) })}
          onClick={(event) => {
            // A press by keyboard has no pointer before it.
            if (event.detail === 0) run({ kind: 'tap', at: inputMillis(event.timeStamp) });
          }}
        >
          {SETTINGS_SCREEN.tap}
        </button>
      </div>
      <div className="group-row">
        <GoalStepper />
        <button type="button" className="key" onClick={() => run({ kind: 'set', settings: { tempo: goal } })}>
          {SETTINGS_SCREEN.toGoal}
        </button>
      </div>
      <Choice
        name={SETTINGS_SCREEN.unitName}
        word="tempo"
        value={unit}
        options={(['half', 'quarter'] as const).map((value) => ({ value, label: SCREEN.tempoUnit(value) }))}
        onChoose={(tempoUnit) => run({ kind: 'prefer', preferences: { tempoUnit } })}
      />
    </section>
  );
}

/** A tempo typed in. What cannot be played stays in the field, with one sentence that says what can. */
function TempoField({ unit }: { readonly unit: 'half' | 'quarter' }) {
  const run = useRun();
  const tempo = useDesk((state) => state.settings.tempo);
  const [typed, setTyped] = useState<string | null>(null);
  const [wrong, setWrong] = useState(false);
  const id = useId();
  const take = (event?: FormEvent): void => {
    event?.preventDefault();
    if (typed === null) return;
    const half = Number(typed.trim().replace(',', '.')) / (unit === 'half' ? 1 : 2);
    const good = typed.trim() !== '' && half >= TEMPO_RANGE.from && half <= TEMPO_RANGE.to;
    setWrong(!good);
    if (!good) return;
    run({ kind: 'set', settings: { tempo: halfNotesPerMinute(half) } });
    setTyped(null);
  };
  return (
    <form className="tempo-field" onSubmit={take}>
      <label htmlFor={id}>{SCREEN.tempoUnit(unit)}</label>
      <input
        id={id}
        inputMode="decimal"
        autoComplete="off"
        value={typed ?? String(SCREEN.tempo(tempo, unit))}
        aria-invalid={wrong}
        aria-describedby={wrong ? `${id}-wrong` : undefined}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={() => take()}
      />
      {wrong && (
        <p className="wrong" id={`${id}-wrong`} role="alert">
          {SCREEN.tempoRange(unit)}
        </p>
      )}
    </form>
  );
}
