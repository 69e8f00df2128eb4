import { SETTINGS_SCREEN } from '../../words/settings-screen';
import { useDesk, useDeskItself, useRun } from '../app/desk-context';
import { Choice } from './Choice';

/** The twelve keys, from the chart's own upward, each spelled as it is written; and what the form does at its end. */
export function KeyGroup() {
  const run = useRun();
  const { keysOf } = useDeskItself();
  const chart = useDesk((state) => state.music?.chart ?? null);
  const transpose = useDesk((state) => state.settings.transpose);
  const round = useDesk((state) => state.settings.round);
  return (
    <section className="group" aria-label={SETTINGS_SCREEN.key}>
      <h3>{SETTINGS_SCREEN.key}</h3>
      {chart && (
        <div className="keys">
          <Choice
            name={SETTINGS_SCREEN.keyHint}
            value={transpose}
            options={keysOf(chart).map((label, value) => ({ value, label }))}
            onChoose={(value) => run({ kind: 'set', settings: { transpose: value } })}
          />
        </div>
      )}
      <Choice
        name={SETTINGS_SCREEN.round}
        value={round}
        options={(['round and round', 'once, then end'] as const).map((value) => ({ value, label: SETTINGS_SCREEN.rounds[value] }))}
        onChoose={(value) => run({ kind: 'set', settings: { round: value } })}
      />
    </section>
  );
}
