import type { Library } from '../../state/library/library';
import { LIBRARY_WORDS } from '../../words/library';
import { useLibraryState } from './use-library';

/** Saved records that could not be read: each can be handed out untouched. */
export function Asides({ library }: { readonly library: Library }) {
  const asides = useLibraryState(library, (state) => state.asides);
  if (asides.length === 0) return null;
  return (
    <section className="asides" aria-labelledby="asides">
      <h2 id="asides">{LIBRARY_WORDS.asides}</h2>
      <p className="caption">{LIBRARY_WORDS.asidesHint}</p>
      <ul>
        {asides.map(({ key, length }) => (
          <li key={key}>
            {LIBRARY_WORDS.aside(key, length)}
            <button type="button" className="plain" onClick={() => void library.saveAside(key)}>
              {LIBRARY_WORDS.saveAside}
            </button>
            <button type="button" className="plain" onClick={() => void library.dropAside(key)}>
              {LIBRARY_WORDS.dropAside}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
