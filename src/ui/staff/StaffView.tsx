import { type KeyboardEvent, useMemo, useRef, useState } from 'react';
import { notate } from '../../layout/notation/notate';
import { PLAYED_STAVES, type StaffName } from '../../layout/notation/notation';
import { systemBreaks } from '../../layout/notation/systems';
import type { Score } from '../../music/score';
import type { Heard } from '../../state/ports';
import { STAFF_WORDS } from '../../words/sheet';
import { useSheetDesk, useWrittenHabit } from '../sheet/sheets-context';
import type { LiveSystem } from './live-system';
import './staff.css';
import { StaffSystem } from './StaffSystem';
import { staffSize } from './staff-sizes';
import { useStaffPlayhead } from './use-staff-playhead';
import { useWidth } from './use-width';

/** What the staff view is given. It keeps nothing but which bar has the tab stop. */
export interface StaffViewProps {
  readonly score: Score;
  /** What is heard at this moment; read once a frame, never stored. */
  readonly heard: () => Heard | null;
  readonly playing: boolean;
  /** A bar was touched: `SoundingBar.index`, counted from 0 over the whole form. */
  readonly onStartAt: (barIndex: number) => void;
  /** Bars [fromBar, toBar) of the form to show; all of the score when missing. */
  readonly bars?: { readonly fromBar: number; readonly toBar: number };
  /** Staves to show; clave, both hands and bass when missing. Keep it stable. */
  readonly staves?: readonly StaffName[];
}

/** The score as written notes, system under system, lit in step with what is heard. Only systems near the window are engraved. */
export function StaffView({ score, heard, playing, onStartAt, bars, staves = PLAYED_STAVES }: StaffViewProps) {
  const view = useRef<HTMLDivElement>(null);
  const live = useRef(new Map<number, LiveSystem>());
  const width = useWidth(view);
  const [focusBar, setFocusBar] = useState(0);
  const sheets = useSheetDesk();
  const habit = useWrittenHabit(sheets);
  const notation = useMemo(() => notate(score, { habit }), [score, habit]);
  const joined = habit === 'sixteenths';
  const size = useMemo(() => (width === null ? null : staffSize(width, joined)), [width, joined]);
  const fromBar = bars?.fromBar;
  const toBar = bars?.toBar;
  const ranges = useMemo(() => {
    if (size === null) return [];
    const first = notation.bars.findIndex((bar) => bar.index + bar.count > (fromBar ?? 0));
    const shown = first < 0 ? [] : notation.bars.slice(first).filter((bar) => bar.index < (toBar ?? Number.POSITIVE_INFINITY));
    return systemBreaks(shown, size.perSystem).map((range) => ({ from: range.from + first, to: range.to + first }));
  }, [notation, size, fromBar, toBar]);
  // A few bars chosen by someone else stand where that someone wants them: only the whole score scrolls by itself.
  useStaffPlayhead(live, heard, playing, bars === undefined);
  const firstShown = ranges[0]?.from ?? 0;
  const lastShown = (ranges.at(-1)?.to ?? 1) - 1;
  const tabStop = Math.min(Math.max(focusBar, firstShown), lastShown);
  const onKeyDown = (event: KeyboardEvent): void => {
    const step = { ArrowRight: 1, ArrowLeft: -1, ArrowDown: size?.perSystem ?? 1, ArrowUp: -(size?.perSystem ?? 1) }[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const next = Math.min(Math.max(tabStop + step, firstShown), lastShown);
    view.current?.querySelector<HTMLElement>(`[data-bar="${next}"]`)?.focus();
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would be announced as a form
    <div ref={view} className="staff" role="group" aria-label={STAFF_WORDS.view} onKeyDown={onKeyDown}>
      {size !== null &&
        ranges.map((range) => (
          <StaffSystem
            key={range.from}
            notation={notation}
            range={range}
            size={size}
            staves={staves}
            live={live}
            focusBar={tabStop}
            onFocusBar={setFocusBar}
            onStartAt={onStartAt}
          />
        ))}
    </div>
  );
}
