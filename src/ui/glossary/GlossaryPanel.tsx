import { useEffect, useId, useMemo, useRef, useState } from 'react';
import { GLOSSARY_WORDS, type WordId } from '../../words/glossary';
import { spokenLanguage } from '../../words/speak';
import { WORD_LINKS } from '../../words/word-links';
import { usePanel } from '../app/use-panel';
import { searchWords } from './find-words';
import { LittleRhythm } from './LittleRhythm';
import './glossary.css';

/** The glossary: one word open on top, a field to find others, and all of them below. Escape closes it alone, and the focus goes back. */
export function GlossaryPanel(props: {
  readonly word: WordId | 'all';
  readonly onWord: (word: WordId) => void;
  readonly onClose: () => void;
}) {
  const { word, onWord, onClose } = props;
  const words = GLOSSARY_WORDS;
  const [typed, setTyped] = useState('');
  const panel = usePanel(onClose);
  const heading = useRef<HTMLHeadingElement>(null);
  const title = useId();
  const found = useMemo(() => searchWords(typed, spokenLanguage()), [typed]);
  useEffect(() => {
    if (word !== 'all') heading.current?.focus({ preventScroll: true });
    panel.current?.scrollTo?.(0, 0);
  }, [word, panel]);
  return (
    <section ref={panel} className="glossary" role="dialog" aria-labelledby={title} tabIndex={-1}>
      <div className="glossary-head">
        <h2 id={title}>{words.title}</h2>
        <button type="button" className="key" onClick={onClose}>
          {words.close}
        </button>
      </div>
      {word !== 'all' && (
        <article className="glossary-word">
          <h3 ref={heading} tabIndex={-1}>
            {words.words[word].name}
          </h3>
          <OpenWord word={word} onWord={onWord} />
        </article>
      )}
      <label className="glossary-find">
        <span>{words.find}</span>
        <input type="search" autoComplete="off" spellCheck={false} value={typed} onChange={(event) => setTyped(event.target.value)} />
      </label>
      <p className="visually-hidden" role="status">
        {typed.trim() === '' ? '' : words.found(found.length)}
      </p>
      {found.length === 0 && <p>{words.none(typed.trim())}</p>}
      <ul className="glossary-all" aria-label={words.all}>
        {found.map((id) => (
          <li key={id}>
            <button type="button" aria-current={id === word ? 'true' : undefined} onClick={() => onWord(id)}>
              {words.words[id].name}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

function OpenWord({ word, onWord }: { readonly word: WordId; readonly onWord: (word: WordId) => void }) {
  const { see, rhythm } = WORD_LINKS[word];
  return (
    <>
      {rhythm && <LittleRhythm bars={rhythm} />}
      <p>{GLOSSARY_WORDS.words[word].says}</p>
      <p className="glossary-see">
        <span>{GLOSSARY_WORDS.seeAlso}</span>
        {see.map((id) => (
          <button key={id} type="button" onClick={() => onWord(id)}>
            {GLOSSARY_WORDS.words[id].name}
          </button>
        ))}
      </p>
    </>
  );
}
