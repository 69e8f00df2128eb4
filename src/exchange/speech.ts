import type { Language } from '../words/language';
import { speak, spokenLanguage } from '../words/speak';
import { type NoteNaming, nameNotes, namingInForce } from '../words/spoken';

/** How the page speaks, as plain data: a thread of its own begins in English and is told. */
export interface Speech {
  readonly language: Language;
  readonly noteNames: NoteNaming;
}

/** How words are said here now. */
export const speechNow = (): Speech => ({ language: spokenLanguage(), noteNames: namingInForce() });

/** Says words in this way from now on; a language that cannot be fetched leaves them as they are. Missing, nothing changes. */
export async function speakAs(speech?: Speech): Promise<void> {
  if (!speech) return;
  nameNotes(speech.noteNames);
  await speak(speech.language).catch(() => undefined);
}
