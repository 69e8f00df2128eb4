import type { Chart, ChartFault, Form } from '../../../src/music/chart/chart';
import { readChart } from '../../../src/music/chart/read';
import { type UnfoldOptions, unfold } from '../../../src/music/chart/unfold';

/** The chart of a text that has no faults; throws with the faults otherwise. */
export function chartOf(text: string): Chart {
  const read = readChart(text);
  if (!read.ok) throw new Error(`${JSON.stringify(read.faults, null, 1)}\n${text}`);
  return read.value;
}

/** The unfolded chart of a text that has no faults. */
export const formOf = (text: string, options?: UnfoldOptions): Form => unfold(chartOf(text), options);

/** The faults of a text; throws when it has none. */
export function faultsOf(text: string): readonly ChartFault[] {
  const read = readChart(text);
  if (read.ok) throw new Error(`no fault in: ${text}`);
  return read.faults;
}

/** A chart without the columns of its bars, the one thing that writing it may change. */
export const withoutColumns = (chart: Chart): Chart => ({
  ...chart,
  sections: chart.sections.map((section) => ({ ...section, bars: section.bars.map((bar) => ({ ...bar, column: 0 })) })),
});
