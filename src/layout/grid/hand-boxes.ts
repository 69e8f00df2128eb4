import type { BassStroke, PianoStroke } from '../../vocabulary';
import { printedNote } from '../../words/spoken';
import type { NoteMark } from './cards';
import type { Lettering } from './chord-places';
import { CAP, type ContourScale, innerY, isOuter, outerY, spread } from './contour';
import { type Frame, middleOf } from './frame';
import { fittedLine } from './type-run';

/** A rectangle in a panel, in units. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
/** A rectangle with a note name in it. */
export type NamedBox = Box & { readonly lettering: Lettering };

/** A stroke of the piano: named blocks (outer notes), a cap (the upper end of an octave), beads (inner notes), tails (what rings on). */
export interface HandBox {
  readonly mark: NoteMark<PianoStroke>;
  readonly centre: number;
  readonly blocks: readonly NamedBox[];
  readonly cap: Box | null;
  readonly stem: { readonly top: number; readonly bottom: number } | null;
  readonly beads: readonly NamedBox[];
  readonly tails: readonly Box[];
}

/** A bass note as a pill, flat at an end where it comes from or goes to another panel; its name stands where it is struck. */
export interface BassBox {
  readonly mark: NoteMark<BassStroke>;
  readonly box: Box;
  readonly flatLeft: boolean;
  readonly flatRight: boolean;
  readonly lettering: Lettering | null;
}

/** Half the width of a cap, and of the narrowest block. */
const HALF = 22;
/** The same where sixteenths stand half a cell apart. */
const CROWDED_HALF = 17;

/** What room a stroke of a hand has: its cell, and whether another stroke stands within a step of it. */
export interface HandRoom {
  readonly cell: number;
  readonly crowded: boolean;
}

/** True where another stroke of the hand is struck less than a step away: sixteenths. */
export const isCrowded = (mark: NoteMark, marks: readonly NoteMark[]): boolean =>
  marks.some((other) => other !== mark && other.step !== mark.step && Math.abs(other.step - mark.step) < 1);

/** From the middle of capitals to their baseline, as a share of the type size. */
const TO_BASELINE = 0.345;

/** A right-hand stroke in its lane. An octave is a bracket of one height, notes struck with it stand beside it; other notes stand at heights of their own. */
export function rightBox(mark: NoteMark<PianoStroke>, room: HandRoom, frame: Frame, scale: ContourScale, panelSteps: number): HandBox {
  const { stroke } = mark;
  const { cell } = room;
  const half = room.crowded ? CROWDED_HALF : HALF;
  const centre = (mark.step + 0.5) * cell;
  const low = stroke.midi[0] ?? 60;
  const high = stroke.midi.at(-1) ?? low;
  const outer = isOuter(stroke);
  const octave = outer && high - low >= 12;
  const lowY = outer ? outerY(scale, low) : innerY(scale, low);
  const rise = (midi: number) => (scale.bracket * (midi - low)) / 12;
  const highY = octave ? lowY - rise(high) : lowY;
  const inside = stroke.midi
    .map((midi, at) => ({ midi, name: stroke.names[at] ?? '' }))
    .filter(({ midi }) => !outer || (midi !== low && !(octave && midi === high)));
  const heights = spread(
    inside.map(({ midi }) => (outer ? lowY - rise(midi) : innerY(scale, midi))),
    frame.type.mark + 1,
  );
  // A small hand's notes stand as close as a third: beside the block then, so that its name can be read.
  const close = outer && heights.some((y) => Math.abs(y - lowY) < frame.type.mark);
  const aside = octave || close ? (mark.step >= panelSteps - 1 ? -1 : 1) : 0;
  const name = (y: number, text: string) =>
    named(centre, y, frame.type.mark, printedNote(text), frame.type.note, room.crowded ? 2 * half - 4 : cell - 28, half);
  const struck = !mark.ringsIn;
  return {
    mark,
    centre,
    blocks: outer && struck ? [name(lowY, stroke.names[0] ?? '')] : [],
    cap: octave && struck ? { x: centre - half, y: highY - CAP / 2, width: 2 * half, height: CAP } : null,
    stem: octave && struck ? { top: highY, bottom: lowY } : null,
    beads: struck ? inside.map((note, at) => shifted(name(heights[at] ?? lowY, note.name), aside)) : [],
    tails: tails(mark, cell, octave ? [highY, lowY] : outer ? [lowY] : heights),
  };
}

/** A bead beside the bracket, for chords that are struck with their octave: to the right (1), to the left (-1), or where it is (0). */
function shifted(bead: NamedBox, aside: -1 | 0 | 1): NamedBox {
  const by = aside * (HALF + bead.width / 2 + 2);
  return { ...bead, x: bead.x + by, lettering: { ...bead.lettering, x: bead.lettering.x + by } };
}

/** The lowest and highest note that the left hand has at its bottom. */
export interface LeftRange {
  readonly low: number;
  readonly high: number;
}

/** A left-hand stroke in its own lane: its lowest note gives the height, its names stand in one chip. */
export function leftBox(mark: NoteMark<PianoStroke>, { cell, crowded }: HandRoom, frame: Frame, range: LeftRange): HandBox {
  const half = crowded ? CROWDED_HALF : HALF;
  const centre = (mark.step + 0.5) * cell;
  const chip = frame.type.mark + 3;
  const slope = Math.min(4, (frame.lanes.left.height - chip - 4) / Math.max(1, range.high - range.low));
  const low = mark.stroke.midi[0] ?? range.low;
  const y = middleOf(frame, 'left') - (low - (range.low + range.high) / 2) * slope;
  const letters = [...new Set(mark.stroke.names.map(printedNote))].join(' ');
  const blocks = mark.ringsIn ? [] : [named(centre, y, chip, letters, frame.type.note, crowded ? 2 * half - 4 : cell - 18, half)];
  return { mark, centre, blocks, cap: null, stem: null, beads: [], tails: tails(mark, cell, [y]) };
}

/** A bass note from where it is struck to where it ends. One that rings in is `named` where the card begins. */
export function bassBox(mark: NoteMark<BassStroke>, cell: number, frame: Frame, named: boolean): BassBox {
  const lane = frame.lanes.bass;
  const from = mark.ringsIn ? 0 : mark.step * cell + 6;
  const end = (mark.step + mark.steps) * cell;
  const to = mark.ringsOut ? Math.min(end, frame.width) : end - 6;
  const box = { x: from, y: lane.top + 3, width: Math.max(10, to - from), height: lane.height - 9 };
  const silent = mark.ringsIn && (box.width < cell || !named);
  const line = fittedLine(printedNote(mark.stroke.names[0] ?? ''), frame.type.note, Math.max(20, box.width - 20), 14);
  const lettering = silent ? null : { ...line, x: from + 16, y: box.y + box.height / 2 + line.size * TO_BASELINE };
  return { mark, box, flatLeft: mark.ringsIn, flatRight: mark.ringsOut, lettering };
}

function named(centre: number, y: number, height: number, text: string, size: number, room: number, half: number): NamedBox {
  const line = fittedLine(text, size, room, size * (half < HALF ? 0.5 : 0.7));
  const width = Math.max(2 * half, line.width + (half < HALF ? 4 : 14));
  const lettering = { ...line, x: centre - line.width / 2, y: y + line.size * TO_BASELINE };
  return { x: centre - width / 2, y: y - height / 2, width, height, lettering };
}

/** What rings on after a stroke of more than a step, and what rings in from the panel before. */
function tails(mark: NoteMark, cell: number, heights: readonly number[]): readonly Box[] {
  if (mark.steps <= 1 && !mark.ringsIn) return [];
  const from = Math.max(0, (mark.step + 0.5) * cell);
  const to = Math.max(from + 4, (mark.step + mark.steps) * cell - 10);
  return heights.map((y) => ({ x: from, y: y - 5, width: to - from, height: 10 }));
}
