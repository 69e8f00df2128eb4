import { SCREEN } from '../../words/screen';
import { useDesk, useRun } from './desk-context';

/** What the page has to say once: another tab, records put aside, a setting that gave no music. Each has a way forward. */
export function Notices() {
  const run = useRun();
  const otherTab = useDesk((state) => state.otherTab);
  const putAside = useDesk((state) => state.putAside.length);
  const trouble = useDesk((state) => state.trouble);
  return (
    <div className="notices" aria-live="polite">
      {otherTab && (
        <p className="notice">
          {otherTab.kind === 'fresh' ? SCREEN.otherTabFresh : SCREEN.otherTabParted}
          <button type="button" className="plain" onClick={() => run({ kind: 'show the other tab' })}>
            {SCREEN.showOther}
          </button>
          <button type="button" className="plain" onClick={() => run({ kind: 'keep this one' })}>
            {otherTab.kind === 'fresh' ? SCREEN.keepThis : SCREEN.understood}
          </button>
        </p>
      )}
      {putAside > 0 && <p className="notice">{SCREEN.putAside(putAside)}</p>}
      {trouble !== null && <p className="notice">{SCREEN.trouble(trouble)}</p>}
    </div>
  );
}
