import { type KeyboardEvent, useState } from 'react';
import type { HabitsRoom } from '../../state/habits/habits';
import { PEDAL_ACTIONS, type PedalAction } from '../../state/habits/names';
import { HABITS_SCREEN } from '../../words/habits-screen';
import { useHabit } from './habits-context';

const NONE = { forward: null, back: null, 'play or stop': null } as const;

/** Teaches pedals: press Teach, then the pedal. */
export function PedalTable({ room }: { readonly room: HabitsRoom | null }) {
  const pedals = useHabit(room, (habits) => habits.pedals, NONE);
  const [waiting, setWaiting] = useState<PedalAction | null>(null);
  const [refused, setRefused] = useState<string | null>(null);
  const learn = (event: KeyboardEvent, action: PedalAction): void => {
    if (waiting !== action || event.nativeEvent.isComposing) return;
    event.preventDefault();
    event.stopPropagation();
    const taken = room?.mapPedal(action, event.key) ?? false;
    setRefused(taken ? null : event.key);
    setWaiting(null);
  };
  return (
    <section aria-labelledby="pedals-title">
      <h3 id="pedals-title">{HABITS_SCREEN.pedals}</h3>
      <p className="caption">{HABITS_SCREEN.pedalsHint}</p>
      <dl className="pedals">
        {PEDAL_ACTIONS.map((action) => {
          const key = pedals[action];
          return (
            <div key={action}>
              <dt>{HABITS_SCREEN.pedalActions[action]}</dt>
              <dd>
                <b>
                  {waiting === action ? HABITS_SCREEN.pedalWaiting : key === ' ' ? HABITS_SCREEN.space : (key ?? HABITS_SCREEN.pedalNone)}
                </b>
                <button
                  type="button"
                  className="plain"
                  aria-label={`${HABITS_SCREEN.pedalTeach}: ${HABITS_SCREEN.pedalActions[action]}`}
                  aria-pressed={waiting === action}
                  onClick={() => setWaiting(action)}
                  onBlur={() => setWaiting(null)}
                  onKeyDown={(event) => learn(event, action)}
                >
                  {HABITS_SCREEN.pedalTeach}
                </button>
                {key !== null && (
                  <button
                    type="button"
                    className="plain"
                    aria-label={`${HABITS_SCREEN.pedalForget}: ${HABITS_SCREEN.pedalActions[action]}`}
                    onClick={() => room?.mapPedal(action, null)}
                  >
                    {HABITS_SCREEN.pedalForget}
                  </button>
                )}
              </dd>
            </div>
          );
        })}
      </dl>
      {refused !== null && (
        <p className="wrong" role="alert">
          {HABITS_SCREEN.pedalTaken(refused)}
        </p>
      )}
    </section>
  );
}
