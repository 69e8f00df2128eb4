import { useStore } from 'zustand';
import type { Safety } from '../../state/safety/safety';
import { SAFETY_WORDS } from '../../words/safety';
import { useDeskItself } from '../app/desk-context';
import { useRoom } from '../app/use-room';
import { DeleteAll } from './DeleteAll';
import { OfflineSection } from './OfflineSection';
import { RestorePlan } from './RestorePlan';

/** Where everything is kept and for how long, and the ways to take it along, bring it back and delete it. */
export function SafetySection() {
  const safety = useRoom(useDeskItself().rooms.safety);
  return (
    <section className="safety" aria-labelledby="safety">
      <h2 id="safety" tabIndex={-1}>
        {SAFETY_WORDS.name}
      </h2>
      <p>{SAFETY_WORDS.where}</p>
      {safety && (
        <>
          <Lasting safety={safety} />
          <RestorePlan safety={safety} />
          <div className="safety-acts">
            <button type="button" className="key" onClick={() => void safety.saveBackup()}>
              {SAFETY_WORDS.saveBackup}
            </button>
            <button type="button" className="key" onClick={() => void safety.copyReport()}>
              {SAFETY_WORDS.report}
            </button>
            <DeleteAll safety={safety} />
          </div>
          <p className="caption">{SAFETY_WORDS.restoreHint}</p>
          <Report safety={safety} />
          <OfflineSection />
        </>
      )}
    </section>
  );
}

function Lasting({ safety }: { readonly safety: Safety }) {
  const persistence = useStore(safety.store, (state) => state.persistence);
  const lastBackup = useStore(safety.store, (state) => state.lastBackup);
  const refused = useStore(safety.store, (state) => state.refused);
  return (
    <>
      {persistence && (
        <p>
          {SAFETY_WORDS.lasting(persistence.lasting)}{' '}
          {persistence.usage !== null && persistence.quota !== null && SAFETY_WORDS.room(persistence.usage, persistence.quota)}{' '}
          {persistence.lasting === false && (
            <button type="button" className="plain" onClick={() => void safety.askToLast()}>
              {SAFETY_WORDS.askToLast}
            </button>
          )}
        </p>
      )}
      <p className="caption">
        {lastBackup === null ? SAFETY_WORDS.noBackup : SAFETY_WORDS.lastBackup(new Date(lastBackup).toLocaleDateString())}
      </p>
      {refused !== null && (
        <p className="wrong" role="alert">
          {SAFETY_WORDS.refused(refused)}
        </p>
      )}
    </>
  );
}

function Report({ safety }: { readonly safety: Safety }) {
  const report = useStore(safety.store, (state) => state.report);
  return (
    <div aria-live="polite">
      {report === null && <p className="caption">{SAFETY_WORDS.reportHint}</p>}
      {report?.copied && <p>{SAFETY_WORDS.copied}</p>}
      {report && !report.copied && (
        <>
          <p>{SAFETY_WORDS.notCopied}</p>
          <textarea className="line-field diagnostics" readOnly aria-label={SAFETY_WORDS.report} rows={8} value={report.text} />
        </>
      )}
    </div>
  );
}
