import { createOfflineCopy } from '../device/offline-copy';
import type { Desk } from '../state/desk';
import { createOfflineRoom, type OfflineRoom } from '../state/offline/offline-room';
import type { Storage } from '../state/ports';

/** Joins the copy of the page that works without a connection to the desk. Fetched once the page stands. */
export const openOffline = (desk: Desk, storage: Storage): Promise<OfflineRoom> =>
  createOfflineRoom({ copy: createOfflineCopy(navigator.serviceWorker, window), storage, flush: desk.flush });
