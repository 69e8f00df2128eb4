import { PAGE_NOTICES } from '../../words/page-notices';
import { usePlaying } from '../app/desk-context';
import { Caution } from './Caution';

/** What stands over the transport when there is something to say: the line about hands and arms, and sound that could not start. */
export function TransportNotices() {
  const blocked = usePlaying((state) => (state.sound.kind === 'blocked' ? state.sound.reason : null));
  return (
    <>
      <Caution />
      {blocked !== null && (
        <p className="transport-blocked" role="alert">
          {PAGE_NOTICES.blocked(blocked)}
        </p>
      )}
    </>
  );
}
