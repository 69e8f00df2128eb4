import type { PartName } from '../../performance/performance';
import { SETTINGS_SCREEN } from '../../words/settings-screen';
import { useDesk, useRun } from '../app/desk-context';

/** One part: whether it sounds, and how loud. */
export function PartFader({ part }: { readonly part: PartName }) {
  const run = useRun();
  const { level, muted } = useDesk((state) => state.settings.balance[part]);
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
      <label className="fader-label">
        <span className="fader-name">{name}</span>
        <input
          type="range"
          min={0}
          max={100}
          value={Math.round(level * 100)}
          onChange={(event) => run({ kind: 'balance', part, level: Number(event.target.value) / 100 })}
        />
      </label>
    </div>
  );
}
