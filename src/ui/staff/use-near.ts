import { type RefObject, useEffect, useState } from 'react';

/** How far outside the window something may be and still count as near, so that it is drawn before it is scrolled to. */
const AHEAD = '600px 0px';

/** True while `target` is in or near the window. Where the browser cannot tell, everything counts as near. */
export function useNear(target: RefObject<Element | null>): boolean {
  const [near, setNear] = useState(typeof IntersectionObserver === 'undefined');
  useEffect(() => {
    const element = target.current;
    if (!element || typeof IntersectionObserver === 'undefined') return;
    const observer = new IntersectionObserver((entries) => setNear(entries.at(-1)?.isIntersecting ?? false), { rootMargin: AHEAD });
    observer.observe(element);
    return () => observer.disconnect();
  }, [target]);
  return near;
}
