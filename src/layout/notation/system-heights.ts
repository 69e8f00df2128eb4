/** How high the rows of one system stand, in staff units (ten to the space between two lines of a staff). */
import { eventReach } from './event-marks';
import { isLine, type NotatedBar, type Notation, type PitchedStaff, STAVES, type StaffName } from './notation';

/** Height of a staff of five lines. */
export const STAFF_HEIGHT = 40;
/** What ties and bar lines need outside the notes at least. */
const CLEARANCE = 9;
/** Heights of the rows of text over the staves, and of the brackets of endings. */
const ENDING_ROOM = 19;
const CHORD_ROOM = 22;
const COUNT_ROOM = 17;
/** Room of an octave line, outside everything else on its staff. */
const OCTAVE_LINE_ROOM = 15;

/** Least space over each staff. */
const GAPS: Readonly<Record<StaffName, number>> = { clave: 2, rhythm: 4, right: 2, left: 6, bass: 6 };

/** One stretch of an octave line in a system. */
export interface OctaveLine {
  readonly staff: PitchedStaff;
  readonly octaves: number;
  /** First and last note under it, absolute ticks. */
  readonly fromTick: number;
  readonly lastTick: number;
  /** False where it goes on from the system before or into the next. */
  readonly opens: boolean;
  readonly closes: boolean;
  /** Height of the dashed line. */
  readonly y: number;
}

/** The rows of a system. `lines` holds the top line of each staff, of the clave its only line; texts stand on their baselines. */
export interface SystemHeights {
  readonly height: number;
  /** Top of the brackets of endings; null without any. */
  readonly endingY: number | null;
  readonly labelY: number;
  readonly chordY: number;
  /** Null where nothing is counted. */
  readonly countY: number | null;
  readonly lines: Readonly<Partial<Record<StaffName, number>>>;
  readonly octaveLines: readonly OctaveLine[];
}

/** The heights of a system of these bars with these staves. */
export function systemHeights(
  bars: readonly NotatedBar[],
  notation: Notation,
  staves: readonly StaffName[],
  counted: boolean,
): SystemHeights {
  const endings = bars.some((bar) => bar.ending !== null);
  const labelY = 15 + (endings ? ENDING_ROOM : 0);
  const chordY = labelY + CHORD_ROOM;
  const countY = counted ? chordY + COUNT_ROOM : null;
  let y = (countY ?? chordY) + (counted ? 2 : 6);
  const lines: Partial<Record<StaffName, number>> = {};
  const octaveLines: OctaveLine[] = [];
  let below = 0;
  for (const staff of STAVES) {
    if (!staves.includes(staff)) continue;
    const reach = staffReach(bars, staff, notation);
    const runs = isLine(staff) ? [] : octaveRuns(bars, staff, notation);
    const above = reach.above + (runs.some((run) => run.octaves > 0) ? OCTAVE_LINE_ROOM : 0);
    const gap = GAPS[staff];
    const line = y + below + gap + above;
    lines[staff] = line;
    for (const run of runs)
      octaveLines.push({ ...run, y: run.octaves > 0 ? line - reach.above - 5 : line + STAFF_HEIGHT + reach.below + 5 });
    y = line + (isLine(staff) ? 0 : STAFF_HEIGHT);
    below = reach.below + (runs.some((run) => run.octaves < 0) ? OCTAVE_LINE_ROOM : 0);
  }
  return { endingY: endings ? 5 : null, labelY, chordY, countY, lines, octaveLines, height: Math.ceil(y + below + 3) };
}

/** How far a staff's notes and their marks reach above its top line and below its bottom line. */
function staffReach(bars: readonly NotatedBar[], staff: StaffName, notation: Notation): { above: number; below: number } {
  if (isLine(staff)) return { above: staff === 'clave' ? 31 : 41, below: 14 };
  let above: number = CLEARANCE;
  let below: number = CLEARANCE;
  for (const event of bars.flatMap((bar) => bar.staves[staff].events)) {
    const ends = eventReach(event, notation.clefs[staff], fingersGo(staff));
    if (!ends) continue;
    above = Math.max(above, -ends.from);
    below = Math.max(below, ends.to - STAFF_HEIGHT);
  }
  return { above, below };
}

/** Fingers stand outside the grand staff. */
export const fingersGo = (staff: PitchedStaff): 'over' | 'under' => (staff === 'left' ? 'under' : 'over');

/** The notes of a system in runs under one octave line. */
function octaveRuns(bars: readonly NotatedBar[], staff: PitchedStaff, notation: Notation): Omit<OctaveLine, 'y'>[] {
  const notes = (among: readonly NotatedBar[]) =>
    among.flatMap((bar) =>
      bar.staves[staff].events
        .filter((event) => event.kind === 'notes')
        .map((event) => ({ tick: bar.tick + event.tick, octaves: event.octaves })),
    );
  const at = notation.bars.indexOf(bars[0] as NotatedBar);
  const before = notes(notation.bars.slice(Math.max(0, at - 1), at)).at(-1)?.octaves ?? 0;
  const after = notes(notation.bars.slice(at + bars.length, at + bars.length + 1))[0]?.octaves ?? 0;
  const runs: { octaves: number; fromTick: number; lastTick: number }[] = [];
  let last = 0;
  for (const { tick, octaves } of notes(bars)) {
    const run = runs.at(-1);
    if (octaves !== 0 && run && last === octaves) run.lastTick = tick;
    else if (octaves !== 0) runs.push({ octaves, fromTick: tick, lastTick: tick });
    last = octaves;
  }
  return runs.map((run, i) => ({
    staff,
    ...run,
    opens: !(i === 0 && before === run.octaves && run.fromTick === notes(bars)[0]?.tick),
    closes: !(i === runs.length - 1 && after === run.octaves && last === run.octaves),
  }));
}
