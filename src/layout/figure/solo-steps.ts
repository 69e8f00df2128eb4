import type { SoundingBar } from '../../music/chart/chart';
import { soloStepOf } from '../../music/montuno/solo';

/** One step of the solo: which, and the sounding bars [fromBar, toBar) it lasts. */
export interface SoloSpan {
  readonly step: 1 | 2 | 3;
  readonly fromBar: number;
  readonly toBar: number;
}

/** Where each step of the solo lies in a form; a short form may hold fewer than three. */
export function soloSpans(bars: readonly SoundingBar[]): readonly SoloSpan[] {
  const spans: { step: 1 | 2 | 3; fromBar: number; toBar: number }[] = [];
  for (const bar of bars) {
    const { step } = soloStepOf(bar, bars.length);
    const last = spans.at(-1);
    if (last?.step === step) last.toBar = bar.index + 1;
    else spans.push({ step, fromBar: bar.index, toBar: bar.index + 1 });
  }
  return spans;
}
