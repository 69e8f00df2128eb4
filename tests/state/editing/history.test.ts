import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type History, NO_HISTORY, recorded, redone, undone } from '../../../src/state/editing/history';

/** The history of a run of texts, each typed over the one before. */
const historyOf = (texts: readonly string[]): History =>
  texts.slice(1).reduce((history, text, index) => recorded(history, texts[index] ?? '', text), NO_HISTORY);

/** Takes everything back, one step at a time; the texts in between, last first. */
function allBack(history: History, text: string): string[] {
  const texts: string[] = [];
  for (let at = undone(history, text); at; at = undone(at.history, at.text)) texts.push(at.text);
  return texts;
}

describe('The history of a text', () => {
  it('leads back to the first text and forward to the last, whatever was typed', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ maxLength: 12 }), { minLength: 1, maxLength: 12 }), (texts) => {
        const first = texts[0] ?? '';
        const last = texts.at(-1) ?? '';
        let at = { text: last, history: historyOf(texts) };
        for (let back = undone(at.history, at.text); back; back = undone(at.history, at.text)) at = back;
        expect(at.text).toBe(first);
        for (let forth = redone(at.history, at.text); forth; forth = redone(at.history, at.text)) at = forth;
        expect(at.text).toBe(last);
      }),
    );
  });

  it('takes a typed word back at once, and bars one by one', () => {
    const typed = '| Em7 | A7'.split('').map((_, index, signs) => signs.slice(0, index + 1).join(''));
    expect(allBack(historyOf(['', ...typed]), '| Em7 | A7')).toEqual(['| Em7 | ', '| Em7 |', '| Em7 ', '| ', '|', '']);
  });

  it('takes a run of deletions back at once', () => {
    expect(allBack(historyOf(['Em7b5', 'Em7b', 'Em7', 'Em']), 'Em')).toEqual(['Em7b5']);
    expect(allBack(historyOf(['Em7b5', 'm7b5', '7b5']), '7b5')).toEqual(['Em7b5']);
  });

  it('has no limit: ten thousand changes are all taken back', () => {
    const texts = Array.from({ length: 10_001 }, (_, index) => String(index).padStart(5, '0'));
    const back = allBack(historyOf(texts), '10000');
    expect(back).toHaveLength(10_000);
    expect(back.at(-1)).toBe('00000');
  });

  it('puts the caret behind what came back', () => {
    const history = historyOf(['| Em7 | A7 |', '| A7 |']);
    expect(undone(history, '| A7 |')?.caret).toBe('| Em7 | '.length);
  });
});
