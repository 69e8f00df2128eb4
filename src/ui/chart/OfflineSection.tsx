import { useStore } from 'zustand';
import type { OfflineRoom } from '../../state/offline/offline-room';
import { SAFETY_WORDS } from '../../words/safety';
import { useDeskItself } from '../app/desk-context';
import { useRoom } from '../app/use-room';

/** Whether the page works without a connection, and the switch for it. */
export function OfflineSection() {
  const room = useRoom(useDeskItself().rooms.offline);
  if (!room) return null;
  return <OfflineLine room={room} />;
}

function OfflineLine({ room }: { readonly room: OfflineRoom }) {
  const copy = useStore(room.store, (state) => state.copy);
  return (
    <>
      <h3>{SAFETY_WORDS.offline}</h3>
      <p role="status">
        {SAFETY_WORDS.offlineState[copy]}{' '}
        {copy === 'off' && (
          <button type="button" className="plain" onClick={() => void room.switchOn()}>
            {SAFETY_WORDS.offlineOn}
          </button>
        )}
        {copy !== 'off' && copy !== 'unsupported' && (
          <button type="button" className="plain" onClick={() => void room.switchOff()}>
            {SAFETY_WORDS.offlineOff}
          </button>
        )}
      </p>
    </>
  );
}
