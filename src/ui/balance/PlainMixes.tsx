import './balance.css';
import { PLAIN_MIXES } from '../../state/settings';
import { SETTINGS_SCREEN } from '../../words/settings-screen';
import { useRun } from '../app/desk-context';

/** Four mixes of the band, each with one touch. */
export function PlainMixes() {
  const run = useRun();
  return (
    <fieldset className="balance-mixes">
      <legend>{SETTINGS_SCREEN.mixesName}</legend>
      {PLAIN_MIXES.map((mix) => (
        <button key={mix} type="button" className="key" onClick={() => run({ kind: 'plain mix', mix })}>
          {SETTINGS_SCREEN.mixes[mix]}
        </button>
      ))}
    </fieldset>
  );
}
