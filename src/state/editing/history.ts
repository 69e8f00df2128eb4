/** One change of a text: what went and what came, at one place. */
interface Step {
  /** Index into the text, from 0. */
  readonly at: number;
  readonly removed: string;
  readonly inserted: string;
}

/** Every change of one text, oldest first, and the changes that were taken back, the next to do again last. There is no limit. */
export interface History {
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

/** A text and where the caret stands in it. */
export interface Placed {
  readonly text: string;
  readonly caret: number;
}

/** The history of a text that has not been changed. */
export const NO_HISTORY: History = { past: [], future: [] };

/** The history after `before` became `after`. Characters typed or deleted one after another are one step, up to the end of a word or bar. */
export function recorded(history: History, before: string, after: string): History {
  if (before === after) return history;
  const step = stepBetween(before, after);
  const last = history.past.at(-1);
  const joined = last && history.future.length === 0 ? joinedSteps(last, step) : null;
  return { past: joined ? [...history.past.slice(0, -1), joined] : [...history.past, step], future: [] };
}

/** `text` before the last change, or null when there is none. `text` must be the text that the history ends with. */
export function undone(history: History, text: string): (Placed & { readonly history: History }) | null {
  const step = history.past.at(-1);
  if (!step) return null;
  const back = replaced(text, step.at, step.inserted.length, step.removed);
  return {
    text: back,
    caret: step.at + step.removed.length,
    history: { past: history.past.slice(0, -1), future: [...history.future, step] },
  };
}

/** `text` with the change that was taken back last made again, or null when there is none. */
export function redone(history: History, text: string): (Placed & { readonly history: History }) | null {
  const step = history.future.at(-1);
  if (!step) return null;
  const forth = replaced(text, step.at, step.removed.length, step.inserted);
  return {
    text: forth,
    caret: step.at + step.inserted.length,
    history: { past: [...history.past, step], future: history.future.slice(0, -1) },
  };
}

/** `text` with `length` characters at `at` replaced. */
export const replaced = (text: string, at: number, length: number, by: string): string => text.slice(0, at) + by + text.slice(at + length);

/** The one place where two texts differ, as short as it can be. */
function stepBetween(before: string, after: string): Step {
  const shorter = Math.min(before.length, after.length);
  let head = 0;
  while (head < shorter && before[head] === after[head]) head += 1;
  let tail = 0;
  while (tail < shorter - head && before[before.length - 1 - tail] === after[after.length - 1 - tail]) tail += 1;
  return { at: head, removed: before.slice(head, before.length - tail), inserted: after.slice(head, after.length - tail) };
}

/** Where a step of typing ends: behind a blank, a line or a barline. */
const ENDS = /[\s|]$/;

function joinedSteps(last: Step, step: Step): Step | null {
  const typing = last.removed === '' && step.removed === '' && step.inserted.length === 1;
  if (typing && step.at === last.at + last.inserted.length && !ENDS.test(last.inserted))
    return { ...last, inserted: last.inserted + step.inserted };
  const deleting = last.inserted === '' && step.inserted === '' && step.removed.length === 1;
  if (deleting && step.at + 1 === last.at && !ENDS.test(step.removed))
    return { at: step.at, removed: step.removed + last.removed, inserted: '' };
  if (deleting && step.at === last.at && !ENDS.test(last.removed)) return { ...last, removed: last.removed + step.removed };
  return null;
}
