import { LANGUAGE_NAMES, LANGUAGES } from '../../words/language';
import { SCREEN } from '../../words/screen';
import { spokenLanguage } from '../../words/speak';
import { askWord } from '../glossary/asked-word';
import { useDesk, useRun } from './desk-context';
import { PLACES, type Place } from './use-place';
import { useTheme } from './use-theme';

/** Name, places, and what changes the look of the page. */
export function Header(props: {
  readonly place: Place;
  readonly open: string | null;
  readonly panels: Readonly<Record<'balance' | 'keys' | 'view' | 'stand', () => void>>;
}) {
  const run = useRun();
  const { panels } = props;
  const otherLanguage = LANGUAGES.find((language) => language !== spokenLanguage());
  const otherTheme = useTheme() === 'night' ? 'paper' : 'night';
  const view = useDesk((state) => state.settings.view);
  return (
    <header className="header">
      <a className="skip" href="#music">
        {SCREEN.skip}
      </a>
      <div className="wordmark">{SCREEN.name}</div>
      <nav className="places" aria-label={SCREEN.placesName}>
        {PLACES.map((name) => (
          <a key={name} href={`#/${name}`} aria-current={name === props.place ? 'page' : undefined}>
            {SCREEN.places[name]}
          </a>
        ))}
      </nav>
      <div className="header-right">
        <button
          type="button"
          className="plain header-view"
          aria-pressed={view === 'staff'}
          onClick={() => run({ kind: 'set', settings: { view: view === 'grid' ? 'staff' : 'grid' } })}
        >
          {SCREEN.view.staff}
        </button>
        <button type="button" className="plain header-balance" aria-expanded={props.open === 'balance'} onClick={panels.balance}>
          {SCREEN.balance}
        </button>
        {props.place === 'practise' && (
          <button type="button" className="plain header-stand" onClick={panels.stand}>
            {SCREEN.fullScreen}
          </button>
        )}
        <button
          type="button"
          className="plain header-words"
          aria-haspopup="dialog"
          data-short={SCREEN.wordsShort}
          onClick={() => askWord('all')}
        >
          {SCREEN.words}
        </button>
        <button type="button" className="plain keys-button" onClick={panels.keys}>
          {SCREEN.shortcutsName}
        </button>
        <button type="button" className="plain header-theme" onClick={() => run({ kind: 'prefer', preferences: { theme: otherTheme } })}>
          {SCREEN.theme[otherTheme]}
        </button>
        <button type="button" className="plain header-looks" aria-expanded={props.open === 'view'} onClick={panels.view}>
          {SCREEN.looks} <span lang={otherLanguage}>{otherLanguage && LANGUAGE_NAMES[otherLanguage]}</span>
        </button>
      </div>
    </header>
  );
}
