/** Lets one tab sound at a time. */
export interface TabClaim {
  /** Says that this tab sounds now; the others stop. */
  claim(): void;
}

const CHANNEL = 'contratiempo sound';

/** Joins the tabs of this site; `onTaken` is called when another tab begins to sound. Without the browser's channel it does nothing. */
export function joinTabs(onTaken: () => void): TabClaim {
  if (typeof BroadcastChannel === 'undefined') return { claim: () => {} };
  const channel = new BroadcastChannel(CHANNEL);
  channel.addEventListener('message', onTaken);
  return { claim: () => channel.postMessage('sounds') };
}
