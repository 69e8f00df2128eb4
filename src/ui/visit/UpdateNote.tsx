import { useStore } from 'zustand';
import type { OfflineRoom } from '../../state/offline/offline-room';
import { UPDATE_WORDS } from '../../words/update';
import { usePlaying } from '../app/desk-context';

/** A new version waits: said while nothing plays, and taken only on the player's word. */
export function UpdateNote({ room }: { readonly room: OfflineRoom }) {
  const copy = useStore(room.store, (state) => state.copy);
  const silent = usePlaying((state) => state.transport.kind === 'stopped');
  return (
    <div className="update-note" role="status">
      {copy === 'update' && silent && (
        <p className="notice">
          {UPDATE_WORDS.waits}
          <button type="button" className="plain" onClick={() => void room.takeUpdate()}>
            {UPDATE_WORDS.take}
          </button>
        </p>
      )}
    </div>
  );
}
