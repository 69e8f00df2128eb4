import { useMemo } from 'react';
import { soloSpans } from '../../layout/figure/solo-steps';
import { BANNERS } from '../../words/banners';
import { FIGURE_SCREEN } from '../../words/figure-screen';
import { useDesk, useRun } from '../app/desk-context';
import { Worded } from '../glossary/Worded';
import { Choice } from './Choice';

/** Exercises: the figure crossed on purpose, and the solo in three steps. */
export function ExerciseGroup() {
  const run = useRun();
  const { crossed, solo } = useDesk((state) => state.settings);
  return (
    <section className="group" aria-label={FIGURE_SCREEN.exercise}>
      <h3>{FIGURE_SCREEN.exercise}</h3>
      <button
        type="button"
        className="key"
        aria-pressed={crossed}
        title={FIGURE_SCREEN.crossedHint}
        onClick={() => run({ kind: 'set', settings: { crossed: !crossed } })}
      >
        {FIGURE_SCREEN.crossed}
      </button>
      {crossed && (
        <p className="caption">
          <Worded text={FIGURE_SCREEN.crossedHint} />
        </p>
      )}
      <Choice
        name={FIGURE_SCREEN.solo}
        word="scaffold"
        value={solo ?? 'none'}
        options={(['none', 'example', 'scaffold'] as const).map((value) => ({ value, label: FIGURE_SCREEN.solos[value] }))}
        onChoose={(value) => run({ kind: 'set', settings: { solo: value === 'none' ? null : value } })}
      />
      {solo === 'example' && <SoloSteps />}
    </section>
  );
}

/** The three steps of the solo with the bars that they last; a touch loops one. */
function SoloSteps() {
  const run = useRun();
  const bars = useDesk((state) => state.music?.whole.form.bars);
  const loop = useDesk((state) => state.settings.loop);
  const spans = useMemo(() => (bars ? soloSpans(bars) : []), [bars]);
  return (
    <>
      <p className="caption">{BANNERS.soloHint}</p>
      <ol className="solo-steps">
        {spans.map(({ step, fromBar, toBar }) => {
          const looped = loop?.fromBar === fromBar && loop.toBar === toBar;
          return (
            <li key={step}>
              <button
                type="button"
                className="key"
                aria-pressed={looped}
                onClick={() => run(looped ? { kind: 'loop off' } : { kind: 'loop bars', loop: { fromBar, toBar } })}
              >
                <b>{step}</b> {BANNERS.steps[step]} <span className="solo-bars">{BANNERS.soloBars(fromBar, toBar)}</span>
              </button>
            </li>
          );
        })}
      </ol>
    </>
  );
}
