/**
 * The pencil list: what a pianist would write on one sheet for a stand full of the band's own parts. Every section stands once, with the letter, the number of its
 * bars (ringed where it is odd), the side it begins on each time it comes, its chords bar by bar in the line breaks of the part, over each chord the note that
 * the octave takes, and signs for what goes wrong on the night: downbeats that the piano leaves out, and where it comes in again after hits and stops.
 */

import type { SectionVisit, SoundingBar } from '../../music/chart/chart';
import type { Score } from '../../music/score';
import { fullBarTicks, type Side, stepsInCycle, TICKS_PER_STEP } from '../../vocabulary';
import { printedChord, printedNote } from '../../words/spoken';

/** One chord of the list with the note name that the octave takes where it is first struck; null where the piano does not play octaves in it. */
export interface ListChord {
  /** Share of the bar where it is written, 0 to 1. */
  readonly at: number;
  readonly text: string;
  readonly octave: string | null;
  readonly push: boolean;
}

/** Where the piano comes in again: count as it is said (`1`, `& of 4`), and the side of the bar. */
export interface Reentry {
  readonly step: number;
  readonly side: Side;
}

/** One bar of the list. */
export interface ListBar {
  /** Place in the list, from 0; line breaks are counted in these. */
  readonly place: number;
  readonly side: Side;
  /** Share of a full bar, 1 or less. */
  readonly length: number;
  readonly chords: readonly ListChord[];
  /** True where a chord is written on 1 that the piano has struck before and does not strike again. */
  readonly leaveOutOne: boolean;
  /** Steps that the whole band strikes. */
  readonly hits: readonly number[];
  readonly silence: 'stop' | 'rest' | null;
  readonly reentry: Reentry | null;
  /** A repeated passage begins here; ends here, with the times it is played in all; the ending that opens here. */
  readonly repeatStart: boolean;
  readonly repeatEnd: number | null;
  readonly ending: readonly number[] | null;
}

/** One section of the list. */
export interface ListSection {
  readonly name: string;
  readonly bars: readonly ListBar[];
  readonly odd: boolean;
  readonly onCue: boolean;
  /** Side on which it begins each time it comes, in the order of the form. */
  readonly sides: readonly Side[];
}

/** The whole list: its sections, and the order in which they are played. */
export interface PencilList {
  readonly sections: readonly ListSection[];
  readonly order: readonly { readonly section: string; readonly times: number; readonly side: Side }[];
}

/** Bars in a line where the player has set no breaks. */
const USUAL_LINE = 4;

/** The list of a score of the whole form. A section that comes again with other bars (a D.S., an ending) stands again. */
export function pencilList(score: Score): PencilList {
  const visits = score.form.visits.filter((visit) => score.bars.some((bar) => inVisit(bar, visit)));
  const sections: { name: string; key: string; bars: ListBar[]; odd: boolean; onCue: boolean; sides: Side[] }[] = [];
  let place = 0;
  for (const visit of visits) {
    const bars = score.bars.filter((bar) => inVisit(bar, visit) && bar.kind !== 'pickup');
    const key = `${visit.section} ${bars.map((bar) => bar.writtenBar).join(' ')}`;
    const known = sections.find((section) => section.key === key);
    if (known) known.sides.push(visit.side);
    else {
      const from = place;
      const written = writtenOnce(bars);
      place += written.length;
      sections.push({
        name: visit.section,
        key,
        bars: written.map(({ bar, ...marks }, i) => ({ ...listBar(score, bar, from + i, i === 0), ...marks })),
        odd: isOdd(score, bars),
        onCue: visit.onCue,
        sides: [visit.side],
      });
    }
  }
  const order: { section: string; times: number; side: Side }[] = [];
  for (const visit of visits) {
    const last = order.at(-1);
    if (last?.section === visit.section && last.side === visit.side) last.times++;
    else order.push({ section: visit.section, times: 1, side: visit.side });
  }
  return { sections: sections.map(({ key: _, ...section }) => section), order };
}

const inVisit = (bar: SoundingBar, visit: SectionVisit): boolean => bar.index >= visit.fromBar && bar.index < visit.toBar;

/** A bar with the repeat signs of the part. */
type WrittenBar = Pick<ListBar, 'repeatStart' | 'repeatEnd' | 'ending'> & { readonly bar: SoundingBar };

/**
 * The bars of one time through a section as the part has them: a passage that is repeated once, with its endings. Where a repeat comes back on the other side, or
 * several repeats follow each other, every bar stands as it sounds.
 */
function writtenOnce(bars: readonly SoundingBar[]): WrittenBar[] {
  const plain = (bar: SoundingBar): WrittenBar => ({ bar, repeatStart: false, repeatEnd: null, ending: null });
  const rows = new Map<string, { readonly bar: SoundingBar; readonly passes: number[] }>();
  let passes = 1;
  let same = true;
  let ordinal = 0;
  bars.forEach((bar, i) => {
    const before = bars[i - 1];
    if (before && bar.writtenBar < before.writtenBar) passes++;
    ordinal = before?.writtenBar === bar.writtenBar && before.pass === bar.pass ? ordinal + 1 : 0;
    const key = `${bar.writtenBar} ${ordinal}`;
    const row = rows.get(key);
    if (row) row.passes.push(passes);
    else rows.set(key, { bar, passes: [passes] });
    same &&= row === undefined || row.bar.side === bar.side;
  });
  const listed = [...rows.values()].toSorted((a, b) => a.bar.writtenBar - b.bar.writtenBar);
  const full = listed.map((row) => row.passes.length === passes);
  const start = full.indexOf(true);
  const end = full.lastIndexOf(true);
  const ends = listed.slice(end + 1).some((row) => !row.passes.includes(passes));
  const oneRepeat = passes > 1 && same && start >= 0 && full.slice(start, end + 1).every(Boolean);
  if (!oneRepeat) return bars.map(plain);
  return listed.map(({ bar, passes: when }, i) => {
    const ending = ends && i > end ? when : null;
    const lastOfEnding = ending !== null && String(listed[i + 1]?.passes) !== String(when);
    const jumps = ends ? lastOfEnding && !when.includes(passes) : i === end;
    const opens = ending !== null && String(listed[i - 1]?.passes) !== String(when);
    return { bar, repeatStart: i === start, repeatEnd: jumps ? passes : null, ending: opens ? ending : null };
  });
}

/** A section is odd when it does not end where a clave cycle ends as many sides after it began. */
function isOdd(score: Score, bars: readonly SoundingBar[]): boolean {
  const cycle = stepsInCycle(score.meter);
  return bars.reduce((sum, bar) => sum + bar.ticks / TICKS_PER_STEP, 0) % cycle !== 0;
}

function listBar(score: Score, bar: SoundingBar, place: number, opens: boolean): Omit<ListBar, 'repeatStart' | 'repeatEnd' | 'ending'> {
  const full = fullBarTicks(score.meter);
  const before = score.bars.find((one) => one.index === bar.index - 1);
  const strokes = strokesOf(score);
  const first = bar.chords[0];
  // A chord that only goes on from the bar before is not written again, but for the first of a section.
  const held = !opens && first && before?.chords.at(-1)?.symbol === first.symbol && !first.push;
  return {
    place,
    side: bar.side,
    length: bar.ticks / full,
    chords:
      bar.playing === 'nobody'
        ? []
        : bar.chords.map((chord) => ({
            at: (chord.tick - bar.tick) / bar.ticks,
            text: chord === first && held ? '%' : printedChord(chord.symbol),
            octave: chord === first && held ? null : octaveOf(score, chord.tick, chord.symbol),
            push: chord.push,
          })),
    leaveOutOne:
      bar.playing === 'band' &&
      !held &&
      first?.tick === bar.tick &&
      !strokes.some(({ tick }) => tick === bar.tick) &&
      rings(strokes, bar.tick),
    hits: bar.hits.map((hit) => hit.step),
    silence: bar.playing === 'band' ? null : bar.playing === 'nobody' ? 'stop' : 'rest',
    reentry: reentryIn(score, bar, before),
  };
}

const strokesOf = (score: Score) => (score.parts.rightHand.length > 0 ? score.parts.rightHand : score.parts.leftHand);

/** A stroke from before sounds on over the tick. */
const rings = (strokes: ReturnType<typeof strokesOf>, tick: number): boolean =>
  strokes.some((stroke) => stroke.tick < tick && stroke.tick >= tick - 2 * TICKS_PER_STEP && stroke.tick + stroke.durationTicks >= tick);

/** The lower note of the first octave that belongs to a chord, struck at most a quarter early; as a name without its octave. */
function octaveOf(score: Score, tick: number, symbol: string): string | null {
  const next = score.bars.flatMap((bar) => bar.chords).find((chord) => chord.tick > tick);
  const octave = strokesOf(score).find(
    (stroke) =>
      stroke.tick >= tick - 480 &&
      stroke.tick < (next?.tick ?? score.toTick) &&
      stroke.tick + stroke.leadTicks >= tick &&
      stroke.chord === symbol &&
      stroke.role !== 'inner' &&
      stroke.role !== 'approach',
  );
  return octave ? printedNote((octave.names[0] ?? '').replace(/-?\d+$/, '')) : null;
}

/** Where the piano comes in again in this bar, when the bar before it had hits or silence. */
function reentryIn(score: Score, bar: SoundingBar, before: SoundingBar | undefined): Reentry | null {
  const interrupted = before && (before.hits.length > 0 || before.playing !== 'band');
  if (!interrupted || bar.playing !== 'band' || bar.hits.length > 0) return null;
  const first = strokesOf(score).find(({ tick }) => tick >= bar.tick && tick < bar.tick + bar.ticks);
  return first ? { step: Math.floor((first.tick - bar.tick) / TICKS_PER_STEP), side: bar.side } : null;
}

/** The bars of a section in lines: broken where the player says, else every four. `breaks` holds places in the list after which a line ends, counted from 1. */
export function listLines(section: ListSection, breaks: readonly number[] | null): ListBar[][] {
  const lines: ListBar[][] = [];
  section.bars.forEach((bar, i) => {
    const last = lines.at(-1);
    const ends = breaks === null ? i % USUAL_LINE === 0 : breaks.includes(bar.place);
    if (!last || ends) lines.push([bar]);
    else last.push(bar);
  });
  return lines;
}

/** Bars in each line of the whole list, as a player types them: `4 4 3`. */
export const lineCounts = (list: PencilList, breaks: readonly number[] | null): number[] =>
  list.sections.flatMap((section) => listLines(section, breaks).map((line) => line.length));

/**
 * Breaks out of bar counts, one after the other over the whole list; a section always begins a line, and counts that end early leave the rest in fours.
 * Counts are whole numbers from 1.
 */
export function breaksFrom(counts: readonly number[], list: PencilList): number[] {
  const breaks: number[] = [];
  const left = [...counts];
  for (const section of list.sections) {
    let bar = 0;
    while (bar < section.bars.length) {
      const count = Math.min(left.shift() ?? USUAL_LINE, section.bars.length - bar);
      bar += count;
      if (bar < section.bars.length) breaks.push(section.bars[bar]?.place ?? 0);
    }
  }
  return breaks;
}
