import type { Notation } from '../../layout/notation/notation';
import { SHEET_WORDS } from '../../words/sheet';

/** What needs saying about signs in these very notes, and nothing else. */
export function SheetLegend({ notation }: { readonly notation: Notation }) {
  const events = notation.bars.flatMap((bar) => [...bar.staves.right.events, ...bar.staves.left.events, ...bar.staves.bass.events]);
  const lines = [
    ...(events.some((event) => event.firstPassOnly) ? [SHEET_WORDS.firstPass] : []),
    ...(events.some((event) => event.ringsOn) ? [SHEET_WORDS.ringsOn] : []),
    ...(notation.bars.some((bar) => bar.staves.bass.events.some((event) => event.kind === 'notes')) ? [SHEET_WORDS.octaveClef] : []),
  ];
  return <div className="sheet-legend">{lines.join(' ')}</div>;
}
