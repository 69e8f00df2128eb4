import { type PercussionName, percussionChoices } from '../../state/choices';
import { FIGURE_SCREEN } from '../../words/figure-screen';
import { MUSIC_TEXTS } from '../../words/music-texts';
import { OWN_FIGURE_SCREEN } from '../../words/own-figure-screen';
import { useDesk, useRun } from '../app/desk-context';
import { Choice } from './Choice';

/** Which percussion plays: by style and section, none, or patterns chosen one by one. */
export function PercussionChoice() {
  const run = useRun();
  const percussion = useDesk((state) => state.settings.percussion);
  const meter = useDesk((state) => state.music?.chart.meter ?? '4/4');
  const offered = percussionChoices(meter);
  const chosen: readonly PercussionName[] = typeof percussion === 'string' ? [] : percussion;
  const choose = (choice: 'by style' | 'none' | readonly PercussionName[]): void => run({ kind: 'set', settings: { percussion: choice } });
  return (
    <>
      <Choice
        name={FIGURE_SCREEN.percussion}
        loose
        value={typeof percussion === 'string' ? percussion : 'chosen'}
        options={[
          { value: 'by style', label: FIGURE_SCREEN.percussions['by style'] },
          { value: 'none', label: FIGURE_SCREEN.percussions.none },
          { value: 'chosen', label: OWN_FIGURE_SCREEN.percussion.chosen },
        ]}
        onChoose={(value) => choose(value === 'chosen' ? offered.slice(0, 1).map(({ id }) => id) : value)}
      />
      {typeof percussion !== 'string' && (
        <fieldset className="choice choice-loose">
          <legend>{OWN_FIGURE_SCREEN.percussion.name}</legend>
          <div className="choice-row">
            {offered.map(({ id, name, evidence }) => (
              <button
                key={id}
                type="button"
                className="key"
                title={MUSIC_TEXTS.evidence(evidence)}
                aria-pressed={chosen.includes(id)}
                onClick={() => choose(chosen.includes(id) ? chosen.filter((other) => other !== id) : [...chosen, id])}
              >
                {MUSIC_TEXTS.pattern(name)}
              </button>
            ))}
          </div>
        </fieldset>
      )}
    </>
  );
}
