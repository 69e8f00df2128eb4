/**
 * Repeats of a form that is held as it sounds. A passage is folded only where reading it again is exactly what sounds: the same written
 * bars, alike in every part and sign, and no tie over any of the seams, since a tie into a repeat sign has no second end. Everything else is written out.
 */

/** What folding needs to know of a sounding bar. */
export interface FoldableBar {
  /** Which written bar of the chart it is. */
  readonly writtenBar: number;
  /** Index of the section visit it belongs to. */
  readonly visit: number;
  /** Everything written in it, as text: bars with the same text look and sound the same. */
  readonly content: string;
  /** Key, meter and tempo in force, as text. */
  readonly frame: string;
  /** True when any note is held into it from the bar before. */
  readonly tiedIn: boolean;
  /** True for a bar that cannot stand inside a repeat, such as a pickup or the restart of the clave. */
  readonly once: boolean;
}

/** A bar to be written, with the signs at its barlines. */
export interface WrittenMeasure {
  /** Index of the sounding bar that is written here. */
  readonly bar: number;
  readonly repeatStart: boolean;
  /** Times the passage is played in all when a repeat ends after this bar, else null. */
  readonly repeatEnd: number | null;
  /** Passes (from 1) of the ending that this bar begins or belongs to, else null. */
  readonly ending: readonly number[] | null;
  readonly endingStart: boolean;
  /** How the ending's bracket closes after this bar, or null: turned down before a repeat sign, left open after the last. */
  readonly endingStop: 'stop' | 'discontinue' | null;
}

/** A passage found: passes of `length` bars that are alike, and a last pass that shares their first `body` bars, if any. */
interface Passage {
  readonly length: number;
  readonly passes: number;
  readonly other: { readonly body: number; readonly ending: number } | null;
}

/** A repeat of a single bar is harder to read than the bar written twice. */
const SHORTEST = 2;

/** The bars to write, in order, with repeats and endings; unfolded again they give every bar once, in its order. */
export function foldPasses(bars: readonly FoldableBar[]): WrittenMeasure[] {
  const measures: WrittenMeasure[] = [];
  const entries = entriesOf(bars);
  for (let at = 0; at < bars.length; ) {
    const passage = entries.has(bars[at]?.writtenBar ?? -1) ? passageAt(bars, at) : null;
    if (passage === null) {
      measures.push(plain(at));
      at += 1;
      continue;
    }
    measures.push(...measuresOf(passage, at));
    at += passage.length * passage.passes + (passage.other ? passage.other.body + passage.other.ending : 0);
  }
  return measures;
}

/** Written bars that a repeat or a section leads to: a repeat sign stands there, and nowhere inside a phrase. */
function entriesOf(bars: readonly FoldableBar[]): ReadonlySet<number> {
  const entered = bars.filter((bar, index) => {
    const before = bars[index - 1];
    return before === undefined || before.visit !== bar.visit || before.writtenBar !== bar.writtenBar - 1;
  });
  return new Set(entered.map(({ writtenBar }) => writtenBar));
}

const plain = (bar: number): WrittenMeasure => ({
  bar,
  repeatStart: false,
  repeatEnd: null,
  ending: null,
  endingStart: false,
  endingStop: null,
});

function measuresOf({ length, passes, other }: Passage, at: number): WrittenMeasure[] {
  const total = passes + (other ? 1 : 0);
  const body = other?.body ?? length;
  const first = Array.from({ length }, (_, n): WrittenMeasure => {
    const last = n === length - 1;
    return {
      bar: at + n,
      repeatStart: n === 0,
      repeatEnd: last ? total : null,
      ending: n >= body ? Array.from({ length: passes }, (_unused, pass) => pass + 1) : null,
      endingStart: n === body,
      endingStop: n >= body && last ? 'stop' : null,
    };
  });
  if (!other) return first;
  const from = at + length * passes + body;
  const second = Array.from(
    { length: other.ending },
    (_, n): WrittenMeasure => ({
      ...plain(from + n),
      ending: [total],
      endingStart: n === 0,
      endingStop: n === other.ending - 1 ? 'discontinue' : null,
    }),
  );
  return [...first, ...second];
}

function passageAt(bars: readonly FoldableBar[], at: number): Passage | null {
  const first = bars[at];
  if (!first || first.tiedIn || first.once) return null;
  const again = bars.findIndex((bar, index) => index > at && bar.writtenBar === first.writtenBar);
  const length = again - at;
  if (again < 0 || length < SHORTEST) return null;
  const inside = bars.slice(at, again);
  if (inside.some((bar) => bar.once || bar.frame !== first.frame)) return null;
  let passes = 1;
  while (alike(bars, at, at + length * passes, length) === length && !bars[at + length * passes]?.tiedIn) passes += 1;
  // A tie out of the last pass is one out of them all, and the first of them leads into a bar that is not tied.
  const other = otherEnding(bars, at, length, at + length * passes);
  return passes > 1 || other ? { length, passes, other } : null;
}

/** How many bars from `from` on are the same, one by one, as those from `at` on; at most `length`. */
function alike(bars: readonly FoldableBar[], at: number, from: number, length: number): number {
  for (let n = 0; n < length; n++) {
    const [a, b] = [bars[at + n], bars[from + n]];
    if (!a || !b || b.once || a.writtenBar !== b.writtenBar || a.content !== b.content || a.frame !== b.frame) return n;
  }
  return length;
}

/** A last pass that differs at its end: its bars in common, at least half of the passage, and the bars of its own ending. */
function otherEnding(bars: readonly FoldableBar[], at: number, length: number, from: number): Passage['other'] {
  const body = alike(bars, at, from, length);
  if (body === 0 || body === length || body * 2 < length) return null;
  if (bars[from]?.tiedIn || bars[at + body]?.tiedIn || bars[from + body]?.tiedIn) return null;
  const visit = bars[from + body - 1]?.visit;
  const frame = bars[at]?.frame;
  let ending = 0;
  for (; ending < length - body; ending++) {
    const bar = bars[from + body + ending];
    if (!bar || bar.visit !== visit || bar.once || bar.frame !== frame) break;
  }
  return ending === 0 ? null : { body, ending };
}
