import type { TimingTrust } from '../../practice/take';
import type { Listening } from '../../state/listening/listening';
import { LISTENING } from '../../words/listening';
import { useHeard } from './listening-context';

/** Offers to measure the delay when timing is about to be judged, and says how far timing can be trusted. */
export function CalibrationOffer({ listening, timing }: { readonly listening: Listening; readonly timing: TimingTrust }) {
  const calibrating = useHeard(listening, (state) => state.calibrating);
  const calibration = useHeard(listening, (state) => state.calibration);
  const source = useHeard(listening, (state) => state.source);
  const listens = useHeard(listening, (state) => state.device.kind === 'listening');
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
