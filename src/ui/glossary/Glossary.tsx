import { lazy, Suspense, useCallback } from 'react';
import { useStore } from 'zustand';
import type { WordId } from '../../words/glossary';
import { askedWord } from './asked-word';

const GlossaryPanel = lazy(() => import('./GlossaryPanel').then((module) => ({ default: module.GlossaryPanel })));

/** The glossary's place on the page: nothing until a word is asked for. */
export function Glossary() {
  const word = useStore(askedWord, (state) => state.word);
  const close = useCallback(() => askedWord.setState({ word: null }), []);
  const open = useCallback((next: WordId) => askedWord.setState({ word: next }), []);
  return <Suspense fallback={null}>{word !== null && <GlossaryPanel word={word} onWord={open} onClose={close} />}</Suspense>;
}
