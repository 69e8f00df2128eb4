import { CLAVE_KINDS } from '../../state/settings';
import { SETTINGS_SCREEN } from '../../words/settings-screen';
import { useDesk, useRun } from '../app/desk-context';
import { Word } from '../glossary/Word';
import { Choice } from './Choice';
import { DirectionSwitch } from './DirectionSwitch';

/** The clave: direction, son or rumba, count-in, pulse lane. */
export function ClaveGroup() {
  const run = useRun();
  const { direction, kind, countInBars, pulse, balance } = useDesk((state) => state.settings);
  const pulseOn = !balance.pulse.muted;
  return (
    <section className="group" aria-label={SETTINGS_SCREEN.clave}>
      <h3>
        <Word of="clave">{SETTINGS_SCREEN.clave}</Word>
      </h3>
      <div className="group-row">
        <DirectionSwitch direction={direction} onExchange={() => run({ kind: 'exchange sides' })} />
        <Choice
          name={SETTINGS_SCREEN.kindName}
          word="rumba clave"
          value={kind}
          options={CLAVE_KINDS.map((value) => ({ value, label: SETTINGS_SCREEN.kinds[value] }))}
          onChoose={(value) => run({ kind: 'set', settings: { kind: value } })}
        />
      </div>
      <Choice
        name={SETTINGS_SCREEN.countIn}
        word="countin"
        value={countInBars}
        options={([0, 1, 2] as const).map((value) => ({ value, label: SETTINGS_SCREEN.countInBars[value] }))}
        onChoose={(value) => run({ kind: 'set', settings: { countInBars: value } })}
      />
      <div className="group-row">
        <Choice
          name={SETTINGS_SCREEN.pulse}
          word="pulse"
          value={pulse}
          options={(['halves', 'quarters'] as const).map((value) => ({ value, label: SETTINGS_SCREEN.pulses[value] }))}
          onChoose={(value) => run({ kind: 'set', settings: { pulse: value } })}
        />
        <button
          type="button"
          className="key key-low"
          aria-pressed={pulseOn}
          onClick={() => run({ kind: 'mute', part: 'pulse', muted: pulseOn })}
        >
          {pulseOn ? SETTINGS_SCREEN.heard : SETTINGS_SCREEN.silent}
        </button>
      </div>
    </section>
  );
}
