/*
 * Numbers of the practice machines, each with where it comes from. No study fixes a best tempo step or gap length for this music:
 * those are our design values, and the player may change them.
 */

/** One number of a practice machine. */
export interface PracticeNumber {
  readonly value: number;
  readonly unit: 'half notes a minute' | 'share' | 'passes' | 'days' | 'seconds' | 'blocks' | 'bars' | 'cycles' | 'steps' | 'ms';
  readonly source: string;
  readonly status: 'published' | 'published, abstract' | 'common practice' | 'our design value';
}

const row = (
  value: number,
  unit: PracticeNumber['unit'],
  source: string,
  status: PracticeNumber['status'] = 'our design value',
): PracticeNumber => ({ value, unit, source, status });
const TEACHERS = 'teachers advise “a notch or two”, about +5 a step, and a slower start the next day (web articles)';
const CASH = 'C. Cash, J. Res. Music Educ. 57(3), 2009: 30 s blocks with 30 s rests; a rest of 5 minutes after the third block helped';
const SIMMONS = 'A. Simmons, J. Res. Music Educ. 59(4): accuracy gained only after 24 hours';
const ALLEN = 'doi 10.1177/0305735612463947: a second, similar melody took away the overnight gain of the first';

/** The numbers by name. */
export const PRACTICE = {
  /** Tempo step: the larger of the two. */
  stepTempo: row(2, 'half notes a minute', TEACHERS),
  stepShare: row(0.03, 'share', TEACHERS),
  /** What "again, slower" plays, as a share of the tempo that was too fast. */
  slowerShare: row(0.8, 'share', 'teachers advise to slow down until it is clean; a fifth is ours', 'our design value'),
  cleanNeeded: row(3, 'passes', TEACHERS),
  cleanOf: row(4, 'passes', TEACHERS),
  faultsDown: row(2, 'passes', TEACHERS),
  stepsNextDay: row(2, 'steps', TEACHERS, 'common practice'),
  /** Passes between two bursts at the goal, and how long a burst is. Slow alone may level off (practice-research articles). */
  burstEvery: row(6, 'passes', 'design; P. Q. Pfordresher, C. Palmer & M. Jungers 2007 for slower being more accurate'),
  burstCycles: row(2, 'cycles', 'design'),
  firstInterval: row(1, 'days', SIMMONS, 'published, abstract'),
  growth: row(2, 'share', 'design: intervals double while the check is clean'),
  shrink: row(0.5, 'share', 'design: intervals halve when it is not'),
  longestInterval: row(60, 'days', 'design'),
  onSeconds: row(30, 'seconds', CASH, 'published, abstract'),
  offSeconds: row(30, 'seconds', CASH, 'published, abstract'),
  blocksToBreak: row(3, 'blocks', CASH, 'published, abstract'),
  breakSeconds: row(300, 'seconds', CASH, 'published, abstract'),
  nearTwinDays: row(1, 'days', ALLEN, 'published, abstract'),
  /** Bars of silence in the gap drill. */
  shortestGap: row(1, 'bars', 'common drill, no source', 'common practice'),
  longestGap: row(8, 'bars', 'common drill, no source', 'common practice'),
  /** Drift at re-entry within this share of a beat (half note) lengthens the gap. */
  driftSmall: row(0.1, 'share', 'design'),
  driftLarge: row(0.25, 'share', 'design'),
  lookSeconds: row(30, 'seconds', 'design: time to look at a fresh chart'),
} as const satisfies Readonly<Record<string, PracticeNumber>>;
