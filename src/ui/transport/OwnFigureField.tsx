import { type FormEvent, useId, useState } from 'react';
import { ownFigureOf } from '../../state/choices';
import { OWN_FIGURE_SCREEN } from '../../words/own-figure-screen';
import { useDesk, useRun } from '../app/desk-context';

/** A rhythm of the player's own, typed as two bars in the direction that sounds. What cannot be read stays in the field, with what was expected. */
export function OwnFigureField() {
  const run = useRun();
  const own = useDesk((state) => state.settings.ownFigure);
  const direction = useDesk((state) => state.settings.direction);
  const [typed, setTyped] = useState<string | null>(null);
  const [expected, setExpected] = useState<string | null>(null);
  const id = useId();
  const take = (event: FormEvent): void => {
    event.preventDefault();
    const read = ownFigureOf(typed ?? '', own && typed === own.text ? own.direction : direction);
    setExpected(read.ok ? null : read.faults.join(' '));
    if (!read.ok) return;
    run({ kind: 'set', settings: { ownFigure: read.value } });
    setTyped(null);
  };
  return (
    <form className="own-figure" onSubmit={take}>
      <label htmlFor={id}>{OWN_FIGURE_SCREEN.name(own?.direction ?? direction)}</label>
      <div className="group-row">
        <input
          id={id}
          value={typed ?? own?.text ?? ''}
          placeholder="x.xx.x.x .x.xx.x."
          size={17}
          spellCheck={false}
          autoCapitalize="off"
          autoComplete="off"
          aria-invalid={expected !== null}
          aria-describedby={expected === null ? undefined : `${id}-wrong`}
          onChange={(event) => setTyped(event.target.value)}
        />
        <button type="submit" className="key" disabled={typed === null || typed.trim() === ''}>
          {OWN_FIGURE_SCREEN.play}
        </button>
        {own && (
          <button
            type="button"
            className="key"
            onClick={() => {
              setTyped(own.text);
              run({ kind: 'set', settings: { ownFigure: null } });
            }}
          >
            {OWN_FIGURE_SCREEN.off}
          </button>
        )}
      </div>
      {expected !== null && (
        <p className="wrong" id={`${id}-wrong`} role="alert">
          {OWN_FIGURE_SCREEN.expected(expected)}
        </p>
      )}
    </form>
  );
}
