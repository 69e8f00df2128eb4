import { createWakeLock } from '../device/wake-lock';
import { ASSIGNMENT_MARK, LINK_MARK } from '../exchange/link/lesson';
import type { Desk } from '../state/desk';
import { openVisit } from '../ui/visit/open-visit';

/** What the page does once it stands and can be played: nothing here is waited for. */
export function afterFirstScreen(page: Document, desk: Desk): void {
  const wakeLock = createWakeLock(page, navigator.wakeLock);
  const follow = (): void => wakeLock.want(desk.playing.getState().transport.kind !== 'stopped');
  desk.playing.subscribe((now, before) => {
    if (now.transport.kind !== before.transport.kind) follow();
  });
  follow();
  openVisit(page, desk, { chart: LINK_MARK, assignment: ASSIGNMENT_MARK });
  // So that it opens at once; a fetch that fails is made again when it is opened.
  import('../ui/transport/MoreSheet').catch(() => undefined);
}
