import { type RefObject, useCallback, useEffect, useMemo, useRef } from 'react';
import type { Notation, StaffName } from '../../layout/notation/notation';
import { systemGeometry } from '../../layout/notation/system-geometry';
import type { SystemRange } from '../../layout/notation/systems';
import { STAFF_WORDS } from '../../words/sheet';
import { EngravedSystem } from './EngravedSystem';
import type { LiveSystem } from './live-system';
import type { StaffSize } from './staff-sizes';
import type { DrawnNote } from './system-drawing';
import { useNear } from './use-near';

/** What one system of the staff view is given. */
export interface StaffSystemProps {
  readonly notation: Notation;
  readonly range: SystemRange;
  readonly size: StaffSize;
  readonly staves: readonly StaffName[];
  /** Where the system puts what the frame loop moves, by its first bar. */
  readonly live: RefObject<Map<number, LiveSystem>>;
  /** Index into the notation of the bar that takes the tab stop. */
  readonly focusBar: number;
  readonly onFocusBar: (bar: number) => void;
  readonly onStartAt: (barIndex: number) => void;
}

/** One system of the staff view: the engraving when near, a touchable area over each bar, the line of the playhead. */
export function StaffSystem({ notation, range, size, staves, live, focusBar, onFocusBar, onStartAt }: StaffSystemProps) {
  const block = useRef<HTMLDivElement>(null);
  const line = useRef<HTMLDivElement>(null);
  const notes = useRef<readonly DrawnNote[]>([]);
  const near = useNear(block);
  const { from, to } = range;
  const geometry = useMemo(
    () => systemGeometry({ notation, from, to, width: size.units, perSystem: size.perSystem, staves }),
    [notation, from, to, size, staves],
  );
  const drawing = useMemo(() => ({ notation, from, geometry }), [notation, from, geometry]);
  const bars = notation.bars.slice(from, to);
  useEffect(() => {
    const first = notation.bars[from];
    const last = notation.bars[to - 1];
    const systems = live.current;
    if (!first || !last || !block.current || !line.current) return;
    systems.set(from, { fromTick: first.tick, toTick: last.tick + last.ticks, geometry, block: block.current, line: line.current, notes });
    return () => {
      systems.delete(from);
    };
  }, [notation, from, to, geometry, live]);
  const onDrawn = useCallback((drawn: readonly DrawnNote[]) => {
    notes.current = drawn;
  }, []);
  const label = STAFF_WORDS.system(
    bars[0]?.index ?? 0,
    (bars.at(-1)?.index ?? 0) + 1,
    bars.flatMap((bar) => bar.chords.map((chord) => chord.text)),
  );
  return (
    <div ref={block} className="staff-system" style={{ aspectRatio: `${geometry.width} / ${geometry.height}` }}>
      {near && <EngravedSystem drawing={drawing} label={label} onDrawn={onDrawn} />}
      {bars.map((bar, i) => {
        const place = geometry.bars[i];
        return (
          <button
            key={bar.index}
            type="button"
            className="staff-bar"
            data-bar={from + i}
            tabIndex={from + i === focusBar ? 0 : -1}
            aria-label={STAFF_WORDS.startAt(bar.index, bar.side)}
            style={{ left: `${(100 * (place?.x ?? 0)) / geometry.width}%`, width: `${(100 * (place?.width ?? 0)) / geometry.width}%` }}
            onFocus={() => onFocusBar(from + i)}
            onClick={() => onStartAt(bar.index)}
          />
        );
      })}
      <div ref={line} className="staff-playhead" aria-hidden="true" />
    </div>
  );
}
