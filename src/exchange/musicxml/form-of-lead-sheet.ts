import type { WrittenBar } from '../../music/chart/chart';
import type { NotTaken } from '../../words/import-screen';
import type { LeadBar, LeadSheet } from './lead-sheet';
import { chartMarks } from './read-marks';

/** The signs of one bar as a chart writes them. */
export interface FormBar {
  readonly repeatStart: boolean;
  readonly repeatEnd: number | null;
  readonly ending: readonly number[] | null;
  readonly doubleBar: boolean;
  readonly marks: WrittenBar['marks'];
  /** Name of the section that begins here, or null. */
  readonly section: string | null;
}

/** Which signs of the form are kept; what does not balance is left out step by step. */
export interface FormKept {
  readonly jumps: boolean;
  readonly repeats: boolean;
}

/** Where a repeated passage begins and ends, endings included: bars [from, to). */
interface Passage {
  readonly from: number;
  readonly to: number;
  /** The bar of the first ending; `to` without endings. */
  readonly body: number;
}

/**
 * Repeats, endings and marks of a score as a chart needs them: every repeat is opened, the last ending is closed by a double bar, and no section
 * begins inside a repeat, since a chart's repeats lie within one section. Returns the signs of each bar and what was left out.
 */
export function formOf(sheet: LeadSheet, kept: FormKept): { readonly bars: readonly FormBar[]; readonly notTaken: readonly NotTaken[] } {
  const notTaken: NotTaken[] = [];
  const marks = chartMarks(sheet.bars);
  const { passages, dangling } = kept.repeats ? passagesOf(sheet.bars) : { passages: [], dangling: [] };
  for (const bar of dangling) notTaken.push({ code: 'open repeat', bar: bar + 1, detail: {} });
  const opened = new Set(passages.map(({ from }) => from));
  const bars = sheet.bars.map((bar, index): FormBar => {
    const inside = passages.some(({ from, to }) => index > from && index < to);
    if (bar.section !== null && inside) notTaken.push({ code: 'mark inside a repeat', bar: index + 1, detail: { mark: bar.section } });
    const held = passages.find(({ from, to }) => index >= from && index < to);
    const next = sheet.bars[index + 1];
    return {
      repeatStart: opened.has(index),
      // Endings count the passes by their numbers.
      repeatEnd: !held || bar.repeatEnd === null ? null : index >= held.body ? 2 : bar.repeatEnd,
      ending: held ? bar.endingStart : null,
      doubleBar: held ? bar.endingStop && bar.repeatEnd === null : bar.doubleBar && next !== undefined && next.section === null,
      marks: kept.jumps ? (marks[index] ?? []) : [],
      section: inside ? null : bar.section,
    };
  });
  return { bars, notTaken };
}

/** The repeated passages in order, and bars where a repeat is opened that never ends. A repeat that is not opened begins after the one before it, or at the start. */
function passagesOf(bars: readonly LeadBar[]): { readonly passages: readonly Passage[]; readonly dangling: readonly number[] } {
  const passages: Passage[] = [];
  const dangling: number[] = [];
  let base = bars[0]?.pickup ? 1 : 0;
  let open: number | null = null;
  for (let at = 0; at < bars.length; at++) {
    const bar = bars[at];
    if (bar?.repeatStart) {
      if (open !== null) dangling.push(open);
      open = at;
    }
    if (bar?.endingStart || bar?.repeatEnd != null) {
      const to = passageEnd(bars, at);
      passages.push({ from: open ?? base, to, body: bar.endingStart ? at : to });
      base = to;
      open = null;
      at = to - 1;
    }
  }
  if (open !== null) dangling.push(open);
  return { passages, dangling };
}

/** The end of the passage whose first ending, or repeat sign without one, stands in bar `at`. */
function passageEnd(bars: readonly LeadBar[], at: number): number {
  if (!bars[at]?.endingStart) return at + 1;
  let to = at;
  while (to < bars.length && bars[to]?.endingStart) {
    let last = to;
    while (last < bars.length - 1 && !bars[last]?.endingStop && bars[last]?.repeatEnd == null && !bars[last + 1]?.endingStart) last += 1;
    to = last + 1;
    // The last ending is not repeated: what follows it is no further ending of this passage.
    if (bars[last]?.repeatEnd == null) break;
  }
  return to;
}
