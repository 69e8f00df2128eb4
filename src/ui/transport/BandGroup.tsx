import { STYLE_CHOICES } from '../../state/choices';
import { FEELS } from '../../state/settings';
import { halfNotesPerMinute } from '../../vocabulary';
import { FIGURE_SCREEN } from '../../words/figure-screen';
import { MUSIC_TEXTS } from '../../words/music-texts';
import { OWN_FIGURE_SCREEN } from '../../words/own-figure-screen';
import { SCREEN } from '../../words/screen';
import { useDesk, useRun } from '../app/desk-context';
import { PlainMixes } from '../balance/PlainMixes';
import { Choice } from './Choice';
import { PercussionChoice } from './PercussionChoice';
import { Picker } from './Picker';

const CHARTED = '';

/** The band: who sounds and how loud, style, percussion, feel. */
export function BandGroup(props: { readonly onBalance: () => void }) {
  const run = useRun();
  const { style, feel } = useDesk((state) => state.settings);
  const unit = useDesk((state) => state.preferences.tempoUnit);
  const charted = useDesk((state) => state.music?.chart.style ?? '');
  const facts = STYLE_CHOICES.find(({ name }) => name === (style ?? charted));
  return (
    <section className="group" aria-label={FIGURE_SCREEN.band}>
      <h3>{FIGURE_SCREEN.band}</h3>
      <PlainMixes />
      <button type="button" className="key" onClick={props.onBalance}>
        {SCREEN.balance}
      </button>
      <Picker
        name={FIGURE_SCREEN.style}
        word="style"
        value={style ?? CHARTED}
        options={[
          { value: CHARTED, label: `${FIGURE_SCREEN.charted}: ${MUSIC_TEXTS.style(charted)}` },
          ...STYLE_CHOICES.map(({ name }) => ({ value: name, label: MUSIC_TEXTS.style(name) })),
        ]}
        onChoose={(value) => run({ kind: 'set', settings: { style: value === CHARTED ? null : value } })}
      />
      {facts && <p className="caption">{FIGURE_SCREEN.styleFacts({ ...facts, evidence: MUSIC_TEXTS.evidence(facts.evidence) })}</p>}
      {facts && style !== null && (
        <button
          type="button"
          className="key"
          onClick={() => run({ kind: 'set', settings: { goalTempo: halfNotesPerMinute(facts.usual) } })}
        >
          {OWN_FIGURE_SCREEN.usualTempo(SCREEN.tempo(facts.usual, unit), unit)}
        </button>
      )}
      <PercussionChoice />
      <Choice
        name={FIGURE_SCREEN.feel}
        word="feel"
        value={feel}
        options={FEELS.map((value) => ({ value, label: FIGURE_SCREEN.feels[value] }))}
        onChoose={(value) => run({ kind: 'set', settings: { feel: value } })}
      />
      {feel === 'measured' && <p className="caption">{FIGURE_SCREEN.feelHint}</p>}
    </section>
  );
}
