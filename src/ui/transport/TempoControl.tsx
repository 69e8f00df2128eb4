import { TEMPO_RANGE } from '../../vocabulary';
import { SCREEN } from '../../words/screen';
import { useDesk, useRun } from '../app/desk-context';
import { Stepper } from './Stepper';

/** The tempo in the player's own unit, with the goal under it; a touch on it opens both in full. */
export function TempoControl(props: { readonly open: boolean; readonly sheetId: string; readonly onOpen: () => void }) {
  const run = useRun();
  const tempo = useDesk((state) => state.settings.tempo);
  const goal = useDesk((state) => state.settings.goalTempo);
  const unit = useDesk((state) => state.preferences.tempoUnit);
  return (
    <fieldset className="control tempo-control">
      <legend className="visually-hidden">{SCREEN.tempoName}</legend>
      <Stepper
        down={SCREEN.slower}
        up={SCREEN.faster}
        atLowest={tempo <= TEMPO_RANGE.from}
        atHighest={tempo >= TEMPO_RANGE.to}
        onStep={(by) => run({ kind: 'step tempo', by })}
      >
        <button
          type="button"
          className="tempo-open"
          aria-expanded={props.open}
          aria-controls={props.open ? props.sheetId : undefined}
          onClick={props.onOpen}
        >
          <output className="figure">{SCREEN.tempo(tempo, unit)}</output>{' '}
          <span className="caption">
            {SCREEN.tempoUnit(unit)} · {SCREEN.goal} {SCREEN.tempo(goal, unit)}
          </span>
          <span className="caption tempo-goal" aria-hidden="true">
            {SCREEN.goal} {SCREEN.tempo(goal, unit)}
          </span>
        </button>
      </Stepper>
    </fieldset>
  );
}
