import { afterEach, describe, expect, it } from 'vitest';
import { languageOf } from '../../src/words/language';
import { SCREEN } from '../../src/words/screen';
import { speak, spokenLanguage } from '../../src/words/speak';
import { nameNotes, printedChord, printedNote } from '../../src/words/spoken';

afterEach(async () => {
  await speak('en');
  nameNotes('letters');
});

describe('Languages', () => {
  it('are laid over the tables and taken back', async () => {
    const english = { ...SCREEN, places: { ...SCREEN.places }, levels: { ...SCREEN.levels } };
    await speak('es');
    expect(spokenLanguage()).toBe('es');
    expect(SCREEN.play).toBe('Tocar');
    expect(SCREEN.levels[2]).toBe('básico');
    expect(SCREEN.hand('left', true)).toBe('Izq. suena');
    await speak('en');
    expect(SCREEN).toEqual(english);
  });

  it('are found among the tags of a browser', () => {
    expect(languageOf(['es-CU', 'en'])).toBe('es');
    expect(languageOf(['de-AT', 'es-PR', 'en'])).toBe('es');
    expect(languageOf(['fr', 'en-GB', 'es'])).toBe('en');
    expect(languageOf([])).toBe('en');
  });
});

describe('Note names', () => {
  // Fixed do, as taught in Spanish-speaking countries (common practice, no source).
  it('are letters or syllables; chord symbols keep their letters', () => {
    expect(['C#4', 'Bb', 'Gbb3'].map(printedNote)).toEqual(['C♯', 'B♭', 'G♭♭']);
    nameNotes('do re mi');
    expect(['C#4', 'Bb', 'Gbb3', 'G'].map(printedNote)).toEqual(['Do♯', 'Si♭', 'Sol♭♭', 'Sol']);
    expect(printedChord('Ebm7/Bb')).toBe('E♭m7/B♭');
    expect(printedChord('B7b9')).toBe('B7♭9');
  });
});
