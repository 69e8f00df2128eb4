import { createRoot } from 'react-dom/client';
import type { Desk } from '../../state/desk';
import { PartsPage } from './PartsPage';

/** Draws the page of all parts in place of the program. */
export const showParts = (root: HTMLElement, desk: Desk): void => createRoot(root).render(<PartsPage desk={desk} />);
