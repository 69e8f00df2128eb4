import { useStore } from 'zustand';
import type { FileKind } from '../../state/take-along/choices';
import { TAKE_ALONG_WORDS } from '../../words/take-along';
import { Choice } from '../transport/Choice';
import type { FileParts } from './file-parts';
import { SaveButton } from './SaveButton';

const FEELS = ['straight', 'measured'] as const;
const KINDS: readonly FileKind[] = ['sheet', 'midi', 'musicxml', 'mxl'];

/** The files of notes: sheet, MIDI, MusicXML, each with one button; the timing of the MIDI file. */
export function ScoreFiles({ takeAlong, busy, onSave }: FileParts) {
  const feel = useStore(takeAlong.store, (state) => state.choices.feel);
  return (
    <ul className="take-along-files">
      {KINDS.map((kind) => (
        <li key={kind}>
          <div className="take-along-row">
            <span>
              <b>{TAKE_ALONG_WORDS.kinds[kind]}</b>
              <span className="take-along-hint">{TAKE_ALONG_WORDS.hints[kind]}</span>
            </span>
            <SaveButton kind={kind} busy={busy} onSave={onSave} />
          </div>
          {kind === 'midi' && (
            <Choice
              name={TAKE_ALONG_WORDS.feel}
              options={FEELS.map((value) => ({ value, label: TAKE_ALONG_WORDS.feels[value] }))}
              value={feel}
              onChoose={(chosen) => takeAlong.choose({ feel: chosen })}
            />
          )}
        </li>
      ))}
    </ul>
  );
}
