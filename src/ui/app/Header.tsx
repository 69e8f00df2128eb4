import { SCREEN } from '../../words/screen';
import { useDesk, useRun } from './desk-context';
import { PLACES, type Place } from './use-place';
import { useTheme } from './use-theme';

/** Name, places, and what changes the look of the page. */
export function Header(props: {
  readonly place: Place;
  readonly balanceOpen: boolean;
  readonly onBalance: () => void;
  readonly onKeys: () => void;
  readonly onStand: () => void;
}) {
  const run = useRun();
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
        <button type="button" className="plain header-balance" aria-expanded={props.balanceOpen} onClick={props.onBalance}>
          {SCREEN.balance}
        </button>
        {props.place === 'practise' && (
          <button type="button" className="plain" onClick={props.onStand}>
            {SCREEN.fullScreen}
          </button>
        )}
        <button type="button" className="plain keys-button" onClick={props.onKeys}>
          {SCREEN.shortcutsName}
        </button>
        <button type="button" className="plain" onClick={() => run({ kind: 'prefer', preferences: { theme: otherTheme } })}>
          {SCREEN.theme[otherTheme]}
        </button>
      </div>
    </header>
  );
}
