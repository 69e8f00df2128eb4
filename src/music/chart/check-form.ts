import { stepsInCycle } from '../../vocabulary';
import type { Chart, Section, WrittenBar } from './chart';
import type { FaultList, Place } from './faults';
import { MAX_SOUNDING_BARS } from './limits';
import { isCoda, plan, playOrder } from './play-order';
import type { TextLine } from './read-lines';
import { findRepeats } from './repeats';
import { type ResolvedBar, resolveBars } from './resolve-bars';
import { heldPasses } from './vamp-passes';

/** What every written bar stands for, section by section. */
type Resolved = readonly (readonly ResolvedBar[])[];

/** Checks what only the whole chart shows: repeats, jumps, pickups, bars that repeat or hold. Returns what every bar stands for. */
export function checkSections(sections: readonly Section[], lines: readonly TextLine[], faults: FaultList): Resolved {
  const place = (section: number, bar: number): Place => placeOf(sections[section]?.bars[bar], lines);
  sections.forEach((section, index) => {
    for (const fault of findRepeats(section.bars).faults) faults.add(fault.code, place(index, fault.bar), fault.expected, fault.nearest);
    section.bars.forEach((bar, at) => {
      if (bar.pickup && (index > 0 || at > 0)) faults.add('pickup not first', place(index, at), '(pickup) in the very first bar alone');
    });
  });
  const { resolved, faults: unresolved } = resolveBars(sections);
  for (const fault of unresolved) {
    const written = sections[fault.section]?.bars[fault.bar];
    if (fault.code === 'nothing to hold' && written && !/^(\/|$)/.test(written.source)) continue;
    const expected =
      fault.code === 'nothing to hold'
        ? 'a chord on the first beat: there is none before it to hold'
        : 'a bar before it to repeat (two before %%)';
    faults.add(fault.code, place(fault.section, fault.bar), expected);
  }
  checkJumps(sections, faults, place);
  return resolved;
}

function checkJumps(sections: readonly Section[], faults: FaultList, place: (section: number, bar: number) => Place): void {
  const marks = new Set(sections.flatMap((section) => section.bars.flatMap((bar) => bar.marks)));
  const hasCoda = marks.has('coda') || sections.some(isCoda);
  const missing = (mark: string): string | null => {
    if (mark.startsWith('D.S.') && !marks.has('segno')) return '<segno>';
    if (mark.endsWith('al fine') && !marks.has('fine')) return '<fine>';
    if (mark.endsWith('al coda') && !marks.has('to coda')) return '<to coda>';
    if (mark.endsWith('al coda') && !hasCoda) return '<coda>';
    return null;
  };
  sections.forEach((section, index) => {
    section.bars.forEach((bar, at) => {
      for (const mark of bar.marks) {
        const need = mark.startsWith('D.') ? missing(mark) : null;
        if (need) faults.add('jump without target', place(index, at), `${need} somewhere in the chart, for <${mark}>`);
      }
    });
  });
}

/** Adds a fault when the chart is longer, as it sounds, than the most bars that are unfolded. Open vamps count as they are held. */
export function checkLength(chart: Chart, resolved: Resolved, lines: readonly TextLine[], faults: FaultList): void {
  let bars = 0;
  const cycle = stepsInCycle(chart.meter);
  const passes = (section: Section, index: number): number =>
    section.onCue ? heldPasses(section, resolved[index] ?? [], cycle) : section.times;
  for (const step of playOrder(chart, plan(chart, passes, MAX_SOUNDING_BARS))) {
    const unit = resolved[step.section]?.[step.bar];
    bars += (unit?.bars.length ?? 0) * (unit?.times ?? 0);
    if (bars <= MAX_SOUNDING_BARS) continue;
    const place = placeOf(chart.sections[step.section]?.bars[step.bar], lines);
    faults.add('too many bars', place, `at most ${MAX_SOUNDING_BARS} bars as they sound, repeats played`);
    return;
  }
}

/** Where a bar stands, and what stands there up to its barline, as typed. */
function placeOf(bar: WrittenBar | undefined, lines: readonly TextLine[]): Place {
  const { line = 1, column = 1 } = bar ?? {};
  const rest = lines[line - 1]?.text.slice(column - 1) ?? '';
  return { line, column, text: (/^(?:[^|:]|:(?!\|))*/.exec(rest)?.[0] ?? '').trimEnd() };
}
