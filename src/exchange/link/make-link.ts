import type { Result } from '../../vocabulary';
import { type Lesson, LINK_MARK, LINK_VERSION, type LinkFault, LONGEST_NOTE } from './lesson';
import { pack } from './packed';

/** The lesson as the part of an address behind the page's own: `#l=1.` and the packed JSON `[text, settings, note]`. */
export const makeLink = ({ text, settings, note }: Lesson): Result<string, LinkFault> =>
  pack(LINK_MARK, LINK_VERSION, JSON.stringify([text, settings, note.slice(0, LONGEST_NOTE)]));
