import { SCREEN } from '../../words/screen';
import { SETTINGS_SCREEN } from '../../words/settings-screen';
import { useDesk, useRun } from '../app/desk-context';
import { Stepper } from './Stepper';

/** The tempo to get to, a step lower or higher. */
export function GoalStepper() {
  const run = useRun();
  const goal = useDesk((state) => state.settings.goalTempo);
  const unit = useDesk((state) => state.preferences.tempoUnit);
  return (
    <Stepper down={SETTINGS_SCREEN.lowerGoal} up={SETTINGS_SCREEN.higherGoal} onStep={(by) => run({ kind: 'step tempo', by, goal: true })}>
      <span className="figure">{SCREEN.tempo(goal, unit)}</span>
      <span className="caption">{SCREEN.goal}</span>
    </Stepper>
  );
}
