import { PARTS } from '../../state/parts';
import { SCREEN } from '../../words/screen';
import { SETTINGS_SCREEN } from '../../words/settings-screen';
import { useDesk, useRun } from '../app/desk-context';
import { usePanel } from '../app/use-panel';
import { PartFader } from './PartFader';
import { PlainMixes } from './PlainMixes';
import './balance.css';

/** Every part with its switch and level, four mixes with one touch, the ceiling and the tuning. */
export function BalancePanel(props: { readonly onClose: () => void }) {
  const run = useRun();
  const ceiling = useDesk((state) => state.preferences.ceiling);
  const tuning = useDesk((state) => state.preferences.tuningCents);
  const panel = usePanel(props.onClose);
  const { onClose } = props;
  return (
    <section ref={panel} className="balance" aria-label={SCREEN.balance} tabIndex={-1}>
      <div className="balance-head">
        <h2>{SCREEN.balance}</h2>
        <button type="button" className="key" onClick={onClose}>
          {SETTINGS_SCREEN.close}
        </button>
      </div>
      <PlainMixes />
      {PARTS.map((part) => (
        <PartFader key={part} part={part} />
      ))}
      <label className="fader fader-whole">
        <span className="fader-name">{SETTINGS_SCREEN.ceiling}</span>
        <input
          type="range"
          min={0}
          max={100}
          value={Math.round(ceiling * 100)}
          onChange={(event) => run({ kind: 'prefer', preferences: { ceiling: Number(event.target.value) / 100 } })}
        />
      </label>
      <label className="fader fader-whole">
        <span className="fader-name">{SETTINGS_SCREEN.tuning}</span>
        <input
          type="range"
          min={-50}
          max={50}
          value={tuning}
          aria-valuetext={SETTINGS_SCREEN.tuningValue(tuning)}
          title={SETTINGS_SCREEN.tuningHint}
          onChange={(event) => run({ kind: 'prefer', preferences: { tuningCents: Number(event.target.value) } })}
        />
        <output className="fader-value">{SETTINGS_SCREEN.tuningValue(tuning)}</output>
      </label>
      <p className="caution-line">{SETTINGS_SCREEN.hearing}</p>
    </section>
  );
}
