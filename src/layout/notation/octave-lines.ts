/**
 * Where octave lines stand. Every note may be written where it sounds, an octave nearer to the staff or two; the cheapest row of choices is
 * found exactly: leger lines past the third grow dear, a line costs a little for every note under it and more where it begins or ends. So a
 * line covers a passage, never single notes. Common practice of engraving ("when leger lines pile up"), no source; the costs are ours.
 */
import type { ClefName } from './notation';
import type { Span } from './strokes-to-events';
import { CLEF_LINES, staffStep } from './written-pitch';

/** Cost of so many leger lines above or below; what is past the table grows by `EACH_MORE`. */
const LEGER_COST = [0, 0, 0, 1, 5, 10] as const;
const EACH_MORE = 5;
/** What a note under an octave line costs, and each beginning or end of a line. */
const UNDER_LINE = 0.8;
const CHANGE = 6;

const legerCost = (lines: number): number => LEGER_COST[lines] ?? (LEGER_COST.at(-1) ?? 0) + EACH_MORE * (lines - LEGER_COST.length + 1);

/** Octaves that each span is written nearer to its staff: 0, 1 under 8va, 2 under 15ma, −1 over 8vb. Spans are in order of time, each with a pitch. */
export function octaveShifts(spans: readonly Pick<Span, 'pitches'>[], clef: ClefName): number[] {
  // Without a line first, so that it wins when costs are equal.
  const choices = [0, 1, -1, 2];
  const rows: { readonly cost: number; readonly from: number }[][] = [];
  let costs: readonly number[] = choices.map((choice) => (choice === 0 ? 0 : CHANGE));
  spans.forEach((span, at) => {
    const row = choices.map((choice) => {
      const ways = choices.map((before, i) => (costs[i] ?? 0) + (before === choice || at === 0 ? 0 : changeCost(before, choice)));
      const from = at === 0 ? choices.indexOf(choice) : ways.indexOf(Math.min(...ways));
      return { cost: (ways[from] ?? 0) + noteCost(span, choice, clef), from };
    });
    rows.push(row);
    costs = row.map(({ cost }) => cost);
  });
  return wayBack(rows, costs.indexOf(Math.min(...costs))).map((index) => choices[index] ?? 0);
}

function wayBack(rows: readonly (readonly { readonly from: number }[])[], last: number): number[] {
  const way: number[] = [];
  let at = last;
  for (const row of rows.toReversed()) {
    way.push(at);
    at = row[at]?.from ?? 0;
  }
  return way.toReversed();
}

/** From one line to another costs an end and a beginning. */
const changeCost = (from: number, to: number): number => (from === 0 || to === 0 ? CHANGE : 2 * CHANGE);

function noteCost(span: Pick<Span, 'pitches'>, octaves: number, clef: ClefName): number {
  const { bottom, top } = CLEF_LINES[clef];
  const steps = span.pitches.map((pitch) => staffStep(pitch) - 7 * octaves);
  const above = Math.max(0, Math.floor((Math.max(...steps) - top) / 2));
  const below = Math.max(0, Math.floor((bottom - Math.min(...steps)) / 2));
  return legerCost(above) + legerCost(below) + (octaves === 0 ? 0 : UNDER_LINE * Math.abs(octaves));
}
