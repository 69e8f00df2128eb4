import { TEMPO_RANGE } from '../../vocabulary';
import { SCREEN } from '../../words/screen';
import { useDesk, useRun } from '../app/desk-context';
import { Stepper } from './Stepper';

/** The tempo in the player's own unit, with the goal under it. */
export function TempoControl() {
  const run = useRun();
  const tempo = useDesk((state) => state.settings.tempo);
  const goal = useDesk((state) => state.settings.goalTempo);
  const unit = useDesk((state) => state.preferences.tempoUnit);
  return (
    <fieldset className="control">
      <legend className="visually-hidden">{SCREEN.tempoName}</legend>
      <Stepper
        down={SCREEN.slower}
        up={SCREEN.faster}
        atLowest={tempo <= TEMPO_RANGE.from}
        atHighest={tempo >= TEMPO_RANGE.to}
        onStep={(by) => run({ kind: 'step tempo', by })}
      >
        <output className="figure">{SCREEN.tempo(tempo, unit)}</output>
        <span className="caption">
          {SCREEN.tempoUnit(unit)} · {SCREEN.goal} {SCREEN.tempo(goal, unit)}
        </span>
      </Stepper>
    </fieldset>
  );
}
