/** The languages that sentences are written in: English in the tables themselves, Spanish in `src/words/spanish/`, laid over them by `speak`. */
export const LANGUAGES = ['en', 'es'] as const;
export type Language = (typeof LANGUAGES)[number];

/** The language of the tables as they are written. */
export const DEFAULT_LANGUAGE: Language = 'en';

/** A language's name for itself. */
export const LANGUAGE_NAMES: Readonly<Record<Language, string>> = { en: 'English', es: 'Español' };

/** A table of words in any language: the same keys, any text, and sentences made of the same facts. */
export type Said<Words> = Words extends string
  ? string
  : Words extends (...facts: infer Facts) => infer Sentence
    ? (...facts: Facts) => Said<Sentence>
    : Words extends readonly (infer Row)[]
      ? readonly Said<Row>[]
      : Words extends object
        ? { readonly [Key in keyof Words]: Said<Words[Key]> }
        : Words;

/** A table of words and what a language says in its place. Anything that is not in the table is left out. */
export type Translation = readonly [table: object, said: object];

/** The first of a person's languages (tags such as `es-CU`, best first) that sentences are written in; English if there is none. */
export function languageOf(tags: readonly string[]): Language {
  const known = tags.map((tag) => LANGUAGES.find((language) => tag.toLowerCase().split('-')[0] === language));
  return known.find((language) => language !== undefined) ?? DEFAULT_LANGUAGE;
}
