import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEMO_BOOK } from '../../../src/music/chart/demo-book';
import { completionAt } from '../../../src/state/editing/complete';
import { tokensOf } from '../../../src/state/editing/tokens';

const kinds = (line: string) => tokensOf(line).map(({ kind, text }) => `${kind} ${text}`);

describe('Pieces of a line', () => {
  it('are told apart as the chart text is written', () => {
    expect(kinds('title: Last Ferry ; ours')).toEqual(['header name title:', 'header value Last Ferry', 'comment ; ours']);
    expect(kinds('[B, role: verse]')).toEqual(['head [B, role: verse]']);
    expect(kinds('|: Gm7 C7b9 |1. % :|2. >D6/9 / {1 2& 4&~} ||')).toEqual([
      'barline |:',
      'chord Gm7',
      'chord C7b9',
      'barline |1.',
      'sign %',
      'barline :|2.',
      'chord >D6/9',
      'sign /',
      'hits {1 2& 4&~}',
      'barline ||',
    ]);
    expect(kinds('| stop | rest 8 | N.C. | (2/4) H7 | <to coda> |')).toEqual([
      'barline |',
      'word stop',
      'barline |',
      'word rest 8',
      'barline |',
      'word N.C.',
      'barline |',
      'length (2/4)',
      'plain H7',
      'barline |',
      'mark <to coda>',
      'barline |',
    ]);
  });

  it('lose no sign of any line and stand where they say', () => {
    const lines = DEMO_BOOK.flatMap(({ text }) => text.split('\n'));
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.constantFrom(...lines)), (typed) => {
        const line = typed.replace(/[\r\n]/g, ' ');
        const tokens = tokensOf(line);
        for (const { at, text } of tokens) expect(line.slice(at, at + text.length)).toBe(text);
        expect(tokens.map(({ text }) => text.replace(/\s/g, '')).join('')).toBe(line.replace(/\s/g, ''));
      }),
    );
  });

  it('of every chord in the demo book are chords', () => {
    const bars = DEMO_BOOK.flatMap(({ text }) => text.split('\n')).filter((line) => line.startsWith('|'));
    expect(bars.flatMap((line) => tokensOf(line)).filter(({ kind }) => kind === 'plain')).toEqual([]);
  });
});

describe('What could be written at the caret', () => {
  const chart = 'key: D\n[A]\n| Em7 | A7 | D6 | Em7b5 | Em7 |\n';
  const options = (text: string, caret = text.length) => completionAt(text, caret)?.options ?? [];

  it('are chords of this chart first, then the usual ones on the root that was begun', () => {
    expect(options(`${chart}| E`).slice(0, 3)).toEqual(['Em7', 'Em7b5', 'E7']);
    expect(options(`${chart}| B♭m`)).toEqual(['B♭m7', 'B♭maj7', 'B♭m7b5', 'B♭m6', 'B♭m9', 'B♭maj9']);
  });

  it('replace the whole symbol at the caret and nothing else', () => {
    const text = '| Em7b | A7 |';
    const found = completionAt(text, 4);
    expect(found && text.slice(found.from, found.to)).toBe('Em7b');
  });

  it('know headers, their values, sections and marks', () => {
    expect(options('sty')).toEqual(['style: ']);
    expect(options('clave: 3')).toEqual(['3-2 son', '3-2 rumba']);
    expect(options('[Verse]\n[Coro, x4]\nform: Verse, C')).toEqual(['Coro']);
    expect(options('| A7 <D.S')).toEqual(['<D.S. al coda>', '<D.S. al fine>']);
  });

  it('are none in comments, hits, heads, or where nothing was begun', () => {
    for (const text of ['| A7 ; A', '| A7 {1', '[A', '| A7 |', '', 'title: A']) expect(completionAt(text, text.length), text).toBeNull();
  });

  it('never throw, wherever the caret stands', () => {
    fc.assert(fc.property(fc.string(), fc.nat(20), (text, at) => void completionAt(text, Math.min(at, text.length))));
  });
});
