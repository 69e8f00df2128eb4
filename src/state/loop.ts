import type { Form, SoundingBar } from '../music/chart/chart';
import { countLeading, stepsInCycle, TICKS_PER_STEP } from '../vocabulary';
import type { Loop } from './settings';

// A loop may begin in any bar, but it closes only where the clave, carried on past its last bar, stands where its first bar stands.
// Everything here keeps to such runs, so that the clave never jumps at the seam.

type Bars = Pick<Form, 'bars' | 'meter'>;

/** True when the clave runs on without a jump from the last bar of `loop` to its first. */
export function closes(form: Bars, loop: Loop): boolean {
  const first = form.bars[loop.fromBar];
  const last = form.bars[loop.toBar - 1];
  if (!first || !last || loop.toBar <= loop.fromBar || first.kind === 'pickup') return false;
  return (last.cycleStep + last.ticks / TICKS_PER_STEP) % stepsInCycle(form.meter) === first.cycleStep;
}

/** The clave cycle that `bar` stands in, or null when the form has no whole cycle there. */
export function cycleAt(form: Bars, bar: number): Loop | null {
  let fromBar = clamp(form, bar);
  while (fromBar > 0 && !beginsCycle(form.bars[fromBar])) fromBar -= 1;
  return snapOutward(form, fromBar, clamp(form, bar) + 1);
}

/** The smallest closing run that holds all of `loop`: its end is moved first, then its start. Null when there is none. */
export function snap(form: Bars, loop: Loop): Loop | null {
  const fromBar = clamp(form, loop.fromBar);
  return snapOutward(form, fromBar, Math.max(fromBar + 1, Math.min(loop.toBar, form.bars.length)));
}

/** `loop` with one more bar before it; a bar is added after it too where the clave needs that to close. Null at the start of the form. */
export function withBarBefore(form: Bars, loop: Loop): Loop | null {
  return loop.fromBar === 0 ? null : snap(form, { fromBar: loop.fromBar - 1, toBar: loop.toBar });
}

/** `loop` with one more bar after it; a bar is added before it too where the clave needs that to close. Null at the end of the form. */
export function withBarAfter(form: Bars, loop: Loop): Loop | null {
  if (loop.toBar >= form.bars.length) return null;
  const toBar = loop.toBar + 1;
  for (let fromBar = loop.fromBar; fromBar >= 0; fromBar -= 1) if (closes(form, { fromBar, toBar })) return { fromBar, toBar };
  return snap(form, { fromBar: loop.fromBar, toBar });
}

/** `loop` with its start or end moved by a cycle outward (+1) or inward (−1); null when that leaves nothing or the form. */
export function moveEnd(form: Bars, loop: Loop, end: 'from' | 'to', by: 1 | -1): Loop | null {
  const step = end === 'from' ? -by : by;
  for (let at = (end === 'from' ? loop.fromBar : loop.toBar) + step; at >= 0 && at <= form.bars.length; at += step) {
    const moved = end === 'from' ? { fromBar: at, toBar: loop.toBar } : { fromBar: loop.fromBar, toBar: at };
    if (moved.fromBar >= moved.toBar) return null;
    if (closes(form, moved)) return moved;
  }
  return null;
}

/** A remembered loop in a form that may have changed since: itself if it still closes, else the nearest run that does, else null. */
export function fitLoop(form: Bars, loop: Loop | null): Loop | null {
  if (!loop || loop.fromBar >= form.bars.length) return null;
  return closes(form, loop) ? loop : snap(form, loop);
}

/** Index of the bar that holds `tick`; the first or last bar outside the form. */
export function barAt(bars: readonly Pick<SoundingBar, 'tick'>[], tick: number): number {
  return Math.max(0, countLeading(bars, (bar) => bar.tick <= tick) - 1);
}

function snapOutward(form: Bars, latestFrom: number, earliestTo: number): Loop | null {
  for (let fromBar = latestFrom; fromBar >= 0; fromBar -= 1) {
    for (let toBar = earliestTo; toBar <= form.bars.length; toBar += 1) {
      if (closes(form, { fromBar, toBar })) return { fromBar, toBar };
    }
  }
  return null;
}

const beginsCycle = (bar: SoundingBar | undefined): boolean => bar !== undefined && (bar.cycleStep === 0 || bar.restart);
const clamp = (form: Bars, bar: number): number => Math.max(0, Math.min(bar, form.bars.length - 1));
