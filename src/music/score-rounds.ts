import { type BassStroke, LONGEST_LEAD_TICKS, type PianoStroke, stepsInCycle, TICKS_PER_STEP } from '../vocabulary';
import type { Form } from './chart/chart';
import type { Score } from './score';

/*
 * One round of an open vamp. While the vamp is held its last beat must lead back to its own first chord and not to what follows, and
 * a fill must wait until it is left. A round is the vamp as it stands in the whole form, so that nothing changes under the player's
 * hands, but for its last quarter note: there the pitched strokes are those of the vamp arranged as a loop of its own, put into the
 * octave that lies nearest to what stands before and after them. Percussion is the loop's throughout: no arrival, no fill.
 */

/** Sounding bars [from, to). */
export interface BarRange {
  readonly fromBar: number;
  readonly toBar: number;
}

/**
 * The bars that go round in each open vamp of a form: of a run of sections `on cue` the shortest end that closes the clave cycle (one
 * pass, two where a pass is odd; of `x4, on cue` the fourth). A vamp that never closes is not held, nor one that is all of a form that
 * goes round anyway.
 */
export function vampRanges(form: Form, closed: boolean): BarRange[] {
  const { visits, bars } = form;
  return visits.flatMap((last, end): BarRange[] => {
    if (!last.onCue || (visits[end + 1]?.onCue && visits[end + 1]?.section === last.section)) return [];
    for (let start = end; start >= 0; start -= 1) {
      const first = visits[start];
      if (!first?.onCue || first.section !== last.section) return [];
      const range = { fromBar: first.fromBar, toBar: last.toBar };
      if (closes(form, range)) return closed && range.fromBar === 0 && range.toBar === bars.length ? [] : [range];
    }
    return [];
  });
}

/** True when the clave runs on without a jump from the last bar to the first. */
function closes({ bars, meter }: Form, { fromBar, toBar }: BarRange): boolean {
  const first = bars[fromBar];
  const last = bars[toBar - 1];
  const cycle = stepsInCycle(meter);
  return (
    first !== undefined &&
    last !== undefined &&
    first.kind !== 'pickup' &&
    (last.cycleStep + last.ticks / TICKS_PER_STEP) % cycle === first.cycleStep
  );
}

/**
 * One round of the vamp that `loop` arranges (`ArrangeOptions.range` over one of the `vampRanges`), as it stands in `whole`, the whole
 * form under the same options: a closed score that leads back to itself.
 */
export function roundOf(whole: Score, loop: Score): Score {
  const seam = loop.toTick - LONGEST_LEAD_TICKS;
  const right = rejoined(whole.parts.rightHand, loop.parts.rightHand, loop.fromTick, seam);
  return {
    ...loop,
    parts: {
      ...loop.parts,
      rightHand: right,
      leftHand: under(right, whole.parts.leftHand, loop, seam),
      bass: rejoined(whole.parts.bass, loop.parts.bass, loop.fromTick, seam),
    },
  };
}

type Pitched = PianoStroke | BassStroke;

/** The strokes of `whole` in [from, seam), then those of `loop` from the seam on, in the octave nearest to their neighbours. */
function rejoined<Kind extends Pitched>(whole: readonly Kind[], loop: readonly Kind[], from: number, seam: number): Kind[] {
  const body = whole.filter(({ tick }) => tick >= from && tick < seam);
  const tail = loop.filter(({ tick }) => tick >= seam);
  return joined(body, tail, octavesToJoin(body, tail, whole));
}

/** The left hand's round: in its own nearest octave, or moved with the right hand where it would come up to it. */
function under(right: readonly PianoStroke[], whole: readonly PianoStroke[], loop: Score, seam: number): PianoStroke[] {
  const left = rejoined(whole, loop.parts.leftHand, loop.fromTick, seam);
  const lowestAt = new Map(right.map(({ tick, midi }) => [tick, Math.min(...midi)]));
  const meets = left.some(({ tick, midi }) => tick >= seam && Math.max(...midi) >= (lowestAt.get(tick) ?? Number.POSITIVE_INFINITY));
  if (!meets) return left;
  const here = right.find(({ tick }) => tick >= seam);
  const there = loop.parts.rightHand.find(({ tick }) => tick >= seam);
  const semitones = here && there ? (here.midi[0] ?? 0) - (there.midi[0] ?? 0) : 0;
  return joined(
    left.filter(({ tick }) => tick < seam),
    loop.parts.leftHand.filter(({ tick }) => tick >= seam),
    semitones,
  );
}

function joined<Kind extends Pitched>(body: readonly Kind[], tail: readonly Kind[], semitones: number): Kind[] {
  const moved = tail.map((stroke) => ({
    ...stroke,
    midi: stroke.midi.map((note) => note + semitones),
    names: stroke.names.map((name) => inOctave(name, semitones / 12)),
  }));
  const strokes = [...body, ...moved];
  const firstOfTail = strokes.findIndex((stroke, index) => index >= body.length && stroke.reason.move !== null);
  const firstOfBody = body.findIndex(({ firstPassOnly, reason }) => !firstPassOnly && reason.move !== null);
  return strokes.map((stroke, index) =>
    index === firstOfTail
      ? cameFrom(stroke, outer(body).at(-1))
      : index === firstOfBody
        ? cameFrom(stroke, outer(moved).at(-1) ?? outer(body).at(-1))
        : stroke,
  );
}

/** Whole octaves, in semitones, that bring the tail nearest to the strokes before and after it, within what the part sounds anyway. */
function octavesToJoin<Kind extends Pitched>(body: readonly Kind[], tail: readonly Kind[], part: readonly Kind[]): number {
  const before = outer(body).at(-1);
  const after = outer(body).find(({ firstPassOnly }) => !firstPassOnly);
  const [first, last] = [outer(tail)[0], outer(tail).at(-1)];
  if (!before || !after || !first || !last) return 0;
  const extent = (strokes: readonly Kind[]) =>
    strokes.reduce((range, { midi }) => ({ low: Math.min(range.low, ...midi), high: Math.max(range.high, ...midi) }), {
      low: 127,
      high: 0,
    });
  const [mine, all] = [extent(tail), extent(part)];
  const leap = (semitones: number) => Math.abs(low(first) + semitones - low(before)) + Math.abs(low(after) - low(last) - semitones);
  const fits = (semitones: number) => semitones === 0 || (mine.low + semitones >= all.low && mine.high + semitones <= all.high);
  return [0, 12, -12, 24, -24].filter(fits).reduce((best, semitones) => (leap(semitones) < leap(best) ? semitones : best));
}

/** The strokes that carry a part's outer line, or all of them where none does. */
function outer<Kind extends Pitched>(strokes: readonly Kind[]): readonly Kind[] {
  const line = strokes.filter(({ role }) => role !== 'inner' && role !== 'approach');
  return line.length > 0 ? line : strokes;
}

const low = ({ midi }: Pitched): number => Math.min(...midi);

function cameFrom<Kind extends Pitched>(stroke: Kind, before: Kind | undefined): Kind {
  const [fromName, fromDegree] = [before?.names[0], before?.degrees[0]];
  if (before === undefined || fromName === undefined || fromDegree === undefined) return stroke;
  const move = { semitones: low(stroke) - low(before), fromName, fromDegree, fromChord: before.chord };
  return { ...stroke, reason: { ...stroke.reason, move } };
}

/** `Eb4` two octaves up is `Eb6`. */
const inOctave = (name: string, octaves: number): string => name.replace(/-?\d+$/, (octave) => String(Number(octave) + octaves));
