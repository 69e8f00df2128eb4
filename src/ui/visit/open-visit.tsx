import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import type { Desk } from '../../state/desk';
import { DeskContext } from '../app/desk-context';
import { Visit } from './Visit';

/** Draws what comes from outside into a place of its own beside the page, so that the first screen does without it. `mark` begins a link's address. */
export function openVisit(page: Document, desk: Desk, mark: string): void {
  const place = page.createElement('div');
  page.body.append(place);
  createRoot(place).render(
    <StrictMode>
      <DeskContext value={desk}>
        <Visit link={desk.rooms.link} offline={desk.rooms.offline} mark={mark} />
      </DeskContext>
    </StrictMode>,
  );
}
