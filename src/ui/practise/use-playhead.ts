import { type RefObject, useEffect, useLayoutEffect, useRef } from 'react';
import { shapeAt } from '../../layout/keyboard';
import { followPlayhead, type PlayheadView } from './follow-playhead';
import { lightStrip } from './strip-lights';

/** Everything the frame loop reads, and what the strip shows when nothing plays. */
export interface PlayheadOptions extends Omit<PlayheadView, 'version'> {
  readonly playing: boolean;
  /** Tick of the stroke at the cursor. */
  readonly cursorTick: number;
}

/** Runs the frame loop while playing, giving it what was last drawn; stopped, lights the strip for the stroke at the cursor. */
export function usePlayhead(root: RefObject<HTMLElement | null>, options: PlayheadOptions): void {
  const { playing, cursorTick, ...view } = options;
  const version = useRef(0);
  const latest = useRef<PlayheadView>({ ...view, version: 0 });
  useLayoutEffect(() => {
    version.current += 1;
    latest.current = { ...view, version: version.current };
  });
  useEffect(() => {
    if (!playing || !root.current) return;
    return followPlayhead(root.current, () => latest.current);
  }, [playing, root]);
  useLayoutEffect(() => {
    const strip = root.current?.querySelector<HTMLElement>('.hand-strip');
    if (playing || !strip) return;
    const { score } = view.shown;
    const shapes = view.shapesOf(score);
    const at = shapeAt(shapes, cursorTick, score.closed);
    lightStrip(strip, shapes[at] ?? null, shapes[at + 1] ?? (score.closed ? (shapes[0] ?? null) : null));
  });
}
