import { createStore } from 'zustand/vanilla';
import type { WordId } from '../../words/glossary';

/** What the glossary was asked for: nothing (closed), all of it, or one word. */
export const askedWord = createStore<{ readonly word: WordId | 'all' | null }>(() => ({ word: null }));

/** Opens the glossary, at one word where one is given; asked again without one, it closes. */
export const askWord = (word: WordId | 'all'): void =>
  askedWord.setState(({ word: now }) => ({ word: word === 'all' && now !== null ? null : word }));
