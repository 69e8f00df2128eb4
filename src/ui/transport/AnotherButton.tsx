import { SCREEN } from '../../words/screen';
import { useRun } from '../app/desk-context';

/** Another figure for the same bars, with one touch. */
export function AnotherButton() {
  const run = useRun();
  return (
    <button type="button" className="key another" title={SCREEN.anotherHint} onClick={() => run({ kind: 'another one' })}>
      {SCREEN.another}
    </button>
  );
}
