import type { Section, WrittenBar } from './chart';

/** One ending of a repeat: the passes (from 1) that take it, and its bars [from, to) in the section. */
export interface Ending {
  readonly passes: readonly number[];
  readonly from: number;
  readonly to: number;
}

/** A repeated passage: the bars [from, to) that every pass plays, and the endings after them. */
export interface Repeat {
  readonly from: number;
  readonly to: number;
  readonly endings: readonly Ending[];
  /** How often the passage is played in all. */
  readonly passes: number;
}

/** What is wrong with the repeats of a section, and at which bar. */
export interface RepeatFault {
  readonly bar: number;
  readonly code: 'repeat not opened' | 'repeat not closed' | 'repeat in repeat' | 'ending without repeat' | 'ending numbers';
  readonly expected: string;
  readonly nearest: string | null;
}

/** Finds the repeats of a section in their order, and everything that does not balance. */
export function findRepeats(bars: readonly WrittenBar[]): { readonly repeats: readonly Repeat[]; readonly faults: readonly RepeatFault[] } {
  const repeats: Repeat[] = [];
  const faults: RepeatFault[] = [];
  for (let at = 0; at < bars.length; ) {
    const bar = bars[at] as WrittenBar;
    if (bar.repeatStart) {
      const repeat = readRepeat(bars, at, faults);
      repeats.push(repeat);
      at = Math.max(at + 1, repeat.endings.at(-1)?.to ?? repeat.to);
      continue;
    }
    if (bar.ending)
      faults.push({
        bar: at,
        code: 'ending without repeat',
        expected: '|: where the repeated passage begins, before its first ending',
        nearest: null,
      });
    if (bar.repeatEnd !== null)
      faults.push({
        bar: at,
        code: 'repeat not opened',
        expected: '|: where the repeated passage begins, in the same section',
        nearest: null,
      });
    at += 1;
  }
  return { repeats, faults };
}

function readRepeat(bars: readonly WrittenBar[], from: number, faults: RepeatFault[]): Repeat {
  let to = from;
  for (; to < bars.length; to++) {
    const bar = bars[to] as WrittenBar;
    if (to > from && bar.repeatStart) {
      faults.push({ bar: from, code: 'repeat not closed', expected: ':| before the next |:', nearest: null });
      return { from, to, endings: [], passes: 1 };
    }
    if (bar.ending) return readEndings(bars, from, to, faults);
    if (bar.repeatEnd !== null) return { from, to: to + 1, endings: [], passes: bar.repeatEnd };
  }
  faults.push({ bar: from, code: 'repeat not closed', expected: ':| where the repeated passage ends, in the same section', nearest: null });
  return { from, to, endings: [], passes: 1 };
}

function readEndings(bars: readonly WrittenBar[], from: number, bodyEnd: number, faults: RepeatFault[]): Repeat {
  const endings: Ending[] = [];
  let at = bodyEnd;
  while (at < bars.length && bars[at]?.ending) {
    const start = at;
    let closed = false;
    for (at = start; at < bars.length; at++) {
      const bar = bars[at] as WrittenBar;
      if (at > start && (bar.ending || bar.repeatStart)) break;
      if (bar.repeatEnd !== null || bar.doubleBar) {
        closed = bar.repeatEnd !== null;
        at += 1;
        break;
      }
    }
    endings.push({ passes: bars[start]?.ending ?? [], from: start, to: at });
    const another = at < bars.length && bars[at]?.ending;
    if (another && !closed)
      faults.push({
        bar: at,
        code: 'repeat not closed',
        expected: 'a repeat sign before the next ending, such as :|2.',
        nearest: null,
      });
  }
  const numbers = endings.flatMap((ending) => ending.passes);
  const passes = numbers.length;
  const complete = [...numbers].sort((a, b) => a - b).every((number, index) => number === index + 1);
  const lastHasLast = endings.at(-1)?.passes.includes(passes) ?? false;
  if (!complete || !lastHasLast)
    faults.push({
      bar: bodyEnd,
      code: 'ending numbers',
      expected: 'endings numbered 1, 2, 3 … in their order, each number once',
      nearest: null,
    });
  else if (passes < 2)
    faults.push({ bar: bodyEnd, code: 'repeat not closed', expected: 'a second ending: :|2. after the first', nearest: null });
  return { from, to: bodyEnd, endings, passes: complete ? passes : 1 };
}

/** One bar in playing order: its index in the section, and whether the section does not come back to it on this visit. */
export interface PlayedBar {
  readonly bar: number;
  readonly last: boolean;
}

/**
 * The bars of a section in the order they are played, from bar `from` on.
 * With `taken` false (after D.S. or D.C.) repeated passages are played once, with their last ending: common practice, no source.
 */
export function* playSection(section: Section, repeats: readonly Repeat[], from: number, taken: boolean): Generator<PlayedBar> {
  let at = 0;
  for (const repeat of repeats) {
    yield* run(at, repeat.from, from, true);
    for (let pass = taken ? 1 : repeat.passes; pass <= repeat.passes; pass++) {
      yield* run(repeat.from, repeat.to, from, pass === repeat.passes);
      const ending = repeat.endings.find((candidate) => candidate.passes.includes(pass));
      if (ending) yield* run(ending.from, ending.to, from, pass === Math.max(...ending.passes));
    }
    at = repeat.endings.at(-1)?.to ?? repeat.to;
  }
  yield* run(at, section.bars.length, from, true);
}

function* run(start: number, end: number, from: number, last: boolean): Generator<PlayedBar> {
  for (let bar = Math.max(start, from); bar < end; bar++) yield { bar, last };
}
