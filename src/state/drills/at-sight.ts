import { readChart } from '../../music/chart/read';
import { unfold } from '../../music/chart/unfold';
import { PRACTICE } from '../../practice/practice-limits';
import { freshChart, type ReadingDifficulty } from '../../practice/sight-reading';
import { assert } from '../../vocabulary';

/** Seconds to look at a fresh chart. */
export const LOOK_SECONDS: number = PRACTICE.lookSeconds.value;
/** Difficulties on offer. */
export const DIFFICULTIES = [1, 2, 3, 4] as const satisfies readonly ReadingDifficulty[];
/** Styles on offer, as a chart names them. */
export const SIGHT_STYLES = ['son montuno', 'salsa', 'cha-cha-chá'] as const;

/** A fresh chart: its text, and the chord symbols of its bars as they are written. */
export interface SightChart {
  readonly text: string;
  readonly bars: readonly { readonly id: string; readonly chords: readonly string[] }[];
}

/** The chart of a number: the same for everyone who asks for it. */
export function sightChart(choice: {
  readonly seed: number;
  readonly style: string;
  readonly difficulty: ReadingDifficulty;
  readonly title: string;
}): SightChart {
  const text = freshChart(choice);
  const read = readChart(text);
  assert(read.ok, `a fresh chart can be read, number ${choice.seed}`);
  const form = unfold(read.value);
  return { text, bars: form.bars.map((bar) => ({ id: `bar ${bar.index + 1}`, chords: bar.chords.map(({ symbol }) => symbol) })) };
}
