import type { StoreApi } from 'zustand/vanilla';
import { atClock, goOn, startPlan } from '../../practice/practice-plan';
import type { JournalPorts, JournalState, Session, SessionItem } from './journal-state';
import { laidOut } from './session-items';

/** A practice session with rests. */
export interface Sessions {
  readonly setRests: (rests: boolean) => void;
  /** Lays a session out and begins it. */
  readonly startSession: (items: readonly SessionItem[]) => void;
  /** The next part begins: what was offered is taken, or passed over. */
  readonly goOnSession: () => void;
  /** Leaves out the rest that is offered: the part after it begins. */
  readonly passOver: () => void;
  readonly endSession: () => void;
}

const CLOCK_MS = 250;

/** The acts of a session; its clock runs only while it does. */
export function createSessions(
  { desk, now, every }: JournalPorts,
  store: StoreApi<JournalState>,
  open: (chart: string, bars: SessionItem) => void,
): Sessions {
  let endClock: (() => void) | null = null;
  let pass: number | null = null;
  const seconds = (): number => now() / 1000;

  const put = (session: Session | null): void => store.setState({ session });
  /** Opens what the part is about, unless it is on already. */
  const enter = ({ run, items }: Session, before: string | null): void => {
    const part = run.plan.parts[run.part];
    if (part?.kind !== 'play' || part.item === before) return;
    const item = items.find(({ id }) => id === part.item);
    if (!item) return;
    open(item.chart, item);
    if (item.level !== null) desk.run({ kind: 'set', settings: { level: item.level } });
  };
  const itemBefore = ({ run }: Session): string | null => {
    const played = run.plan.parts.slice(0, run.part + 1).findLast(({ kind }) => kind === 'play');
    return played?.kind === 'play' ? played.item : null;
  };
  const stop = (): void => {
    endClock?.();
    endClock = null;
    put(null);
  };
  const onClock = (): void => {
    const { session } = store.getState();
    if (!session) return;
    // The middle of a loop is where the same pass sounds as a moment ago; when the pass has changed, the loop's end is now.
    const heard = desk.heard()?.pass ?? null;
    const inside = heard !== null && heard === pass;
    pass = heard;
    const run = atClock(session.run, seconds(), inside);
    if (run !== session.run) put({ ...session, run });
  };

  const step = (parts: 1 | 2): void => {
    const { session } = store.getState();
    if (!session) return;
    const run = goOn(session.run, seconds());
    const next = { ...session, run: parts === 2 ? goOn(run, seconds()) : run };
    if (next.run.part >= next.run.plan.parts.length) {
      stop();
      return;
    }
    if (next.run.plan.parts[next.run.part]?.kind !== 'play') desk.run({ kind: 'stop' });
    put(next);
    enter(next, itemBefore(session));
  };

  return {
    setRests: (rests) => store.setState({ rests }),
    startSession: (items) => {
      const { plan, left } = laidOut(items, store.getState().rests);
      const session = { run: startPlan(plan, seconds()), items, left };
      put(session);
      enter(session, null);
      endClock?.();
      endClock = every(CLOCK_MS, onClock);
    },
    goOnSession: () => step(1),
    passOver: () => step(2),
    endSession: stop,
  };
}
