import { lazy, Suspense, startTransition, useState } from 'react';
import { TAKE_ALONG_WORDS } from '../../words/take-along';

const TakeAlongPanel = lazy(() => import('./TakeAlongPanel').then((module) => ({ default: module.TakeAlongPanel })));

/** Opens the panel with the files to take along, which is fetched only then. */
export function TakeAlongButton() {
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" aria-expanded={open} onClick={() => startTransition(() => setOpen((now) => !now))}>
        {TAKE_ALONG_WORDS.open}
      </button>
      <Suspense fallback={null}>{open && <TakeAlongPanel onClose={() => setOpen(false)} />}</Suspense>
    </>
  );
}
