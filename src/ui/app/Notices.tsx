import type { Rooms } from '../../state/rooms';
import { PAGE_NOTICES } from '../../words/page-notices';
import { useDesk, useDeskItself, useRun } from './desk-context';

/** What the page has to say once: another tab, records put aside, a setting that gave no music. Each has a way forward. */
export function Notices() {
  const run = useRun();
  const { rooms } = useDeskItself();
  const otherTab = useDesk((state) => state.otherTab);
  const keeping = useDesk((state) => state.keeping.kind);
  const putAside = useDesk((state) => state.putAside.length);
  const trouble = useDesk((state) => state.trouble);
  const unwritten = useDesk((state) => state.unwritten);
  const unsaved = useDesk((state) => state.unsaved);
  return (
    <div className="notices" aria-live="polite">
      {otherTab && (
        <p className="notice">
          {otherTab.kind === 'fresh' ? PAGE_NOTICES.otherTabFresh : PAGE_NOTICES.otherTabParted}
          <button type="button" className="plain" onClick={() => run({ kind: 'show the other tab' })}>
            {PAGE_NOTICES.showOther}
          </button>
          <button type="button" className="plain" onClick={() => run({ kind: 'keep this one' })}>
            {otherTab.kind === 'fresh' ? PAGE_NOTICES.keepThis : PAGE_NOTICES.understood}
          </button>
        </p>
      )}
      {keeping === 'late' && <p className="notice">{PAGE_NOTICES.late}</p>}
      {keeping === 'newer' && (
        <p className="notice">
          {PAGE_NOTICES.newer}
          <button type="button" className="plain" onClick={() => void loadNewest(rooms)}>
            {PAGE_NOTICES.loadAnew}
          </button>
          <button type="button" className="plain" onClick={() => void rooms.safety().then((safety) => safety.saveBackup())}>
            {PAGE_NOTICES.saveBackup}
          </button>
        </p>
      )}
      {keeping === 'cleared' && (
        <p className="notice">
          {PAGE_NOTICES.cleared}
          <button type="button" className="plain" onClick={() => window.location.reload()}>
            {PAGE_NOTICES.loadAnew}
          </button>
        </p>
      )}
      {putAside > 0 && <p className="notice">{PAGE_NOTICES.putAside(putAside)}</p>}
      {trouble !== null && <p className="notice">{PAGE_NOTICES.trouble(trouble)}</p>}
      {unwritten !== null && (
        <p className="notice">
          {PAGE_NOTICES.unwritten(unwritten)}
          <button type="button" className="plain" onClick={() => void rooms.journal().then((journal) => journal.saveCsv())}>
            {PAGE_NOTICES.saveJournal}
          </button>
        </p>
      )}
      {unsaved !== null && <p className="notice">{PAGE_NOTICES.unsaved(unsaved)}</p>}
    </div>
  );
}

/** Loads the page anew, in the version that waits where there is one: the copy on this device would bring the old one back. */
async function loadNewest(rooms: Rooms): Promise<void> {
  const offline = await rooms.offline().catch(() => null);
  if (offline?.store.getState().copy === 'update') await offline.takeUpdate();
  else window.location.reload();
}
