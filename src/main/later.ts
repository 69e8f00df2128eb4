import { createWakeLock } from '../device/wake-lock';
import type { Desk } from '../state/desk';

/** What the page does once it stands and can be played: nothing here is waited for. */
export function afterFirstScreen(page: Document, desk: Desk): void {
  const wakeLock = createWakeLock(page, navigator.wakeLock);
  const follow = (): void => wakeLock.want(desk.playing.getState().transport.kind !== 'stopped');
  desk.playing.subscribe((now, before) => {
    if (now.transport.kind !== before.transport.kind) follow();
  });
  follow();
}
