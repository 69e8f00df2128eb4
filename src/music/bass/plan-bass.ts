import { TICKS_PER_STEP } from '../../vocabulary';
import { sideSteps } from '../harmony/bar-steps';
import { barred, type HarmonicTimeline, type HarmonyBar, type HarmonySpan, spanAt } from '../harmony/timeline';
import { BASS_IN_FOUR, BASS_IN_SIX, type BassAim, type BassFeel, type BassPattern } from './patterns';

/** A bass stroke before it has a pitch. */
export interface PlannedBass {
  readonly tick: number;
  readonly bar: HarmonyBar;
  readonly step: number;
  readonly span: HarmonySpan;
  readonly leadTicks: 0 | 240 | 480;
  readonly aim: 'root' | 'fifth' | 'fifth or approach';
  readonly firstPassOnly: boolean;
  readonly hit: boolean;
  /** Where an approach may lead: the chord that follows within two steps, or null. */
  readonly next: HarmonySpan | null;
}

/** The strokes of the bass over a timeline, in order: rhythm and harmony, no pitches. `feelOf` says how a bar is accompanied. */
export function planBass(timeline: HarmonicTimeline, feelOf: (bar: HarmonyBar) => BassFeel): PlannedBass[] {
  const planned: PlannedBass[] = [];
  const pushes = pushedSpans(timeline);
  let opens = true;
  /** The span whose root was struck last; its later strokes are fifths. */
  let rooted: HarmonySpan | undefined;
  for (const bar of timeline.bars) {
    if (bar.playing !== 'band') {
      opens = true;
      continue;
    }
    const pattern = patternOf(bar, feelOf(bar));
    const firstHit = Math.min(...bar.hits.map(({ step }) => step));
    const before = bar.hits.length === 0 || firstHit >= 4 ? groove(timeline, bar, pattern, opens || bar.restart, rooted) : [];
    const strokes = bar.hits.length === 0 ? before : [...before.filter(({ step }) => step <= firstHit - 2), ...hits(timeline, bar)];
    for (const stroke of strokes) {
      if (pushes.some(({ tick }) => stroke.tick >= tick - TICKS_PER_STEP && stroke.tick <= tick + TICKS_PER_STEP)) continue;
      planned.push(stroke);
    }
    for (const { tick, span } of pushes) {
      if (tick >= bar.tick && tick < bar.tick + bar.ticks)
        planned.push({
          tick,
          bar,
          step: (tick - bar.tick) / TICKS_PER_STEP,
          span,
          leadTicks: 240,
          aim: 'root',
          firstPassOnly: false,
          hit: true,
          next: null,
        });
    }
    rooted = planned.at(-1)?.span ?? rooted;
    opens = false;
  }
  return planned.sort((a, b) => a.tick - b.tick);
}

function patternOf(bar: HarmonyBar, feel: BassFeel): BassPattern {
  return sideSteps(bar) === 6 ? BASS_IN_SIX : BASS_IN_FOUR[feel];
}

function groove(
  timeline: HarmonicTimeline,
  bar: HarmonyBar,
  pattern: BassPattern,
  opens: boolean,
  before: HarmonySpan | undefined,
): PlannedBass[] {
  const strokes: PlannedBass[] = [];
  let rooted = before;
  const add = (step: number, aim: PlannedBass['aim'], span: HarmonySpan | undefined, leadTicks: 0 | 240 | 480, firstPassOnly = false) => {
    if (!span?.chord) return;
    const target = aim !== 'root' && rooted !== span ? 'root' : aim;
    if (target === 'root') rooted = span;
    strokes.push({
      tick: bar.tick + step * TICKS_PER_STEP,
      bar,
      step,
      span,
      leadTicks,
      aim: target,
      firstPassOnly,
      hit: false,
      next:
        leadTicks === 0 && !barred(timeline, bar.tick + step * TICKS_PER_STEP, 480)
          ? (spanAt(timeline, bar.tick + step * TICKS_PER_STEP + 480) ?? null)
          : null,
    });
  };
  const opening = spanAt(timeline, bar.tick);
  if (pattern.opensOnOne && opens) add(0, 'root', opening, 0, true);
  // A chord written on beat 4 was played there, so the bar after it has its root on 1.
  else if (pattern.opensOnOne && opening && opening.tick === bar.tick && changesOnFour(timeline, bar)) add(0, 'root', opening, 0);
  else if (pattern.opensOnOne && before && opening === before) rooted = before;
  for (const { step, aim } of pattern.steps) {
    const tick = bar.tick + step * TICKS_PER_STEP;
    if (tick >= bar.tick + bar.ticks) continue;
    addAimed(timeline, tick, step, aim, add);
  }
  return strokes;
}

type Add = (step: number, aim: PlannedBass['aim'], span: HarmonySpan | undefined, leadTicks: 0 | 240 | 480) => void;

function addAimed(timeline: HarmonicTimeline, tick: number, step: number, aim: BassAim, add: Add): void {
  const here = spanAt(timeline, tick);
  if (aim === 'next root') {
    const writtenHere = here?.tick === tick;
    const free = !timeline.asPlayed && !writtenHere && !barred(timeline, tick, 480);
    if (free) add(step, 'root', spanAt(timeline, tick + 480), 480);
    else add(step, 'root', here, 0);
    return;
  }
  const next = spanAt(timeline, tick + TICKS_PER_STEP);
  const early =
    step % 2 === 1 && !timeline.asPlayed && next?.tick === tick + TICKS_PER_STEP && next !== here && !barred(timeline, tick, 240);
  if (early) add(step, 'root', next, 240);
  else add(step, here?.tick === tick ? 'root' : aim, here, 0);
}

/** True when the bar before has a chord written on its beat 4 in an anticipated line, so that the next root waits for 1. */
function changesOnFour(timeline: HarmonicTimeline, bar: HarmonyBar): boolean {
  const previous = timeline.bars[bar.index - (timeline.bars[0]?.index ?? 0) - 1] ?? (timeline.closed ? timeline.bars.at(-1) : undefined);
  if (previous?.playing !== 'band') return false;
  return spanAt(timeline, previous.tick + previous.ticks - 480)?.tick === previous.tick + previous.ticks - 480;
}

function hits(timeline: HarmonicTimeline, bar: HarmonyBar): PlannedBass[] {
  return bar.hits.flatMap(({ step }): PlannedBass[] => {
    const tick = bar.tick + step * TICKS_PER_STEP;
    const here = spanAt(timeline, tick);
    const next = spanAt(timeline, tick + TICKS_PER_STEP);
    const early = step % 2 === 1 && !timeline.asPlayed && next?.chord && next.symbol !== here?.symbol && !barred(timeline, tick, 240);
    const span = early ? next : here;
    return span?.chord
      ? [{ tick, bar, step, span, leadTicks: early ? 240 : 0, aim: 'root', firstPassOnly: false, hit: true, next: null }]
      : [];
  });
}

function pushedSpans(timeline: HarmonicTimeline): { readonly tick: number; readonly span: HarmonySpan }[] {
  const { fromTick, toTick, closed, spans } = timeline;
  return spans.flatMap((span) => {
    if (!span.push || !span.chord) return [];
    const tick = span.tick - TICKS_PER_STEP;
    if (tick >= fromTick) return [{ tick, span }];
    return closed ? [{ tick: toTick - TICKS_PER_STEP, span }] : [];
  });
}
