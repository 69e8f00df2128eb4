import type { PartName } from '../../performance/performance';
import type { WordId } from '../../words/glossary';
import { SETTINGS_SCREEN } from '../../words/settings-screen';
import { useDesk, useRun } from '../app/desk-context';
import { Word } from '../glossary/Word';

/** What the parts' names stand for in the glossary. */
const WORD_OF: Partial<Readonly<Record<PartName, WordId>>> = {
  bass: 'tumbao',
  clave: 'clave',
  pulse: 'pulse',
  percussion: 'cascara',
  'piano right': 'montuno',
};

/** One part: whether it sounds, and how loud. */
export function PartFader({ part }: { readonly part: PartName }) {
  const run = useRun();
  const { level, muted } = useDesk((state) => state.settings.balance[part]);
  const word = WORD_OF[part];
  const name = SETTINGS_SCREEN.parts[part];
  return (
    <div className="fader">
      <button
        type="button"
        className="key"
        aria-pressed={!muted}
        aria-label={`${name} ${muted ? SETTINGS_SCREEN.silent : SETTINGS_SCREEN.heard}`}
        onClick={() => run({ kind: 'mute', part, muted: !muted })}
      >
        {muted ? SETTINGS_SCREEN.silent : SETTINGS_SCREEN.heard}
      </button>
      <div className="fader-label">
        <span className="fader-name">{word ? <Word of={word}>{name}</Word> : name}</span>
        <input
          aria-label={name}
          type="range"
          min={0}
          max={100}
          value={Math.round(level * 100)}
          onChange={(event) => run({ kind: 'balance', part, level: Number(event.target.value) / 100 })}
        />
      </div>
    </div>
  );
}
