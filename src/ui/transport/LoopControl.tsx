import { SCREEN } from '../../words/screen';
import { useDesk, useDeskItself } from '../app/desk-context';

/** The loop in the bar: on or off, and one more bar before or after it. */
export function LoopControl() {
  const { run, playing } = useDeskItself();
  const loop = useDesk((state) => state.settings.loop);
  return (
    <fieldset className="control loop-control">
      <legend className="visually-hidden">{SCREEN.loop}</legend>
      {loop && (
        <button type="button" className="key key-words" onClick={() => run({ kind: 'one bar before' })}>
          {SCREEN.barBefore}
        </button>
      )}
      <button
        type="button"
        className="key key-loop"
        aria-pressed={loop !== null}
        onClick={() => run(loop ? { kind: 'loop off' } : { kind: 'loop cycle', bar: playing.getState().bar })}
      >
        {loop ? SCREEN.loopRun(loop) : SCREEN.loopOff}
      </button>
      {loop && (
        <button type="button" className="key key-words" onClick={() => run({ kind: 'one bar after' })}>
          {SCREEN.barAfter}
        </button>
      )}
    </fieldset>
  );
}
