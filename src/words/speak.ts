import { DEFAULT_LANGUAGE, type Language } from './language';

/*
 * Words are read from their tables at the moment they are shown, so a language is put in force by laying its words over the tables, and taken
 * back by laying the English ones, kept aside, over them again. A word that a language lacks, or has in another shape, stays English. Whoever draws from the tables
 * draws again after a change.
 */

let inForce: Language = DEFAULT_LANGUAGE;
const english = new Map<object, unknown>();

/** The language in which the tables speak now. */
export const spokenLanguage = (): Language => inForce;

/** Puts a language in force for everything said from now on. Rejects, and leaves the words as they are, when its words cannot be fetched. */
export async function speak(language: Language): Promise<void> {
  if (language === inForce) return;
  const translations = language === 'es' ? (await import('./spanish')).SPANISH : [];
  for (const [table, words] of english) overlay(table, words as object);
  for (const [table, said] of translations) {
    if (!english.has(table)) english.set(table, copyOf(table));
    overlay(table, said);
  }
  inForce = language;
}

const isTable = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null && !Array.isArray(value);

/** The words of a table as they stand, tables within it included. */
function copyOf(table: object): unknown {
  return Object.fromEntries(Object.entries(table).map(([key, value]) => [key, isTable(value) ? copyOf(value) : value]));
}

function overlay(table: object, words: object): void {
  const target = table as Record<string, unknown>;
  for (const [key, said] of Object.entries(words)) {
    const now = target[key];
    if (isTable(now) && isTable(said)) overlay(now, said);
    else if (isTable(now) === isTable(said) && typeof now === typeof said) target[key] = said;
  }
}
