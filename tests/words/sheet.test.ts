import { describe, expect, it } from 'vitest';
import { asBeforeWords, barsWords, directionWords, keyInWords, SHEET_WORDS, tempoWords } from '../../src/words/sheet';

describe('words of the sheet', () => {
  it('names tempo in both units, key and direction', () => {
    expect(tempoWords(92)).toBe('half note = 92, quarter note = 184');
    expect(keyInWords({ tonic: 'Bb', mode: 'minor' })).toBe('B♭ minor');
    expect(directionWords({ kind: 'rumba', direction: '3-2' })).toBe('3-2 rumba');
    expect(SHEET_WORDS.begins(3)).toBe('begins on the 3-side');
  });
  it('refers to bars that stand already, counted from 1', () => {
    expect(barsWords(2, 3)).toBe('bar 3');
    expect(asBeforeWords('A', [8, 16], [0, 8])).toBe('A, bars 9–16: as bars 1–8');
  });
});
