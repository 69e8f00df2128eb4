import { useEffect, useState } from 'react';
import { TRANSPORT_NOTICES } from '../../words/transport-notices';
import { useDesk, usePlaying, useRun } from '../app/desk-context';

/** One line about hands and arms, after the first stop of a visit and never while the music runs, until it has been understood once; `shown` where there is a place for it. */
export function Caution({ shown }: { readonly shown: boolean }) {
  const run = useRun();
  const seen = useDesk((state) => state.preferences.cautionSeen);
  const stopped = usePlaying((state) => state.transport.kind === 'stopped');
  const [played, setPlayed] = useState(false);
  useEffect(() => {
    if (!stopped) setPlayed(true);
  }, [stopped]);
  if (!shown || seen || !stopped || !played) return null;
  return (
    <p className="caution" role="status">
      {TRANSPORT_NOTICES.caution}
      <button type="button" className="plain" onClick={() => run({ kind: 'prefer', preferences: { cautionSeen: true } })}>
        {TRANSPORT_NOTICES.cautionSeen}
      </button>
    </p>
  );
}
