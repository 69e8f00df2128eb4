import { useEffect, useRef } from 'react';
import { SCREEN } from '../../words/screen';
import { SETTINGS_SCREEN } from '../../words/settings-screen';
import { useDesk, useRun } from './desk-context';
import { useHabitsRoom } from './habits-context';
import { PedalTable } from './PedalTable';
import { focusAgain } from './use-panel';

/** The list behind `?`: every key and what it does, and the switch that turns single keys off. */
export function KeyList(props: { readonly onClose: () => void }) {
  const run = useRun();
  const on = useDesk((state) => state.preferences.shortcuts);
  const room = useHabitsRoom();
  const heading = useRef<HTMLHeadingElement>(null);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const before = document.activeElement;
    if (dialog.current?.open === false) dialog.current.showModal();
    // From its top, not from the first control far below.
    heading.current?.focus();
    return () => focusAgain(before);
  }, []);
  return (
    <dialog ref={dialog} className="key-list" aria-labelledby="key-list-title" onClose={props.onClose} onCancel={props.onClose}>
      <h2 id="key-list-title" tabIndex={-1} ref={heading}>
        {SCREEN.shortcutsName}
      </h2>
      <dl className="key-columns">
        {SETTINGS_SCREEN.shortcuts.map(({ keys, does }) => (
          <div key={keys}>
            <dt>{keys}</dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
      <label className="check">
        <input
          type="checkbox"
          checked={on}
          onChange={(event) => run({ kind: 'prefer', preferences: { shortcuts: event.target.checked } })}
        />
        {SETTINGS_SCREEN.shortcutsOn}
      </label>
      <PedalTable room={room} />
      <button type="button" className="key" onClick={props.onClose}>
        {SETTINGS_SCREEN.close}
      </button>
    </dialog>
  );
}
