import type { Timer } from './ports';

/** How long the device may take to answer before the page goes on without it. */
export const PATIENCE_MS = 2000;
/** The same while it owes an answer already. */
const SHORT_PATIENCE_MS = 100;

/** Waits for the device, but not for ever, and knows whether it owes an answer. */
export interface Patience {
  /** Resolves to true once `answer` is there (or refused), to false when it is not there in time; it is then waited for no more, but still counted. */
  readonly inTime: (answer: Promise<unknown>) => Promise<boolean>;
  /** True while an answer that did not come in time is still to come. */
  readonly isOwed: () => boolean;
}

/** A patience by `timer`; `onChange` is called whenever an answer becomes late, and when it comes at last. */
export function createPatience(timer: Timer, onChange: () => void): Patience {
  const owed = new Set<Promise<unknown>>();
  return {
    isOwed: () => owed.size > 0,
    inTime: (answer) =>
      new Promise((resolve) => {
        const giveUp = timer.after(owed.size > 0 ? SHORT_PATIENCE_MS : PATIENCE_MS, () => {
          owed.add(answer);
          onChange();
          resolve(false);
        });
        const come = (): void => {
          giveUp();
          if (owed.delete(answer)) onChange();
          resolve(true);
        };
        answer.then(come, come);
      }),
  };
}

/** Fields that were kept, under what was changed from `base` to `now` before they came. */
export function underChanges<Fields extends object>(kept: Fields, base: Fields, now: Fields): Fields {
  const changed = Object.entries(now).filter(([name, value]) => value !== base[name as keyof Fields]);
  return { ...kept, ...Object.fromEntries(changed) };
}
