import { type Direction, fullBarTicks, oppositeDirection, stepsInCycle, TICKS_PER_STEP } from '../../vocabulary';
import type { Chart, ChartNotice, Form, SectionVisit } from './chart';
import { styleNamed } from './style-names';

/**
 * What is worth saying about a form, in the order it is heard.
 * - `odd section`: a section's own length does not close the clave cycle (detail `bars`); once per section.
 * - `section on the other side`: detail `side`, `firstSide`, `firstBar` (sounding, from 0); each time it is so.
 * - `open odd vamp`: an open section that turns the clave over each time (detail `bars`, `passes`, `closes`: whether so many passes end where the clave does); once.
 * - `half-side`: a short bar moves the cycle by half a side (detail `steps`).
 * - `label disagrees`: the head's label against the count (detail `label`, `counted`).
 * - `outside the clave`: a style not built on this clave (detail `style`); once per section.
 */
export function formNotices(chart: Chart, form: Omit<Form, 'notices'>, swapped: boolean): ChartNotice[] {
  const notices: ChartNotice[] = [];
  const cycle = stepsInCycle(form.meter);
  const sections = new Map(chart.sections.map((section) => [section.name, section]));
  const seen = new Map<string, SectionVisit>();
  for (const visit of form.visits) {
    const first = seen.get(visit.section);
    const section = sections.get(visit.section);
    const bars = form.bars.slice(visit.fromBar, visit.toBar).filter((bar) => bar.kind !== 'pickup');
    const add = (code: ChartNotice['code'], detail: ChartNotice['detail'], bar = visit.fromBar): void => {
      notices.push({ code, bar, section: visit.section, detail });
    };
    if (!first) {
      seen.set(visit.section, visit);
      const style = bars[0]?.style ?? chart.style;
      if (styleNamed(style)?.onClave === false) add('outside the clave', { style });
      const steps = bars.reduce((sum, bar) => sum + bar.ticks, 0) / TICKS_PER_STEP;
      if (visit.onCue) {
        const on = form.visits.slice(form.visits.indexOf(visit));
        const left = on.findIndex(({ section: name }) => name !== visit.section);
        const passes = left < 0 ? on.length : left;
        if (steps % cycle !== 0) add('open odd vamp', { bars: bars.length, passes, closes: (steps * passes) % cycle === 0 ? 'yes' : 'no' });
      } else if (steps % cycle !== 0) add('odd section', { bars: bars.length });
    }
    if (visit.otherSide && first && !visit.onCue)
      add('section on the other side', { side: visit.side, firstSide: first.side, firstBar: first.fromBar });
    const counted: Direction = visit.side === 2 ? '2-3' : '3-2';
    const label = section?.expects && swapped ? oppositeDirection(section.expects) : section?.expects;
    if (label && label !== counted) add('label disagrees', { label, counted });
    for (const bar of bars)
      if (bar.ticks * 2 <= fullBarTicks(form.meter)) add('half-side', { steps: bar.ticks / TICKS_PER_STEP }, bar.index);
  }
  return notices;
}
