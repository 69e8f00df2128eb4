import type { Listening, PassReport } from '../../state/listening/listening-state';
import { LISTENING } from '../../words/listening';
import { useHeard } from './listening-context';

/** Offers to measure the delay when timing is about to be judged, and says how far timing can be trusted. */
export function CalibrationOffer({ listening, report }: { readonly listening: Listening; readonly report: PassReport }) {
  const { loudspeaker } = report;
  const { timing } = report.take;
  const calibrating = useHeard(listening, (state) => state.calibrating);
  const calibration = useHeard(listening, (state) => state.calibration);
  const source = useHeard(listening, (state) => state.source);
  const listens = useHeard(listening, (state) => state.device.kind === 'listening');
  if (loudspeaker?.kind === 'measured' && timing === 'calibrated')
    return <p className="caption">{LISTENING.loudspeaker.measured(loudspeaker.latencyMs, loudspeaker.clicks)}</p>;
  if (timing === 'coarse' && loudspeaker && loudspeaker.kind !== 'measured')
    return <Unmeasured listening={listening} why={loudspeaker.kind} />;
  if (timing === 'off' || timing === 'coarse') return <p className="caption">{LISTENING.noTiming[timing]}</p>;
  if (!listens) return null;
  return (
    <div className="calibration">
      <p className="caption" role="status">
        {calibrating.kind === 'clicking'
          ? LISTENING.calibrating
          : calibrating.kind === 'failed'
            ? LISTENING.calibrationFailed[calibrating.why]
            : calibration
              ? LISTENING.calibrated(calibration.latencyMs, calibration.spreadMs)
              : source === 'microphone'
                ? LISTENING.calibrateByEar
                : LISTENING.calibrateWhy}
      </p>
      {calibrating.kind !== 'clicking' && (
        <button type="button" className={calibration ? 'plain' : 'key'} onClick={() => listening.calibrate()}>
          {LISTENING.calibrate}
        </button>
      )}
    </div>
  );
}

/** The clicks said nothing: why, and the two ways on. */
function Unmeasured({ listening, why }: { readonly listening: Listening; readonly why: 'not found' | 'scattered' }) {
  const headphones = useHeard(listening, (state) => state.headphones);
  return (
    <div className="calibration">
      <p className="caption">{LISTENING.loudspeaker[why]}</p>
      {why === 'not found' && (
        <button type="button" className="key" aria-pressed={headphones} onClick={() => listening.set({ headphones: !headphones })}>
          {LISTENING.headphones}
        </button>
      )}
    </div>
  );
}
