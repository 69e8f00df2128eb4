import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import type { Desk } from '../../state/desk';
import { DeskContext } from '../app/desk-context';
import { type LinkMarks, Visit } from './Visit';

/** Draws what comes from outside into a place of its own beside the page, so that the first screen does without it. `marks` begin what a link holds. */
export function openVisit(page: Document, desk: Desk, marks: LinkMarks): void {
  const place = page.createElement('div');
  page.body.append(place);
  createRoot(place).render(
    <StrictMode>
      <DeskContext value={desk}>
        <Visit link={desk.rooms.link} offline={desk.rooms.offline} journal={desk.rooms.journal} marks={marks} />
      </DeskContext>
    </StrictMode>,
  );
}
