import { FIGURE_SCREEN } from '../../words/figure-screen';
import { useDesk, useRun } from '../app/desk-context';
import { Choice } from './Choice';

/** Exercises: the figure crossed on purpose, and the solo in three steps. */
export function ExerciseGroup() {
  const run = useRun();
  const { crossed, solo } = useDesk((state) => state.settings);
  return (
    <section className="group" aria-label={FIGURE_SCREEN.exercise}>
      <h3>{FIGURE_SCREEN.exercise}</h3>
      <button
        type="button"
        className="key"
        aria-pressed={crossed}
        title={FIGURE_SCREEN.crossedHint}
        onClick={() => run({ kind: 'set', settings: { crossed: !crossed } })}
      >
        {FIGURE_SCREEN.crossed}
      </button>
      {crossed && <p className="caption">{FIGURE_SCREEN.crossedHint}</p>}
      <Choice
        name={FIGURE_SCREEN.solo}
        value={solo ?? 'none'}
        options={(['none', 'example', 'scaffold'] as const).map((value) => ({ value, label: FIGURE_SCREEN.solos[value] }))}
        onChoose={(value) => run({ kind: 'set', settings: { solo: value === 'none' ? null : value } })}
      />
    </section>
  );
}
