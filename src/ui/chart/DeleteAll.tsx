import { useState } from 'react';
import type { Safety } from '../../state/safety/safety';
import { SAFETY_WORDS } from '../../words/safety';

/** Deleting everything: what it would delete, a backup offered first, and a second press. */
export function DeleteAll({ safety }: { readonly safety: Safety }) {
  const [counts, setCounts] = useState<Awaited<ReturnType<Safety['counts']>> | null>(null);
  if (counts === null)
    return (
      <button type="button" className="plain" onClick={() => void safety.counts().then(setCounts, () => undefined)}>
        {SAFETY_WORDS.deleteAll}
      </button>
    );
  return (
    <div className="notice delete-all" role="alert">
      <p>{SAFETY_WORDS.deleteWhat(counts)}</p>
      <button type="button" className="key" onClick={() => void safety.saveBackup()}>
        {SAFETY_WORDS.saveBackup}
      </button>
      <button type="button" className="key" onClick={() => void safety.deleteAll()}>
        {SAFETY_WORDS.deleteNow}
      </button>
      <button type="button" className="plain" onClick={() => setCounts(null)}>
        {SAFETY_WORDS.keepAll}
      </button>
    </div>
  );
}
