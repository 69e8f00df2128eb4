import { SCREEN } from '../../words/screen';
import { useDesk, useRun } from '../app/desk-context';

/** Which hands of the piano sound: two switches, clearly on or off. */
export function HandSwitches() {
  const run = useRun();
  const left = useDesk((state) => !state.settings.balance['piano left'].muted);
  const right = useDesk((state) => !state.settings.balance['piano right'].muted);
  return (
    <fieldset className="control hand-switches">
      <legend className="visually-hidden">{SCREEN.handsSound}</legend>
      <button type="button" className="key" aria-pressed={left} onClick={() => run({ kind: 'mute', part: 'piano left', muted: left })}>
        {SCREEN.hand('left', left)}
      </button>
      <button type="button" className="key" aria-pressed={right} onClick={() => run({ kind: 'mute', part: 'piano right', muted: right })}>
        {SCREEN.hand('right', right)}
      </button>
    </fieldset>
  );
}
