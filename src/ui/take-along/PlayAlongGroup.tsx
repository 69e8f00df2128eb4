import { useStore } from 'zustand';
import { FORMS, PLAY_ALONG_KINDS, WAV_RATES, WHICH_TEMPO } from '../../state/take-along/choices';
import { TAKE_ALONG_WORDS } from '../../words/take-along';
import { useDesk } from '../app/desk-context';
import { Choice } from '../transport/Choice';
import type { FileParts } from './file-parts';
import { SaveButton } from './SaveButton';

/** The play-along as one WAV file: who plays, how it goes, at which tempo. */
export function PlayAlongGroup({ takeAlong, busy, onSave }: FileParts) {
  const choices = useStore(takeAlong.store, (state) => state.choices);
  const now = useDesk((state) => state.settings.tempo);
  const goal = useDesk((state) => state.settings.goalTempo);
  return (
    <section className="take-along-group" aria-label={TAKE_ALONG_WORDS.kinds.wav}>
      <div className="take-along-row">
        <span>
          <b>{TAKE_ALONG_WORDS.kinds.wav}</b>
          <span className="take-along-hint">{TAKE_ALONG_WORDS.hints.wav}</span>
        </span>
        <SaveButton kind="wav" busy={busy} onSave={onSave} />
      </div>
      <Choice
        name={TAKE_ALONG_WORDS.parts}
        options={PLAY_ALONG_KINDS.map((value) => ({ value, label: TAKE_ALONG_WORDS.playAlongs[value] }))}
        value={choices.parts}
        onChoose={(parts) => takeAlong.choose({ parts })}
      />
      <Choice
        name={TAKE_ALONG_WORDS.form}
        options={FORMS.map((value) => ({ value, label: TAKE_ALONG_WORDS.forms[value] }))}
        value={choices.form}
        onChoose={(form) => takeAlong.choose({ form })}
      />
      <div className="take-along-two">
        <Choice
          name={TAKE_ALONG_WORDS.tempo}
          options={WHICH_TEMPO.map((value) => ({ value, label: TAKE_ALONG_WORDS.tempoOf(value, value === 'now' ? now : goal) }))}
          value={choices.tempo}
          onChoose={(tempo) => takeAlong.choose({ tempo })}
        />
        <Choice
          name={TAKE_ALONG_WORDS.rate}
          options={WAV_RATES.map((value) => ({ value, label: TAKE_ALONG_WORDS.rateOf(value) }))}
          value={choices.rate}
          onChoose={(rate) => takeAlong.choose({ rate })}
        />
      </div>
    </section>
  );
}
