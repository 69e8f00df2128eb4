import { useId } from 'react';
import { CLICKS, type Listening, PIANOS } from '../../state/listening/listening-state';
import { LISTENING } from '../../words/listening';
import { useHeard } from './listening-context';

/** What the band leaves to the player: its piano, its clave, its click. */
export function BandChoice({ listening }: { readonly listening: Listening }) {
  const { piano, claveFades, click } = useHeard(listening, (state) => state.band);
  const id = useId();
  return (
    <details className="device-more">
      <summary className="key">{LISTENING.band}</summary>
      <div>
        <label htmlFor={`${id}piano`}>{LISTENING.pianoName}</label>
        <select
          id={`${id}piano`}
          value={piano}
          onChange={(event) => listening.setBand({ piano: PIANOS.find((each) => each === event.target.value) ?? piano })}
        >
          {PIANOS.map((each) => (
            <option key={each} value={each}>
              {LISTENING.pianos[each]}
            </option>
          ))}
        </select>
        <label htmlFor={`${id}click`}>{LISTENING.clickName}</label>
        <select
          id={`${id}click`}
          value={click}
          onChange={(event) => listening.setBand({ click: CLICKS.find((each) => each === event.target.value) ?? click })}
        >
          {CLICKS.map((each) => (
            <option key={each} value={each}>
              {LISTENING.clicks[each]}
            </option>
          ))}
        </select>
        <button type="button" className="key" aria-pressed={claveFades} onClick={() => listening.setBand({ claveFades: !claveFades })}>
          {LISTENING.claveFades}
        </button>
        <p className="caption">{LISTENING.claveFadesHint}</p>
      </div>
    </details>
  );
}
