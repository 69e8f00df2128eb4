/**
 * Where everything in one system stands. Lengths are in staff units: ten to the space between two lines of a staff, so that a
 * staff is 40 high; whoever draws scales them. Every bar spaces its ticks evenly, so that clave, count and hands line up and a step is as wide
 * in every bar of the same width.
 */
import type { NotatedBar, Notation, StaffName } from './notation';
import { gapBefore, type SignGap, signGaps } from './sign-gaps';
import { type OctaveLine, type SystemHeights, systemHeights } from './system-heights';

/** Width of a note head. */
const NOTE_HEAD = 12;
/** Room left of the staves for the brace. */
const MARGIN = 18;
/** From the start of a bar's notes to its first note head, and from the last step's head to the barline. */
const LEAD_IN = 24;
const LEAD_OUT = 6;
/** Extra room that a repeat sign takes in its bar. */
const REPEAT_SIGN = 18;
/** One bar of a system, horizontally. */
export interface BarPlace {
  readonly x: number;
  readonly width: number;
  /** Where clef and signatures end. */
  readonly noteStart: number;
  /** True where a repeat sign begins or ends. */
  readonly repeatStart: boolean;
  readonly repeatEnd: boolean;
  /** Left edge of a note head on the bar's first tick. */
  readonly firstHead: number;
  readonly perTick: number;
  /** Extra room for signs before some ticks. */
  readonly gaps: readonly SignGap[];
  readonly tick: number;
  readonly ticks: number;
  readonly showClef: boolean;
  readonly showKey: boolean;
  readonly showMeter: boolean;
}

/** A system with all its places. */
export interface SystemGeometry extends Omit<SystemHeights, 'octaveLines'> {
  readonly width: number;
  readonly right: number;
  readonly bars: readonly BarPlace[];
  readonly octaveLines: readonly (OctaveLine & { readonly fromX: number; readonly toX: number })[];
}

/** What to lay out: bars [from, to) of a notation, in a given width, with the bars of a full system in mind. */
export interface SystemRequest {
  readonly notation: Notation;
  readonly from: number;
  readonly to: number;
  readonly width: number;
  readonly perSystem: number;
  readonly staves: readonly StaffName[];
  /** False leaves out the count. */
  readonly counted?: boolean;
}

/** The places of one system. Pure arithmetic on the notes; fonts are known only by the widths that clefs and signatures need. */
export function systemGeometry(request: SystemRequest): SystemGeometry {
  const bars = request.notation.bars.slice(request.from, request.to);
  const places = horizontal(request, bars);
  const last = places.at(-1);
  const heights = systemHeights(bars, request.notation, request.staves, request.counted ?? true);
  return {
    width: request.width,
    right: last ? last.x + last.width : request.width,
    bars: places,
    ...heights,
    octaveLines: heights.octaveLines.map((line) => ({
      ...line,
      fromX: headX({ bars: places }, line.fromTick),
      toX: headX({ bars: places }, line.lastTick) + NOTE_HEAD,
    })),
  };
}

/** Left edge of a note head at an absolute tick of the system; beyond its ends, the nearest end. */
export function headX(geometry: Pick<SystemGeometry, 'bars'>, tick: number): number {
  const bar = geometry.bars.findLast((place) => place.tick <= tick) ?? geometry.bars[0];
  if (!bar) return 0;
  const inside = Math.min(Math.max(tick - bar.tick, 0), bar.ticks);
  return bar.firstHead + inside * bar.perTick + gapBefore(bar.gaps, inside);
}

/** Index within the system of the bar at a horizontal place, or −1 beside them. */
export const barAtX = (geometry: SystemGeometry, x: number): number =>
  geometry.bars.findIndex((bar) => x >= bar.x && x < bar.x + bar.width);

const keyWidth = (fifths: number): number => (fifths === 0 ? 0 : 8 + 11 * Math.abs(fifths));

function horizontal(request: SystemRequest, bars: readonly NotatedBar[]): BarPlace[] {
  const prefixes = bars.map((bar, i) => {
    const previous = request.notation.bars[request.from + i - 1];
    const showKey = i === 0 || bar.keyChange;
    const cancelled = i > 0 && bar.fifths === 0 ? keyWidth(previous?.fifths ?? 0) : 0;
    const gaps = signGaps(bar);
    return {
      gaps,
      extra: gaps.reduce((sum, gap) => sum + gap.extra, 0),
      clef: i === 0 ? 40 : 0,
      key: showKey ? keyWidth(bar.fifths) + cancelled : 0,
      meter: bar.meterChange ? 28 : 0,
      showKey,
      ...repeats(request, request.from + i),
    };
  });
  const share = (bar: NotatedBar): number => Math.max(0.5, bar.ticks / fullBar(request.notation));
  const taken = MARGIN + prefixes.reduce((sum, p) => sum + p.clef + p.key + p.meter + p.start + p.end + p.extra, 0);
  const shares = Math.max(
    request.perSystem,
    bars.reduce((sum, bar) => sum + share(bar), 0),
  );
  const unit = (request.width - taken - 1) / shares;
  let x = MARGIN;
  return bars.map((bar, i): BarPlace => {
    const prefix = prefixes[i] ?? { gaps: [], extra: 0, clef: 0, key: 0, meter: 0, showKey: false, start: 0, end: 0 };
    const before = prefix.clef + prefix.key + prefix.meter + prefix.start;
    const notes = unit * share(bar);
    const width = before + notes + prefix.extra + prefix.end;
    const noteStart = x + before;
    const place: BarPlace = {
      x,
      width,
      noteStart,
      firstHead: noteStart + LEAD_IN,
      perTick: (notes - LEAD_IN - LEAD_OUT) / bar.ticks,
      gaps: prefix.gaps,
      repeatStart: prefix.start > 0,
      repeatEnd: prefix.end > 0,
      tick: bar.tick,
      ticks: bar.ticks,
      showClef: i === 0,
      showKey: prefix.showKey,
      showMeter: prefix.meter > 0,
    };
    x += width;
    return place;
  });
}

function repeats(request: SystemRequest, at: number): { start: number; end: number } {
  const { ends, bars } = request.notation;
  const round = ends === 'repeat';
  return {
    start: (round && at === 0) || bars[at]?.repeat.start ? REPEAT_SIGN : 0,
    end: (round && at === bars.length - 1) || (bars[at]?.repeat.end ?? null) !== null ? REPEAT_SIGN : 0,
  };
}

const fullBar = (notation: Notation): number => Math.max(...notation.bars.map((bar) => bar.ticks), 1);
