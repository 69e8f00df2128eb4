import type { SessionItem } from '../../state/journal/journal-state';
import { JOURNAL_WORDS } from '../../words/journal';

/** What a block of a session is about, in words. */
export const sessionBlock = ({ title, fromBar, toBar, level }: SessionItem): string => JOURNAL_WORDS.block(title, fromBar, toBar, level);
