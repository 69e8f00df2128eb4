import { SCREEN } from '../../words/screen';
import { SETTINGS_SCREEN } from '../../words/settings-screen';
import { useDesk, useDeskItself } from '../app/desk-context';
import { Word } from '../glossary/Word';
import { Stepper } from './Stepper';

/** The whole of the loop: its ends by cycles, one bar before and after, off; and what the form does without a loop. */
export function LoopGroup() {
  const { run, playing } = useDeskItself();
  const loop = useDesk((state) => state.settings.loop);
  return (
    <section className="group" aria-label={SCREEN.loop}>
      <h3>
        <Word of="loop">{SCREEN.loop}</Word>
      </h3>
      <p className="group-now">{SCREEN.loopRun(loop)}</p>
      {loop ? (
        <>
          <div className="group-row">
            <Stepper
              down={`${SETTINGS_SCREEN.loopStart} ${SETTINGS_SCREEN.earlier}`}
              up={`${SETTINGS_SCREEN.loopStart} ${SETTINGS_SCREEN.later}`}
              onStep={(by) => run({ kind: 'move loop end', end: 'from', by: by === 1 ? -1 : 1 })}
            >
              <span className="figure">{SCREEN.barNumber(loop.fromBar)}</span>
              <span className="caption">{SETTINGS_SCREEN.loopStart}</span>
            </Stepper>
            <Stepper
              down={`${SETTINGS_SCREEN.loopEnd} ${SETTINGS_SCREEN.earlier}`}
              up={`${SETTINGS_SCREEN.loopEnd} ${SETTINGS_SCREEN.later}`}
              onStep={(by) => run({ kind: 'move loop end', end: 'to', by })}
            >
              <span className="figure">{SCREEN.barNumber(loop.toBar - 1)}</span>
              <span className="caption">{SETTINGS_SCREEN.loopEnd}</span>
            </Stepper>
          </div>
          <div className="group-row">
            <button type="button" className="key" onClick={() => run({ kind: 'one bar before' })}>
              {SCREEN.barBefore}
            </button>
            <button type="button" className="key" onClick={() => run({ kind: 'one bar after' })}>
              {SCREEN.barAfter}
            </button>
            <button type="button" className="key" onClick={() => run({ kind: 'loop off' })}>
              {SCREEN.loopOff}
            </button>
          </div>
        </>
      ) : (
        <button type="button" className="key" onClick={() => run({ kind: 'loop cycle', bar: playing.getState().bar })}>
          {SETTINGS_SCREEN.loopHere}
        </button>
      )}
    </section>
  );
}
