import { useEffect, useRef } from 'react';
import type { DrawnNote, SystemDrawing } from './system-drawing';
import { useEngraver } from './use-engraver';

/** What an engraved system is given. */
export interface EngravedSystemProps {
  readonly drawing: SystemDrawing;
  /** The system in words, for those who do not see it. */
  readonly label: string;
  /** Called after each drawing with its notes, and with none when it goes. Keep it stable. */
  readonly onDrawn?: (notes: readonly DrawnNote[]) => void;
}

/** One system of notation as one SVG in one block; blank, at its full height, until the engraver has been loaded. */
export function EngravedSystem({ drawing, label, onDrawn }: EngravedSystemProps) {
  const host = useRef<HTMLDivElement>(null);
  const engraver = useEngraver();
  useEffect(() => {
    const element = host.current;
    if (engraver.kind !== 'ready' || !element) return;
    const notes = engraver.engrave(element, drawing);
    onDrawn?.(notes);
    return () => {
      onDrawn?.([]);
      element.replaceChildren();
    };
  }, [engraver, drawing, onDrawn]);
  const { width, height } = drawing.geometry;
  if (engraver.kind === 'failed') return <p className="system">{engraver.reason}</p>;
  return (
    <div className="system" role="img" aria-label={label} data-engraved={engraver.kind}>
      <div ref={host} style={{ aspectRatio: `${width} / ${height}` }} />
    </div>
  );
}
