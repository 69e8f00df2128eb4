import { assert } from '../../vocabulary';
import type { Chart, Section } from './chart';
import { findRepeats, playSection, type Repeat } from './repeats';

/** A written bar in playing order. */
export interface PlayStep {
  /** Counts the times a section is entered, from 0. */
  readonly visit: number;
  /** Index of the section in the chart, and of the bar in the section. */
  readonly section: number;
  readonly bar: number;
  /** True for the first time through when a section is played several times in a row. */
  readonly entry: boolean;
}

/** A place in the plan: which entry, and which bar of its section. */
interface Spot {
  readonly at: number;
  readonly bar: number;
}

/** Sections in the order they are played: the index of each, and whether it is the first of its passes in a row. */
export function plan(
  chart: Chart,
  passes: (section: Section, index: number) => number,
  limit: number,
): { section: number; entry: boolean }[] {
  const byName = new Map(chart.sections.map((section, index) => [section.name, index]));
  const order = chart.form?.map((name) => byName.get(name)) ?? chart.sections.map((_, index) => index);
  const planned: { section: number; entry: boolean }[] = [];
  for (const index of order) {
    const section = index === undefined ? undefined : chart.sections[index];
    assert(section && index !== undefined, 'a form names sections of its chart');
    const times = passes(section, index);
    for (let pass = 0; pass < times && planned.length <= limit; pass++) planned.push({ section: index, entry: pass === 0 });
  }
  return planned;
}

/**
 * Every written bar in the order it sounds: repeats and endings, then D.S., D.C., coda and fine.
 * Each jump is taken once, on the last pass of its bar. After a jump repeats are not taken (common practice, no source) until the coda.
 * D.S. goes to the segno passed last; "to coda" goes to the next `<coda>`, or to a section with the role or the name of coda.
 */
export function* playOrder(chart: Chart, planned: readonly { section: number; entry: boolean }[]): Generator<PlayStep> {
  const repeats: readonly (readonly Repeat[])[] = chart.sections.map((section) => findRepeats(section.bars).repeats);
  const jumped = new Set<string>();
  let spot: Spot = { at: 0, bar: 0 };
  let target: 'coda' | 'fine' | null = null;
  let taken = true;
  let segno: Spot | null = null;
  let visit = -1;

  visits: while (spot.at < planned.length) {
    const { at, bar: from } = spot;
    const entry = planned[at];
    const section = entry && chart.sections[entry.section];
    assert(entry && section, 'the plan names sections of the chart');
    visit += 1;
    for (const { bar, last } of playSection(section, repeats[entry.section] ?? [], from, taken)) {
      yield { visit, section: entry.section, bar, entry: entry.entry };
      const marks = section.bars[bar]?.marks ?? [];
      if (marks.length === 0) continue;
      if (marks.includes('segno')) segno = { at, bar };
      if (target === 'fine' && marks.includes('fine')) return;
      const coda: Spot | null = target === 'coda' && marks.includes('to coda') ? findCoda(chart, planned, { at, bar }) : null;
      if (coda) {
        spot = coda;
        target = null;
        taken = true;
        continue visits;
      }
      const jump = marks.find((mark) => mark.startsWith('D.'));
      if (jump && last && !jumped.has(`${at}:${bar}`)) {
        jumped.add(`${at}:${bar}`);
        target = jump.endsWith('coda') ? 'coda' : 'fine';
        taken = false;
        spot = jump.startsWith('D.C.')
          ? { at: 0, bar: 0 }
          : (segno ?? findMark(chart, planned, 'segno', { at: 0, bar: 0 }) ?? { at: 0, bar: 0 });
        continue visits;
      }
    }
    spot = { at: at + 1, bar: 0 };
  }
}

/** True for a section that is a coda by its role or its name. */
export const isCoda = (section: Section): boolean => section.role === 'coda' || (section.role === null && /^coda$/i.test(section.name));

function findCoda(chart: Chart, planned: readonly { section: number }[], from: Spot): Spot | null {
  const marked =
    findMark(chart, planned, 'coda', { at: from.at, bar: from.bar + 1 }) ?? findMark(chart, planned, 'coda', { at: 0, bar: 0 });
  if (marked) return marked;
  const at = planned.findIndex((entry) => isCoda(chart.sections[entry.section] as Section));
  return at < 0 ? null : { at, bar: 0 };
}

function findMark(chart: Chart, planned: readonly { section: number }[], mark: 'segno' | 'coda', from: Spot): Spot | null {
  for (let at = from.at; at < planned.length; at++) {
    const bars = chart.sections[planned[at]?.section ?? -1]?.bars ?? [];
    for (let bar = at === from.at ? from.bar : 0; bar < bars.length; bar++) if (bars[bar]?.marks.includes(mark)) return { at, bar };
  }
  return null;
}
