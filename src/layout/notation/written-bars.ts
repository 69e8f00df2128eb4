import type { SoundingBar } from '../../music/chart/chart';
import type { Score } from '../../music/score';
import { fullBarTicks, TICKS_PER_QUARTER, TICKS_PER_STEP } from '../../vocabulary';
import type { BarMeter, Habit } from './notation';
import type { BarFrame } from './note-values';

/** One bar as it is written: the sounding bars in it, its place in score ticks, and how it is divided in written ticks. */
export interface WrittenBar {
  readonly bars: readonly [SoundingBar] | readonly [SoundingBar, SoundingBar];
  readonly tick: number;
  readonly ticks: number;
  readonly frame: BarFrame;
  readonly meter: BarMeter;
}

/** Score ticks to a written tick: the sixteenth-note habit halves all values; 6/8 keeps its eighths and only joins the bars. */
export const scaleOf = (score: Pick<Score, 'meter'>, habit: Habit): 1 | 2 => (habit === 'sixteenths' && score.meter === '4/4' ? 2 : 1);

/**
 * The bars of a score as they are written. In eighths each sounding bar stands alone. In the sixteenth-note habit the two bars of a clave cycle are one bar
 * (16 sixteenths in 4/4, 12 eighths in 6/8); what makes no whole cycle, such as the odd bar of a section, a short bar or a pickup, keeps a bar of its own,
 * half as long. The habit: "one bar of 4/4 in sixteenths, the present Cuban habit" (published: Wikipedia, "Salsa (musical structure)").
 */
export function writtenBars(score: Score, habit: Habit): WrittenBar[] {
  const written: WrittenBar[] = [];
  for (let i = 0; i < score.bars.length; i++) {
    const bar = score.bars[i];
    const next = score.bars[i + 1];
    if (!bar) break;
    const pair = habit === 'sixteenths' && next !== undefined && makeCycle(score, bar, next);
    const bars = pair ? ([bar, next] as const) : ([bar] as const);
    if (pair) i++;
    written.push({
      bars,
      tick: bar.tick,
      ticks: bar.ticks + (pair ? next.ticks : 0),
      frame: frameOf(score, bars, habit),
      meter: barMeter(score, bars, habit),
    });
  }
  return written;
}

function makeCycle(score: Score, bar: SoundingBar, next: SoundingBar): boolean {
  const full = fullBarTicks(score.meter);
  const whole = bar.ticks === full && next.ticks === full && bar.kind !== 'pickup';
  const sameKey = bar.key.tonic === next.key.tonic && bar.key.mode === next.key.mode;
  const sameMusic = bar.visit === next.visit && !next.restart && sameKey;
  return whole && sameMusic && bar.cycleStep === 0 && next.cycleStep !== 0;
}

/** How one sounding bar is divided where it is written in eighths: cut time in halves, 6/8 in dotted quarters; a pickup fills the end of a whole bar. */
export const barFrame = (score: Pick<Score, 'meter'>, bar: SoundingBar): BarFrame => frameOf(score, [bar], 'eighths');

function frameOf(score: Pick<Score, 'meter'>, bars: WrittenBar['bars'], habit: Habit): BarFrame {
  const compound = score.meter === '6/8';
  const scale = scaleOf(score, habit);
  const ticks = bars.reduce((sum, bar) => sum + bar.ticks, 0) / scale;
  const full = fullBarTicks(score.meter) / scale;
  const shift = bars[0].kind === 'pickup' && ticks < full ? full - ticks : 0;
  const step = TICKS_PER_STEP / scale;
  const group = scale === 2 ? 4 * step : full / 2;
  return { middle: bars.length === 2 ? ticks / 2 : full / 2, half: group, beat: compound ? step : 2 * step, step, shift, ticks };
}

function barMeter(score: Score, bars: WrittenBar['bars'], habit: Habit): BarMeter {
  const ticks = bars.reduce((sum, bar) => sum + bar.ticks, 0) / scaleOf(score, habit);
  const pickup = bars[0].kind === 'pickup';
  if (score.meter === '6/8') return { kind: 'fraction', beats: pickup ? 6 : Math.round(ticks / TICKS_PER_STEP), unit: 8 };
  if (habit === 'eighths' && (ticks === 4 * TICKS_PER_QUARTER || pickup)) return { kind: 'cut' };
  if (pickup) return { kind: 'fraction', beats: 2, unit: 4 };
  const quarters = ticks / TICKS_PER_QUARTER;
  return Number.isInteger(quarters)
    ? { kind: 'fraction', beats: quarters, unit: 4 }
    : { kind: 'fraction', beats: Math.round(quarters * 2), unit: 8 };
}

const SIXTEENTH_COUNT = ['', 'e', '&', 'a'] as const;

/** The count of a bar, in score ticks from its start: `1 & 2 &` on eighths, `1 e & a` on sixteenths, `1` to `6` (or `12`) in 6/8. */
export function countsOf(bar: WrittenBar, scale: 1 | 2): { tick: number; text: string }[] {
  const { frame } = bar;
  return Array.from({ length: Math.floor(bar.ticks / TICKS_PER_STEP) }, (_, i) => {
    const step = i + frame.shift / frame.step;
    const text =
      frame.beat === frame.step
        ? String(step + 1)
        : scale === 2
          ? SIXTEENTH_COUNT[step % 4] || String(step / 4 + 1)
          : step % 2 === 0
            ? String(step / 2 + 1)
            : '&';
    return { tick: i * TICKS_PER_STEP, text };
  });
}
