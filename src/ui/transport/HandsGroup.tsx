import { COMPASSES, HANDS, STRETCHES } from '../../state/settings';
import { CHANGES } from '../../words/changes';
import { FIGURE_SCREEN } from '../../words/figure-screen';
import { SETTINGS_SCREEN } from '../../words/settings-screen';
import { useDesk, useRun } from '../app/desk-context';
import { Picker } from './Picker';

/** What the hands do, how far they stretch, and the instrument they play. */
export function HandsGroup() {
  const run = useRun();
  const { hands, stretch, compass } = useDesk((state) => state.settings);
  return (
    <section className="group" aria-label={FIGURE_SCREEN.hands}>
      <h3>{FIGURE_SCREEN.hands}</h3>
      <Picker
        name={SETTINGS_SCREEN.hands}
        value={hands}
        options={HANDS.map((value) => ({ value, label: CHANGES.hands[value] }))}
        onChoose={(value) => run({ kind: 'set', settings: { hands: value } })}
      />
      <Picker
        name={FIGURE_SCREEN.stretch}
        value={stretch}
        options={STRETCHES.map((value) => ({ value, label: FIGURE_SCREEN.stretches[value] }))}
        onChoose={(value) => run({ kind: 'set', settings: { stretch: value } })}
      />
      <Picker
        name={FIGURE_SCREEN.compass}
        value={compass}
        options={COMPASSES.map((value) => ({ value, label: FIGURE_SCREEN.keys(value) }))}
        onChoose={(value) => run({ kind: 'set', settings: { compass: value } })}
      />
    </section>
  );
}
