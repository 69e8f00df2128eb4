import { Fragment } from 'react';
import { wordsIn } from './find-words';
import { Word } from './Word';

/** Text in which every trade word, where it first stands, opens the glossary. */
export function Worded({ text }: { readonly text: string }) {
  return wordsIn(text).map(({ at, text: piece, word }) => (
    <Fragment key={at}>{word === null ? piece : <Word of={word}>{piece}</Word>}</Fragment>
  ));
}
