import { TICKS_PER_STEP } from '../vocabulary';
import type { Finding, LoopBars } from './finding';
import type { LabelledStroke } from './labelled';
import { loopOfHabit, loopOver } from './repair-loop';
import { lineThrough } from './statistics';
import type { Take } from './take';
import { LIMITS, noticeableMs } from './timing-limits';

/*
 * Rushing and dragging: the line of least squares through the deviations of all strokes; where that says nothing, the line through some
 * cycles that follow one another within one pass. A player who falls behind in the bridge alone and is back at its end has no slope over
 * the whole. Many windows are looked at, so a window must be surer than the whole, and far enough off that it is heard.
 */

const ERRORS = { whole: 3, window: 6 } as const;
/** Lengths of a window in clave cycles, and the strokes that it needs. Chosen here; figures in tests/practice/whole-rounds.test.ts. */
const WINDOW = { least: 3, most: 8, strokes: 12 } as const;

/** Getting ahead of the band or falling behind it, all through or in some bars; at most one. `struck` ascending, all with a deviation. */
export function findDrift(take: Take, struck: readonly LabelledStroke[], stepMs: number): Finding[] {
  const cycleTicks = take.music.performance.clave.cycleSteps * TICKS_PER_STEP;
  const cycles = (take.toPlayTick - take.fromPlayTick) / cycleTicks;
  if (cycles < 2) return [];
  const whole = lineOf(struck, cycleTicks);
  if (whole && Math.abs(whole.slope) * cycles >= 2 * noticeableMs(stepMs) && sure(whole, ERRORS.whole)) {
    const by = Math.abs(whole.slope) * cycles;
    return [found(whole.slope, null, by / stepMs, loopOfHabit(take.music.performance))];
  }
  const window = surestWindow(take, struck, cycleTicks, stepMs);
  if (!window) return [];
  return [found(window.slope, window.bars, window.byMs / stepMs, loopOver(take.music.performance, window.bars))];
}

function found(slope: number, bars: LoopBars | null, steps: number, loop: LoopBars): Finding {
  const facts = { kind: slope < 0 ? 'rushing' : 'dragging', msPerCycle: Math.abs(slope), bars } as const;
  return { facts, weight: Math.min(0.85, 0.5 + steps / 2), loop };
}

const lineOf = (struck: readonly LabelledStroke[], cycleTicks: number) =>
  lineThrough(struck.map(({ playTick, deviationMs }) => ({ x: playTick / cycleTicks, y: deviationMs ?? 0 })));

const sure = ({ slope, error }: { readonly slope: number; readonly error: number }, errors: number): boolean =>
  Math.abs(slope) >= LIMITS.driftMsPerCycle.value && Math.abs(slope) >= errors * error;

interface Window {
  readonly slope: number;
  readonly byMs: number;
  readonly bars: LoopBars;
}

/** A window holds what is lost when it takes in more than this share of the most that any window loses. */
const HOLDS = 0.75;

/** The cycles of one pass in which the drift lies: the steepest of those that hold most of it; null where there is none. */
function surestWindow(take: Take, struck: readonly LabelledStroke[], cycleTicks: number, stepMs: number): Window | null {
  const least = Math.max(LIMITS.unevenLeastMs.value, LIMITS.stepOffShare.value * stepMs);
  const windows = windowsOf(take, struck, cycleTicks).filter(({ byMs }) => byMs >= least);
  const most = Math.max(...windows.map(({ byMs }) => byMs));
  const held = windows.filter(({ byMs }) => byMs >= HOLDS * most);
  return held.sort((a, b) => Math.abs(b.slope) - Math.abs(a.slope))[0] ?? null;
}

/** Every window whose line is sure. */
function windowsOf(take: Take, struck: readonly LabelledStroke[], cycleTicks: number): Window[] {
  const cycles: LabelledStroke[][] = [];
  for (const stroke of struck) {
    const cycle = Math.max(0, Math.floor((stroke.playTick - take.fromPlayTick) / cycleTicks));
    while (cycles.length <= cycle) cycles.push([]);
    cycles[cycle]?.push(stroke);
  }
  const found: Window[] = [];
  for (let from = 0; from + WINDOW.least <= cycles.length; from += 1)
    for (let length = WINDOW.least; length <= WINDOW.most && from + length <= cycles.length; length += 1) {
      const inside = cycles.slice(from, from + length).flat();
      const [first, last] = [inside[0]?.expected, inside.at(-1)?.expected];
      if (!first || !last || first.pass !== last.pass || inside.length < WINDOW.strokes) continue;
      const line = lineOf(inside, cycleTicks);
      if (!line || !sure(line, ERRORS.window)) continue;
      found.push({ slope: line.slope, byMs: Math.abs(line.slope) * length, bars: { fromBar: first.bar, toBar: last.bar + 1 } });
    }
  return found;
}
