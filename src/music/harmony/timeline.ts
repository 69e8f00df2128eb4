import { countLeading, TICKS_PER_STEP } from '../../vocabulary';
import type { Form, Key, SoundingBar } from '../chart/chart';
import type { Chord } from '../chord/chord';

/** A chord where it is written, until the next one. `chord` is null where the pitched parts rest. */
export interface HarmonySpan {
  readonly tick: number;
  /** Exclusive. */
  readonly end: number;
  readonly chord: Chord | null;
  /** As typed. */
  readonly symbol: string;
  readonly push: boolean;
  /** Index of the bar in which it is written. */
  readonly bar: number;
  readonly key: Key;
}

/** A sounding bar, as the parts built on the harmony see it. */
export type HarmonyBar = SoundingBar;

/** The harmony of a run of bars, as written, with the places nothing looks ahead across. */
export interface HarmonicTimeline {
  readonly spans: readonly HarmonySpan[];
  readonly fromTick: number;
  readonly toTick: number;
  readonly closed: boolean;
  /** Ascending ticks; a stroke before one never takes a chord from it on. */
  readonly barriers: readonly number[];
  readonly bars: readonly HarmonyBar[];
  /** True when the chart prints chords where they are hit, so that nothing is taken early. */
  readonly asPlayed: boolean;
}

/**
 * The timeline of bars [`fromBar`, `toBar`) of a form. The same chord written again makes no new span.
 * `closed` lets the last bar look ahead to the first; an open run ends in a barrier.
 */
export function harmonicTimeline(
  form: Form,
  range: { readonly fromBar: number; readonly toBar: number; readonly closed: boolean },
): HarmonicTimeline {
  const bars = form.bars.slice(range.fromBar, range.toBar);
  const first = bars[0];
  const last = bars.at(-1);
  const fromTick = first?.tick ?? 0;
  const toTick = last ? last.tick + last.ticks : fromTick;
  return {
    spans: spansOf(bars, toTick),
    fromTick,
    toTick,
    closed: range.closed,
    barriers: barriersOf(bars, toTick, range.closed),
    bars,
    asPlayed: form.changes === 'as played',
  };
}

function spansOf(bars: readonly SoundingBar[], toTick: number): HarmonySpan[] {
  const starts: Omit<HarmonySpan, 'end'>[] = [];
  for (const bar of bars) {
    const silent = bar.playing !== 'band';
    const written = silent ? [{ tick: bar.tick, chord: null, symbol: 'N.C.', push: false }] : bar.chords;
    for (const { tick, chord, symbol, push } of written) {
      const before = starts.at(-1);
      if (before && before.symbol === symbol && (before.chord === null) === (chord === null) && !push) continue;
      starts.push({ tick, chord, symbol, push, bar: bar.index, key: bar.key });
    }
  }
  return starts.map((span, index) => ({ ...span, end: starts[index + 1]?.tick ?? toTick }));
}

function barriersOf(bars: readonly SoundingBar[], toTick: number, closed: boolean): number[] {
  const found = new Set<number>();
  for (const bar of bars) {
    if (bar.playing !== 'band') found.add(bar.tick);
    for (const hit of bar.hits) found.add(bar.tick + hit.step * TICKS_PER_STEP);
    for (const { tick, chord, push } of bar.chords) {
      if (chord === null) found.add(tick);
      if (push) found.add(tick - TICKS_PER_STEP);
    }
  }
  if (closed) {
    const first = bars[0];
    const opensSilently =
      first && (first.playing !== 'band' || first.chords[0]?.chord === null || first.hits.some((hit) => hit.step === 0));
    if (opensSilently) found.add(toTick);
  } else {
    found.add(toTick);
  }
  return [...found].sort((a, b) => a - b);
}

/** The span at a tick; past the end of a closed timeline it wraps round to the start. */
export function spanAt(timeline: HarmonicTimeline, tick: number): HarmonySpan | undefined {
  const { spans, fromTick, toTick } = timeline;
  const length = toTick - fromTick;
  const at = tick >= toTick && timeline.closed && length > 0 ? fromTick + ((tick - fromTick) % length) : tick;
  return spans[lastAtOrBefore(spans, at)];
}

/** True when a barrier lies in (`tick`, `tick + lead`]: looking that far ahead is not allowed. */
export function barred(timeline: HarmonicTimeline, tick: number, lead: number): boolean {
  const { barriers } = timeline;
  const next = barriers[countLeading(barriers, (barrier) => barrier <= tick)];
  return next !== undefined && next <= tick + lead;
}

/** The bar that a tick falls in; past the end of a closed timeline it wraps round to the start. */
export function barAt(timeline: HarmonicTimeline, tick: number): SoundingBar | undefined {
  const { bars, fromTick, toTick } = timeline;
  const at = tick >= toTick && timeline.closed && toTick > fromTick ? fromTick + ((tick - fromTick) % (toTick - fromTick)) : tick;
  return bars[lastAtOrBefore(bars, at)];
}

/** The next tick after `tick` from which the pitched parts rest, or the end of an open run; undefined when nothing stops them. */
export function silenceAfter(timeline: HarmonicTimeline, tick: number): number | undefined {
  for (let index = Math.max(0, lastAtOrBefore(timeline.spans, tick)); index < timeline.spans.length; index++) {
    const span = timeline.spans[index];
    if (span && span.tick > tick && span.chord === null) return span.tick;
    if (span && span.tick > tick + LONGEST_SOUND) return undefined;
  }
  return timeline.closed ? undefined : timeline.toTick;
}

/** No stroke sounds longer than this, so silences further on do not matter. */
const LONGEST_SOUND = 3840;

/** Index of the last item that starts at or before `tick`; 0 when none does. */
function lastAtOrBefore(items: readonly { readonly tick: number }[], tick: number): number {
  return Math.max(0, countLeading(items, (item) => item.tick <= tick) - 1);
}
