import type { ReactNode } from 'react';
import type { WordId } from '../../words/glossary';
import { askWord } from './asked-word';

/** A trade word that opens the glossary at its place; it looks like its text, dotted underneath. */
export function Word({ of, children }: { readonly of: WordId; readonly children: ReactNode }) {
  return (
    <button type="button" className="word" aria-haspopup="dialog" onClick={() => askWord(of)}>
      {children}
    </button>
  );
}
