import type { MouseEvent } from 'react';
import type { Listening, ListeningState } from '../../state/listening/listening-state';
import type { SourceName } from '../../state/listening/ports';
import { LISTENING } from '../../words/listening';
import { usePlaying } from '../app/desk-context';
import { useHeard } from './listening-context';

/** Where listening stands: one sentence, and one way forward where there is one. */
export function DeviceLine({ listening, source }: { readonly listening: Listening; readonly source: SourceName }) {
  const state = useHeard(listening, (now) => now);
  const stopped = usePlaying((now) => now.transport.kind === 'stopped');
  const { device } = state;
  const again = ['refused', 'lost', 'failed', 'no device'].includes(device.kind) && !(source === 'midi' && device.kind === 'no device');
  const stuck = again || device.kind === 'held' || device.kind === 'missing' || (state.silent > 0 && !stopped);
  const lost = source === 'keys' && !state.rhythmKeys && device.kind === 'listening' && !state.tally;
  const warning = warningOf(state);
  return (
    <div className="device-line" role="status">
      <p>
        <strong>{deviceSentence(state, source)}</strong> {device.kind === 'listening' && progress(state, stopped)}
      </p>
      {lost && <p className="caption">{LISTENING.keysHint}</p>}
      {warning && <p className="device-warning">{warning}</p>}
      {device.kind === 'held' && (
        <button type="button" className="key" onClick={(event) => keepingFocus(event, () => listening.wake())}>
          {LISTENING.wake[device.why]}
        </button>
      )}
      {again && (
        <button type="button" className="key" onClick={(event) => keepingFocus(event, () => listening.choose(source))}>
          {LISTENING.again}
        </button>
      )}{' '}
      {stuck && (
        <button type="button" className="key" onClick={() => listening.close()}>
          {LISTENING.other}
        </button>
      )}
    </div>
  );
}

/** The button goes when it has worked: the row has the focus then. */
function keepingFocus({ currentTarget }: MouseEvent<HTMLElement>, act: () => void): void {
  currentTarget.closest<HTMLElement>('.play-along')?.focus({ preventScroll: true });
  act();
}

function deviceSentence({ device, rhythmKeys }: ListeningState, source: SourceName): string {
  switch (device.kind) {
    case 'off':
    case 'asking':
      return LISTENING.asking[source];
    case 'listening':
      if (source === 'keys' && rhythmKeys) return LISTENING.listening.taps;
      return source === 'midi' ? LISTENING.listening.midi(device.devices.map(({ name }) => name).join(', ')) : LISTENING.listening[source];
    case 'no device':
      return LISTENING.noDevice[source];
    case 'refused':
      return LISTENING.refused[source];
    case 'missing':
      return LISTENING.missing[source];
    case 'held':
      return LISTENING.held[device.why];
    case 'lost':
      return source === 'microphone' ? LISTENING.lostMicrophone : LISTENING.lost(device.device);
    case 'failed':
      return LISTENING.failed(device.reason);
  }
}

function progress({ tally, silent, calibrating, replaying }: ListeningState, stopped: boolean): string {
  if (replaying) {
    const { side, met, claveStrokes } = replaying;
    return `${LISTENING.replaying[side]} ${LISTENING.metClave(met.length, claveStrokes)}`;
  }
  if (calibrating.kind === 'clicking') return LISTENING.calibrating;
  if (silent > 0 && !stopped) return LISTENING.silent;
  if (tally) return LISTENING.tally(tally.passes, tally.clean, tally.cleanInARow);
  return stopped ? LISTENING.ready : LISTENING.running;
}

/** What stands in the way of judging the timing, the worst first. */
function warningOf({ output, device, report, coarse }: ListeningState): string | null {
  if (output === 'wireless') return LISTENING.wireless;
  if (output === 'unstable') return LISTENING.unstable;
  if (device.kind === 'listening' && device.voiceProcessing) return LISTENING.voiceProcessing;
  if (report?.interrupted === 'clock jumped') return LISTENING.jumped;
  if (report?.interrupted === 'microphone was away') return LISTENING.microphoneAway;
  if (report?.interrupted === 'page was away') return LISTENING.away;
  if (!coarse) return null;
  const said = report?.loudspeaker;
  return said && said.kind !== 'measured' ? LISTENING.loudspeaker[said.kind] : LISTENING.noTiming.coarse;
}
