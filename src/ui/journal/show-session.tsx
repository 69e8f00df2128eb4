import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import type { Desk } from '../../state/desk';
import type { Journal } from '../../state/journal/journal';
import { DeskContext } from '../app/desk-context';
import { SessionLine } from './SessionLine';

/** Draws the line of a session above the page, in a place of its own, until the session is over: the first screen does without it. */
export function showSession(page: Document, desk: Desk, journal: Journal): void {
  if (page.querySelector('.session-place') || journal.store.getState().session === null) return;
  const place = page.createElement('div');
  place.className = 'session-place';
  page.body.prepend(place);
  const root = createRoot(place);
  root.render(
    <StrictMode>
      <DeskContext value={desk}>
        <SessionLine journal={journal} />
      </DeskContext>
    </StrictMode>,
  );
  const end = journal.store.subscribe(({ session }) => {
    if (session !== null) return;
    end();
    place.remove();
    // Not while React is drawing what told of the end.
    setTimeout(() => root.unmount());
  });
}
