import type { NotatedBar } from './notation';

/** Bars [from, to) of a notation that stand side by side. */
export interface SystemRange {
  readonly from: number;
  readonly to: number;
}

/** What the breaks depend on. */
type BreakingBar = Pick<NotatedBar, 'sectionStart'> & { readonly ending?: NotatedBar['ending'] };

/**
 * Breaks bars into systems of at most `perSystem` bars. A section begins a new system, unless the whole of it still fits behind
 * the section before (a one-bar break behind a seven-bar bridge). `starts` holds the indexes of bars where a section begins.
 */
export function systemBreaks(bars: readonly BreakingBar[], perSystem: number): SystemRange[] {
  const starts = bars.flatMap((bar, i) => (bar.sectionStart !== null || i === 0 ? [i] : []));
  const systems: SystemRange[] = [];
  starts.forEach((start, s) => {
    const end = starts[s + 1] ?? bars.length;
    const last = systems.at(-1);
    if (last && end - last.from <= perSystem) {
      systems[systems.length - 1] = { from: last.from, to: end };
      return;
    }
    for (let from = start; from < end; from += perSystem) {
      const to = Math.min(end, from + perSystem);
      const before = systems.at(-1);
      // One bar of an ending left alone joins the line before it, a bar more than usual.
      if (before && from > start && to - from === 1 && bars[from]?.ending) systems[systems.length - 1] = { from: before.from, to };
      else systems.push({ from, to });
    }
  });
  return systems;
}
