import type { Chart, Section } from './chart';
import type { ChartFaultCode } from './fault-codes';
import type { FaultList, Place } from './faults';
import { MAX_SOUNDING_BARS } from './limits';
import { isCoda, plan, playOrder } from './play-order';
import { findRepeats } from './repeats';
import { resolveBars } from './resolve-bars';

/** Checks what only the whole chart shows: repeats, jumps, pickups, bars that repeat or hold. */
export function checkSections(sections: readonly Section[], faults: FaultList): void {
  const place = (section: number, bar: number): Place => {
    const written = sections[section]?.bars[bar];
    return { line: written?.line ?? 1, column: written?.column ?? 1, text: written?.source ?? '' };
  };
  sections.forEach((section, index) => {
    for (const fault of findRepeats(section.bars).faults) faults.add(fault.code, place(index, fault.bar), fault.expected, fault.nearest);
    section.bars.forEach((bar, at) => {
      if (bar.pickup && (index > 0 || at > 0)) faults.add('pickup not first', place(index, at), '(pickup) in the very first bar alone');
    });
  });
  for (const fault of resolveBars(sections).faults) {
    const written = sections[fault.section]?.bars[fault.bar];
    if (fault.code === 'nothing to hold' && written && !/^(\/|$)/.test(written.source)) continue;
    const expected =
      fault.code === 'nothing to hold'
        ? 'a chord on the first beat: there is none before it to hold'
        : 'a bar before it to repeat (two before %%)';
    faults.add(fault.code, place(fault.section, fault.bar), expected);
  }
  checkJumps(sections, faults, place);
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
        if (need) faults.add('jump without target', { ...place(index, at), text: `<${mark}>` }, `${need} somewhere in the chart`, need);
      }
    });
  });
}

/** Adds a fault when the chart is longer, as it sounds, than the most bars that are unfolded. Open vamps count as they are held. */
export function checkLength(chart: Chart, faults: FaultList): void {
  const { resolved } = resolveBars(chart.sections);
  let bars = 0;
  for (const step of playOrder(
    chart,
    plan(chart, (section) => (section.onCue && section.times === 1 ? 2 : section.times), MAX_SOUNDING_BARS),
  )) {
    const unit = resolved[step.section]?.[step.bar];
    bars += (unit?.bars.length ?? 0) * (unit?.times ?? 0);
    if (bars <= MAX_SOUNDING_BARS) continue;
    const written = chart.sections[step.section]?.bars[step.bar];
    const code: ChartFaultCode = 'too many bars';
    faults.add(
      code,
      { line: written?.line ?? 1, column: written?.column ?? 1, text: written?.source ?? '' },
      `at most ${MAX_SOUNDING_BARS} bars as they sound, repeats played`,
    );
    return;
  }
}
