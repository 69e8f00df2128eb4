import type { SoundingBar } from '../../music/chart/chart';
import { alignment } from '../../music/clave/alignment';
import type { Score } from '../../music/score';
import { TICKS_PER_STEP } from '../../vocabulary';
import { beamGroups } from '../notation/beams-and-stems';
import { claveSpans } from '../notation/clave-line';
import type { NotatedBar, NotatedEvent, Notation, PitchedStaff, StaffBar } from '../notation/notation';
import { barEvents } from '../notation/strokes-to-events';
import { barFrame } from '../notation/written-bars';

const HANDS = ['right', 'left'] as const satisfies readonly PitchedStaff[];

/** The notation with both hands taken off: empty staves for the pupil to fill, rhythm, clave, chords and bass as they were. */
export const blankHands = (notation: Notation): Notation => mapHands(notation, () => ({ events: [], beams: [] }));

/** Ticks of the strokes that are taken early: what a montuno is about, and so what a pupil is asked for. Where nothing is early, every third stroke. */
export function missingTicks(score: Score): ReadonlySet<number> {
  const strokes = score.parts.rightHand.length > 0 ? score.parts.rightHand : score.parts.leftHand;
  const early = strokes.filter((stroke) => stroke.leadTicks > 0);
  const missing = early.length > 0 ? early : strokes.filter((_, i) => i % 3 === 1);
  return new Set(missing.map((stroke) => stroke.tick));
}

/** The notation with the notes at some ticks of the score left out, tied continuations too; each gap keeps the pitches that answer it. */
export function withGaps(notation: Notation, missing: ReadonlySet<number>): Notation {
  // A gap goes on through the tied parts of its note, over the barline as well.
  const open: Record<string, boolean> = {};
  return mapHands(notation, (bar, staff) => {
    const events = bar.staves[staff].events.map((event): NotatedEvent => {
      if (event.kind !== 'notes') return event;
      const gone = event.tieIn ? open[staff] === true : missing.has(bar.tick + event.tick);
      open[staff] = gone && event.tieOut;
      return gone ? { ...event, kind: 'gap', articulations: [], fingers: [], tieOut: false, ringsOn: false } : event;
    });
    return { events, beams: bar.staves[staff].beams.flatMap((group) => unbroken(group, events)) };
  });
}

/** A beam without the notes that are gone, in two where one was in the middle. */
function unbroken(group: readonly number[], events: readonly NotatedEvent[]): number[][] {
  const runs: number[][] = [[]];
  for (const i of group) {
    if (events[i]?.kind === 'notes') runs.at(-1)?.push(i);
    else runs.push([]);
  }
  return runs.filter((run) => run.length > 1);
}

function mapHands(notation: Notation, change: (bar: NotatedBar, staff: PitchedStaff) => StaffBar): Notation {
  const bars = notation.bars.map((bar) => ({
    ...bar,
    staves: { ...bar.staves, ...Object.fromEntries(HANDS.map((staff) => [staff, change(bar, staff)])) },
  }));
  return { ...notation, bars };
}

/** "Find the crossed bars": lines of clave and rhythm, in each of which two bars of one cycle have changed places. */
export interface CrossedTask {
  readonly notation: Notation;
  /** For each line, the first of the two crossed bars, counted from 0 over the whole task. */
  readonly answers: readonly number[];
}

const LINES = 4;
const CYCLES_IN_LINE = 2;

/**
 * The task for a score, or null where no cycle of its figure states the direction clearly enough to be crossed (a neutral figure; 6/8). Which cycle is
 * crossed is a free choice made by `seed`; the same seed gives the same task. Each line holds two clave cycles.
 */
export function crossedTask(score: Score, notation: Notation, seed: number): CrossedTask | null {
  const cycles = statingCycles(score);
  if (cycles.length === 0) return null;
  const bars: NotatedBar[] = [];
  const answers: number[] = [];
  let random = seed + 1;
  for (let line = 0; line < LINES; line++) {
    random = (random * 1_103_515_245 + 12_345) % 2_147_483_648;
    const crossed = Math.floor(random / 65_536) % CYCLES_IN_LINE;
    for (let n = 0; n < CYCLES_IN_LINE; n++) {
      const cycle = cycles[(line * CYCLES_IN_LINE + n) % cycles.length];
      if (!cycle) continue;
      if (n === crossed) answers.push(bars.length);
      const rhythms = cycle.map((bar) => rhythmBar(score, bar));
      cycle.forEach((bar, b) => {
        const from = notation.bars.find(({ index }) => index === bar.index);
        const rhythm = rhythms[n === crossed ? 1 - b : b];
        if (from && rhythm) bars.push(plainBar(from, rhythm, bars.length, n === 0 && b === 0 ? String(line + 1) : null));
      });
    }
  }
  return { notation: { ...notation, bars, ends: 'final' }, answers };
}

/** Cycles of whole groove bars whose rhythm is aligned with the clave and would be crossed with its bars exchanged. */
function statingCycles(score: Score): [SoundingBar, SoundingBar][] {
  if (score.meter !== '4/4') return [];
  return score.bars.flatMap((bar, i): [SoundingBar, SoundingBar][] => {
    const next = score.bars[i + 1];
    if (!next || bar.kind !== 'groove' || next.kind !== 'groove' || bar.cycleStep !== 0 || next.cycleStep !== 8) return [];
    const [one, two] = [stepsOf(score, bar), stepsOf(score, next)];
    const states = (grid: readonly boolean[]) => alignment(grid, score.clave).verdict;
    return states([...one, ...two]) === 'aligned' && states([...two, ...one]) === 'crossed' ? [[bar, next]] : [];
  });
}

function stepsOf(score: Score, bar: SoundingBar): boolean[] {
  const strokes = score.parts.rightHand.length > 0 ? score.parts.rightHand : score.parts.leftHand;
  const steps = Array<boolean>(8).fill(false);
  for (const { tick } of strokes)
    if (tick >= bar.tick && tick < bar.tick + bar.ticks) steps[Math.floor((tick - bar.tick) / TICKS_PER_STEP)] = true;
  return steps;
}

/** The rhythm of a bar on one line, as a clave is written: short values, no ties. Ticks from the start of the bar. */
function rhythmBar(score: Score, bar: SoundingBar): StaffBar {
  const frame = barFrame(score, bar);
  const strokes = stepsOf(score, bar).flatMap((struck, step) => (struck ? [{ tick: step * TICKS_PER_STEP, stroke: 'stroke' }] : []));
  const events = barEvents(claveSpans(strokes, 0, frame), 0, frame, 'stroke');
  return { beams: beamGroups(events, frame), events: events.map((event) => ({ ...event, pitches: [], stem: 'up' })) };
}

/** A bar of the task: clave and rhythm alone, counted anew, its line numbered where one begins. */
function plainBar(bar: NotatedBar, rhythm: StaffBar, at: number, line: string | null): NotatedBar {
  return {
    ...bar,
    index: at,
    tick: at * bar.ticks,
    sectionStart: line,
    restart: false,
    chords: [],
    hits: [],
    silence: null,
    repeat: { start: false, end: null },
    ending: null,
    meterChange: at === 0,
    keyChange: at === 0,
    staves: { ...bar.staves, rhythm },
  };
}
