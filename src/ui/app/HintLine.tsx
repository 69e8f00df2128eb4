import { useEffect, useRef, useState } from 'react';
import type { HabitsRoom } from '../../state/habits/habits';
import { HINTS } from '../../state/habits/names';
import { HABITS_SCREEN } from '../../words/habits-screen';
import { useDesk, usePlaying } from './desk-context';
import { useHabit } from './habits-context';
import { useMediaQuery } from './use-media-query';

/** How long a player may look before the first hint comes by itself. */
const PAUSE_MS = 8000;

/**
 * One quiet line of the first minutes: at most one at a time, never while the music runs, gone for good once it was done or waved away.
 * The second waits until something was played, the third until a note was touched. Keys are named only where there may be some.
 */
export function HintLine({ room }: { readonly room: HabitsRoom }) {
  const stopped = usePlaying((state) => state.transport.kind === 'stopped');
  const direction = useDesk((state) => state.settings.direction);
  const chart = useDesk((state) => state.chartId);
  const cautionSeen = useDesk((state) => state.preferences.cautionSeen);
  const seen = useHabit(room, (habits) => habits.seen, HINTS);
  useEffect(() => {
    if (!stopped) room.markSeen('press play');
  }, [stopped, room]);
  useEffect(() => {
    const touched = (event: Event): void => {
      if (event.target instanceof Element && event.target.closest('[role="gridcell"]')) room.markSeen('touch a note');
    };
    document.addEventListener('click', touched);
    return () => document.removeEventListener('click', touched);
  }, [room]);
  // Another direction in the same chart was asked for by the player; another chart brings its own.
  const last = useRef({ chart, direction });
  useEffect(() => {
    if (last.current.chart === chart && last.current.direction !== direction) room.markSeen('exchange the sides');
    last.current = { chart, direction };
  }, [chart, direction, room]);
  // Nothing moves under a player who has only just come: the first waits for a touch somewhere else, or for a pause.
  const [awake, setAwake] = useState(false);
  useEffect(() => {
    const wake = (): void => setAwake(true);
    const timer = setTimeout(wake, PAUSE_MS);
    const events = ['click', 'keyup'] as const;
    for (const event of events) window.addEventListener(event, wake);
    return () => {
      clearTimeout(timer);
      for (const event of events) window.removeEventListener(event, wake);
    };
  }, []);
  const keyboard = useMediaQuery('(any-hover: hover)');
  const hint = HINTS.find((each) => !seen.includes(each));
  // The line about hands and arms comes first.
  if (!awake || !stopped || hint === undefined || (hint !== 'press play' && !cautionSeen)) return null;
  return (
    <aside className="hint" aria-label={HABITS_SCREEN.hintName}>
      <p>{hint === 'press play' && !keyboard ? HABITS_SCREEN.pressPlayByTouch : HABITS_SCREEN.hints[hint]}</p>
      <button type="button" className="plain" onClick={() => room.markSeen(hint)}>
        {HABITS_SCREEN.hintSeen}
      </button>
    </aside>
  );
}
