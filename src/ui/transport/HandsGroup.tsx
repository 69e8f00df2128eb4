import { COMPASSES, HANDS, STRETCHES } from '../../state/settings';
import { compassWords, FIGURE_SCREEN, STRETCH_WORDS } from '../../words/figure-screen';
import { HANDS_WORDS } from '../../words/screen';
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
        options={HANDS.map((value) => ({ value, label: HANDS_WORDS[value] }))}
        onChoose={(value) => run({ kind: 'set', settings: { hands: value } })}
      />
      <Picker
        name={FIGURE_SCREEN.stretch}
        value={stretch}
        options={STRETCHES.map((value) => ({ value, label: STRETCH_WORDS[value] }))}
        onChoose={(value) => run({ kind: 'set', settings: { stretch: value } })}
      />
      <Picker
        name={FIGURE_SCREEN.compass}
        value={compass}
        options={COMPASSES.map((value) => ({ value, label: compassWords(value) }))}
        onChoose={(value) => run({ kind: 'set', settings: { compass: value } })}
      />
    </section>
  );
}
