import type { Listening } from '../../state/listening/listening-state';
import type { SourceName } from '../../state/listening/ports';
import { LISTENING } from '../../words/listening';
import { useHeard } from './listening-context';

/** The switches of a source, out of the way until they are wanted. */
export function DeviceMore({ listening, source }: { readonly listening: Listening; readonly source: SourceName }) {
  const { rhythmKeys, octave, headphones, soundsNotes, sendTo, outputs } = useHeard(listening, (state) => state);
  const { set } = listening;
  return (
    <details className="device-more">
      <summary className="key">{LISTENING.more}</summary>
      <div>
        {source === 'keys' && (
          <>
            <button type="button" className="key" aria-pressed={rhythmKeys} onClick={() => set({ rhythmKeys: !rhythmKeys })}>
              {LISTENING.rhythmKeys}
            </button>
            {!rhythmKeys && <p className="caption">{LISTENING.keysHint}</p>}
            {!rhythmKeys &&
              ([-1, 1] as const).map((by) => (
                <button
                  key={by}
                  type="button"
                  className="key"
                  disabled={Math.abs(octave + by) > 2}
                  onClick={() => set({ octave: octave + by })}
                >
                  {by < 0 ? LISTENING.octaveDown : LISTENING.octaveUp}
                </button>
              ))}
          </>
        )}
        {source !== 'microphone' && (
          <button type="button" className="key" aria-pressed={soundsNotes} onClick={() => set({ soundsNotes: !soundsNotes })}>
            {LISTENING.soundsNotes}
          </button>
        )}
        {source === 'midi' && <p className="caption">{LISTENING.soundsHint}</p>}
        {source === 'midi' && outputs.length > 0 && (
          <>
            <label>
              {LISTENING.sendTo}{' '}
              <select value={sendTo ?? ''} onChange={(event) => set({ sendTo: event.target.value || null })}>
                <option value="">{LISTENING.sendNowhere}</option>
                {outputs.map((output) => (
                  <option key={output.id} value={output.id}>
                    {output.name}
                  </option>
                ))}
              </select>
            </label>
            <p className="caption">{LISTENING.sendHint}</p>
          </>
        )}
        {source === 'microphone' && (
          <>
            <button type="button" className="key" aria-pressed={headphones} onClick={() => set({ headphones: !headphones })}>
              {LISTENING.headphones}
            </button>
            <p className="caption">{LISTENING.headphonesHint}</p>
          </>
        )}
        {(source === 'microphone' || (source === 'keys' && rhythmKeys)) && <p className="caption">{LISTENING.rhythmOnly}</p>}
        <button type="button" className="key" onClick={() => listening.close()}>
          {LISTENING.other}
        </button>
      </div>
    </details>
  );
}
