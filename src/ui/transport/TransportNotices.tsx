import { TRANSPORT_NOTICES } from '../../words/transport-notices';
import { usePlaying } from '../app/desk-context';
import { Announcer } from './Announcer';

/** What the transport has to say now and then: a change that is coming, sound that does not start. */
export function TransportNotices() {
  const blocked = usePlaying((state) => (state.sound.kind === 'blocked' ? state.sound.reason : null));
  return (
    <>
      <Announcer />
      {blocked !== null && (
        <p className="transport-blocked" role="alert">
          {TRANSPORT_NOTICES.blocked(blocked)}
        </p>
      )}
    </>
  );
}
