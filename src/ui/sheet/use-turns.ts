import { useCallback, useEffect, useState } from 'react';
import { flushSync } from 'react-dom';

/** Systems engraved in one turn before the page may do something else. */
const PER_TURN = 4;

/**
 * How many of `total` systems may be engraved by now: a few more each turn, so that a long sheet does not stop the page, and all of
 * them at once when the page is about to be printed, however that was asked for. `all()` brings the rest before it returns.
 */
export function useTurns(total: number): { readonly done: number; readonly all: () => void } {
  const [done, setDone] = useState(PER_TURN);
  useEffect(() => {
    if (done >= total) return;
    const turn = setTimeout(() => setDone((now) => now + PER_TURN), 0);
    return () => clearTimeout(turn);
  }, [done, total]);
  const all = useCallback(() => flushSync(() => setDone(total)), [total]);
  useEffect(() => {
    addEventListener('beforeprint', all);
    return () => removeEventListener('beforeprint', all);
  }, [all]);
  return { done, all };
}
