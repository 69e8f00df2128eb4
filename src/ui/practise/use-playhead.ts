import { type RefObject, useEffect, useLayoutEffect, useRef } from 'react';
import type { PlayheadView } from './follow-playhead';

const fetchFollower = () => import('./follow-playhead');

/** Everything the frame loop reads. */
export interface PlayheadOptions extends Omit<PlayheadView, 'version'> {
  readonly playing: boolean;
}

/** Runs the frame loop while playing, giving it what was last drawn. The loop is fetched once the board stands. */
export function usePlayhead(root: RefObject<HTMLElement | null>, options: PlayheadOptions): void {
  const { playing, ...view } = options;
  const version = useRef(0);
  const latest = useRef<PlayheadView>({ ...view, version: 0 });
  useLayoutEffect(() => {
    version.current += 1;
    latest.current = { ...view, version: version.current };
  });
  useEffect(() => {
    let stop: (() => void) | null = null;
    let wanted = playing;
    fetchFollower().then(
      ({ followPlayhead }) => {
        if (wanted && root.current) stop = followPlayhead(root.current, () => latest.current);
      },
      // The music goes on without its light; the next start asks again.
      () => undefined,
    );
    return () => {
      wanted = false;
      stop?.();
    };
  }, [playing, root]);
}
