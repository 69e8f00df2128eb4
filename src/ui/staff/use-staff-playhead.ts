import { type RefObject, useEffect } from 'react';
import type { Heard } from '../../state/ports';
import { type LiveSystem, showHeard } from './live-system';

/** While `playing`, moves the line and lights notes once a frame by what is heard; `follow` keeps the sounding system in view. No React commit per frame. */
export function useStaffPlayhead(
  systems: RefObject<Map<number, LiveSystem>>,
  heard: () => Heard | null,
  playing: boolean,
  follow: boolean,
): void {
  useEffect(() => {
    if (!playing) return;
    const reduceMotion = matchMedia('(prefers-reduced-motion: reduce)').matches;
    let frame = 0;
    let shown: LiveSystem | null = null;
    const draw = (): void => {
      const now = heard();
      const tick = now && now.countIn === null ? now.tick : null;
      const live =
        tick === null ? null : ([...systems.current.values()].find((system) => system.fromTick <= tick && tick < system.toTick) ?? null);
      if (shown && shown !== live) showHeard(shown, null, reduceMotion);
      if (live && tick !== null) showHeard(live, tick, reduceMotion);
      if (follow && live && live !== shown) live.block.scrollIntoView({ block: 'nearest', behavior: 'auto' });
      shown = live;
      frame = requestAnimationFrame(draw);
    };
    frame = requestAnimationFrame(draw);
    return () => {
      cancelAnimationFrame(frame);
      if (shown) showHeard(shown, null, reduceMotion);
    };
  }, [systems, heard, playing, follow]);
}
