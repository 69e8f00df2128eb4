import type { Journal } from './journal/journal';
import type { Library } from './library/library';
import type { LinkRoom } from './link/link-room';
import type { OfflineRoom } from './offline/offline-room';
import type { Safety } from './safety/safety';
import type { TakeAlong } from './take-along/take-along';

/** Parts of the state that the first screen does without: each is fetched and made once, when it is first asked for. */
export interface Rooms {
  readonly library: () => Promise<Library>;
  readonly takeAlong: () => Promise<TakeAlong>;
  readonly safety: () => Promise<Safety>;
  readonly link: () => Promise<LinkRoom>;
  readonly journal: () => Promise<Journal>;
  readonly offline: () => Promise<OfflineRoom>;
}
