/** What the choices of language and of note names say. */
export const LANGUAGE_SCREEN = {
  language: 'Language · Idioma',
  noteNames: 'Notes are named',
  namings: { letters: 'C D E', 'do re mi': 'Do Re Mi' },
} as const;
