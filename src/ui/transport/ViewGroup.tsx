import { SCREEN } from '../../words/screen';
import { SETTINGS_SCREEN } from '../../words/settings-screen';
import { useDesk, useRun } from '../app/desk-context';
import { Choice } from './Choice';

/** What a narrow screen's header has no room for: the view, the balance and the list of keys. */
export function ViewGroup(props: { readonly onBalance: () => void; readonly onKeys: () => void }) {
  const run = useRun();
  const view = useDesk((state) => state.settings.view);
  return (
    <section className="group more-view" aria-label={SETTINGS_SCREEN.viewName}>
      <h3>{SETTINGS_SCREEN.viewName}</h3>
      <Choice
        name={SETTINGS_SCREEN.viewName}
        value={view}
        options={(['grid', 'staff'] as const).map((value) => ({ value, label: SCREEN.view[value] }))}
        onChoose={(value) => run({ kind: 'set', settings: { view: value } })}
      />
      <div className="group-row">
        <button type="button" className="key" onClick={props.onBalance}>
          {SCREEN.balance}
        </button>
        <button type="button" className="key" onClick={props.onKeys}>
          {SCREEN.shortcutsName}
        </button>
      </div>
    </section>
  );
}
