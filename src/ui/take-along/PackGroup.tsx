import { useMemo } from 'react';
import { useStore } from 'zustand';
import { PACK_FILE_KINDS, PACK_STEPS, PLAY_ALONG_KINDS, toggled, WHICH_TEMPO } from '../../state/take-along/choices';
import { TAKE_ALONG_WORDS } from '../../words/take-along';
import { useDesk } from '../app/desk-context';
import type { FileParts } from './file-parts';
import { SaveButton } from './SaveButton';
import { Ticks } from './Ticks';

/** The pack: which keys, tempi and files go into the one zip, and how large it will be. */
export function PackGroup({ takeAlong, busy, onSave }: FileParts) {
  const choices = useStore(takeAlong.store, (state) => state.choices);
  const { keys, tempi, kinds, playAlongs } = choices;
  const music = useDesk((state) => state.music);
  const now = useDesk((state) => state.settings.tempo);
  const goal = useDesk((state) => state.settings.goalTempo);
  // biome-ignore lint/correctness/useExhaustiveDependencies: take-along reads the desk itself; the music stands for all of it
  const offered = useMemo(() => takeAlong.keys(), [takeAlong, music]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: as above, with the choices
  const estimate = useMemo(() => takeAlong.estimate(), [takeAlong, music, choices, now, goal]);
  return (
    <section className="take-along-group" aria-label={TAKE_ALONG_WORDS.kinds.pack}>
      <div className="take-along-row">
        <span>
          <b>{TAKE_ALONG_WORDS.kinds.pack}</b>
          <span className="take-along-hint">{TAKE_ALONG_WORDS.hints.pack}</span>
        </span>
        <SaveButton kind="pack" busy={busy} nothing={estimate === null} onSave={onSave} />
      </div>
      <Ticks
        name={TAKE_ALONG_WORDS.keys}
        options={offered.map(({ semitones, key }) => ({ value: semitones, label: TAKE_ALONG_WORDS.key(key) }))}
        taken={keys}
        onToggle={(semitones) => takeAlong.choose({ keys: toggled<number>(PACK_STEPS, keys, semitones) })}
      >
        <button
          type="button"
          className="key"
          onClick={() => takeAlong.choose({ keys: keys.length === PACK_STEPS.length ? [0] : PACK_STEPS })}
        >
          {keys.length === PACK_STEPS.length ? TAKE_ALONG_WORDS.thisKey : TAKE_ALONG_WORDS.allKeys}
        </button>
      </Ticks>
      <Ticks
        name={TAKE_ALONG_WORDS.tempo}
        options={WHICH_TEMPO.map((value) => ({ value, label: TAKE_ALONG_WORDS.tempoOf(value, value === 'now' ? now : goal) }))}
        taken={tempi}
        onToggle={(one) => takeAlong.choose({ tempi: toggled(WHICH_TEMPO, tempi, one) })}
      />
      <Ticks
        name={TAKE_ALONG_WORDS.holds}
        options={PACK_FILE_KINDS.map((value) => ({ value, label: TAKE_ALONG_WORDS.kinds[value] }))}
        taken={kinds}
        onToggle={(kind) => takeAlong.choose({ kinds: toggled(PACK_FILE_KINDS, kinds, kind) })}
      />
      {kinds.includes('wav') && (
        <Ticks
          name={TAKE_ALONG_WORDS.parts}
          options={PLAY_ALONG_KINDS.map((value) => ({ value, label: TAKE_ALONG_WORDS.playAlongs[value] }))}
          taken={playAlongs}
          onToggle={(one) => takeAlong.choose({ playAlongs: toggled(PLAY_ALONG_KINDS, playAlongs, one) })}
        />
      )}
      <p className="take-along-hint">
        {estimate === null ? TAKE_ALONG_WORDS.nothingChosen : TAKE_ALONG_WORDS.estimate(estimate.files, estimate.bytes)}
      </p>
    </section>
  );
}
