import { useEffect } from 'react';
import type { Desk } from '../../state/desk';
import { hasOwnSpace, isTextField } from './own-keys';
import type { Panels } from './shortcut-keys';

/** Every key but Space; fetched once the page stands. */
const fetchKeys = () => import('./shortcut-keys');
type Act = Awaited<ReturnType<typeof fetchKeys>>['actOnKey'];

/**
 * Listens for the page's keys: Space plays or stops, single keys work while they are switched on, Page Up and Page Down always (pedals send them).
 * In text fields no key is taken. A button reached with Tab keeps its own Space; one that was clicked does not, so that Space still stops the music.
 */
export function useShortcuts(desk: Desk, panels: Panels): void {
  useEffect(() => {
    let byPointer = true;
    let act: Act = () => false;
    fetchKeys().then(
      (keys) => {
        act = keys.actOnKey;
      },
      // Without them the page is used by its buttons.
      () => undefined,
    );
    const onPointer = (): void => {
      byPointer = true;
    };
    const onKeyDown = (event: KeyboardEvent): void => {
      if (event.key === 'Tab' || event.key.startsWith('Arrow')) byPointer = false;
      if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || isTextField(event.target)) return;
      if (event.key === ' ') {
        if (!byPointer && hasOwnSpace(event.target)) return;
        event.preventDefault();
        if (!event.repeat) desk.run({ kind: 'play or stop' });
      } else if (act(event, desk, panels)) event.preventDefault();
    };
    // A clicked button would still be pressed when Space goes up.
    const onKeyUp = (event: KeyboardEvent): void => {
      if (event.key === ' ' && byPointer && !isTextField(event.target)) event.preventDefault();
    };
    window.addEventListener('pointerdown', onPointer, true);
    window.addEventListener('keydown', onKeyDown);
    window.addEventListener('keyup', onKeyUp);
    return () => {
      window.removeEventListener('pointerdown', onPointer, true);
      window.removeEventListener('keydown', onKeyDown);
      window.removeEventListener('keyup', onKeyUp);
    };
  }, [desk, panels]);
}
