import type { BassStroke, PianoStroke } from '../../vocabulary';
import { chordText, noteLetter } from '../../words/grid';
import type { ChordMark, NoteMark, Panel } from './cards';
import { BLOCK, type ContourScale, innerY, isOuter, outerY, spread } from './contour';
import { cellWidth, type Frame } from './frame';
import { fittedLine, type TypeLine } from './type-run';

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
export interface Point {
  readonly x: number;
  readonly y: number;
}
/** A line of type at its place: `x` is its left end, `y` its baseline. */
export interface Lettering extends TypeLine {
  readonly x: number;
  readonly y: number;
  readonly size: number;
}

/** A chord symbol, and the tie to where it is written: an arc from `from` to `to`, cut by the panel's edge when it leads into the next panel. */
export interface ChordBox {
  readonly mark: ChordMark;
  readonly lettering: Lettering;
  /** From the symbol down to the cell in which it is struck, when the symbol does not stand over that cell's left half. */
  readonly tie: { readonly from: Point; readonly to: Point } | null;
}
/** A stroke of the piano: blocks (the ends of an octave), beads (inner notes), tails (what rings on). */
export interface HandBox {
  readonly mark: NoteMark<PianoStroke>;
  readonly centre: number;
  readonly blocks: readonly (Box & { readonly lettering: Lettering })[];
  readonly beads: readonly (Box & { readonly lettering: Lettering })[];
  readonly stem: { readonly top: number; readonly bottom: number } | null;
  readonly tails: readonly Box[];
}
export interface BassBox {
  readonly mark: NoteMark<BassStroke>;
  readonly box: Box;
  /** Flat ends where it comes from or goes to another panel. */
  readonly flatLeft: boolean;
  readonly flatRight: boolean;
  readonly lettering: Lettering | null;
}
/** Everything drawn in a panel's lanes, in units. */
export interface PanelBoxes {
  readonly frame: Frame;
  readonly cell: number;
  readonly chords: readonly ChordBox[];
  readonly diamonds: readonly Point[];
  readonly right: readonly HandBox[];
  readonly left: readonly HandBox[];
  readonly bass: readonly BassBox[];
  /** The octave line, from the outer note before the panel to the one after it; points may lie outside the panel. */
  readonly line: readonly Point[];
  readonly hits: readonly (Point & { readonly held: boolean })[];
}

/** The panels before and after, as they sound: the octave line comes from one and goes to the other. */
export interface Neighbours {
  readonly before: Panel | null;
  readonly after: Panel | null;
}

/** All boxes of a panel. `showEchoes` repeats chords that were taken early, lighter, where they are written. */
export function panelBoxes(
  panel: Panel,
  frame: Frame,
  scale: ContourScale,
  leftRange: { readonly low: number; readonly high: number },
  neighbours: Neighbours,
  showEchoes: boolean,
): PanelBoxes {
  const cell = cellWidth(frame, panel.fullSteps);
  const centre = (step: number) => (step + 0.5) * cell;
  return {
    frame,
    cell,
    chords: chordBoxes(panel, frame, cell, showEchoes),
    diamonds: panel.claveSteps.map((step) => ({ x: centre(step), y: middle(frame, 'clave') })),
    right: panel.right.map((mark) =>
      handBox(mark, cell, frame, (midi, outer) => (outer ? outerY(scale, midi) : innerY(scale, midi)), scale.bracket),
    ),
    left: panel.left.map((mark) => leftBox(mark, cell, frame, leftRange)),
    bass: panel.bass.map((mark) => bassBox(mark, cell, frame)),
    line: lineOf(panel, neighbours, scale, cell),
    hits: panel.hits.map((hit) => ({ x: centre(hit.step), y: middle(frame, 'clave'), held: hit.held })),
  };
}

const middle = (frame: Frame, lane: keyof Frame['lanes']): number => frame.lanes[lane].top + frame.lanes[lane].height / 2;

/** The panel's right edge for drawing: a short bar ends where its steps end. */
const edgeOf = (panel: { readonly steps: number }, cell: number): number => panel.steps * cell;

function chordBoxes(panel: Panel, frame: Frame, cell: number, showEchoes: boolean): readonly ChordBox[] {
  const lane = frame.lanes.chords;
  const edge = edgeOf(panel, cell);
  const shown = panel.chords.filter((mark) => mark.kind !== 'echo' || showEchoes || mark.step > 0);
  return shown.map((mark, at) => {
    const size = mark.kind === 'played' ? frame.type.chord : frame.type.chord * 0.82;
    const next = shown[at + 1];
    const left = mark.step * cell + 10;
    const room = Math.max(cell, (next ? next.step * cell : edge) - left - 8);
    const line = fittedLine(chordText(mark.symbol), size, next ? room : Math.max(room, edge * 0.45), size * 0.55);
    const x = Math.min(left, edge - line.width - 8);
    const baseline = lane.top + lane.height - 13;
    const from = { x: Math.max(x + 6, mark.step * cell + cell / 2 - 8), y: baseline + 8 };
    const tie =
      mark.tieTo === null ? null : { from, to: { x: mark.tieTo * cell + (mark.tieTo >= panel.steps ? 26 : 20), y: baseline + 8 } };
    return { mark, lettering: { ...line, x, y: baseline }, tie };
  });
}

type Height = (midi: number, outer: boolean) => number;

function handBox(mark: NoteMark<PianoStroke>, cell: number, frame: Frame, height: Height, bracket: number): HandBox {
  const { stroke } = mark;
  const centre = (mark.step + 0.5) * cell;
  const low = stroke.midi[0] ?? 60;
  const high = stroke.midi.at(-1) ?? low;
  const outer = isOuter(stroke);
  const octave = outer && high - low >= 12;
  const lowY = height(low, outer);
  const highY = octave ? lowY - (bracket * (high - low)) / 12 : lowY;
  const inside = stroke.midi
    .map((midi, at) => ({ midi, name: stroke.names[at] ?? '' }))
    .filter(({ midi }) => !(outer && (midi === low || (octave && midi === high))));
  const wanted = inside.map(({ midi }) => (octave ? lowY - (bracket * (midi - low)) / 12 : height(midi, false)));
  const ys = spread(wanted, BLOCK);
  const blocks = outer
    ? octave
      ? [
          { y: highY, name: stroke.names.at(-1) ?? '' },
          { y: lowY, name: stroke.names[0] ?? '' },
        ]
      : [{ y: lowY, name: stroke.names[0] ?? '' }]
    : [];
  const lettered = (y: number, name: string) => {
    const line = fittedLine(noteLetter(name), frame.type.note, 46, frame.type.note * 0.7);
    const width = Math.max(42, line.width + 16);
    return {
      x: centre - width / 2,
      y: y - BLOCK / 2 + 1,
      width,
      height: BLOCK - 2,
      lettering: { ...line, x: centre - line.width / 2, y: y + line.size * 0.345 },
    };
  };
  const tailed = blocks.length > 0 ? blocks.map(({ y }) => y) : ys;
  return {
    mark,
    centre,
    blocks: mark.ringsIn ? [] : blocks.map(({ y, name }) => lettered(y, name)),
    beads: mark.ringsIn ? [] : inside.map(({ name }, at) => lettered(ys[at] ?? lowY, name)),
    stem: octave && !mark.ringsIn ? { top: highY, bottom: lowY } : null,
    tails: mark.steps > 1 || mark.ringsIn ? tailed.map((y) => tail(mark, cell, y)) : [],
  };
}

function tail(mark: NoteMark, cell: number, y: number): Box {
  const from = Math.max(0, (mark.step + 0.5) * cell);
  const to = Math.max(from + 4, (mark.step + mark.steps) * cell - 10);
  return { x: from, y: y - 5, width: to - from, height: 10 };
}

/** The left hand in its own lane: its lowest note gives the height, its names stand in one chip. */
function leftBox(mark: NoteMark<PianoStroke>, cell: number, frame: Frame, range: { readonly low: number; readonly high: number }): HandBox {
  const lane = frame.lanes.left;
  const chip = 36;
  const centre = (mark.step + 0.5) * cell;
  const slope = Math.min(4, (lane.height - chip - 4) / Math.max(1, range.high - range.low));
  const low = mark.stroke.midi[0] ?? range.low;
  const y = middle(frame, 'left') - (low - (range.low + range.high) / 2) * slope;
  const letters = [...new Set(mark.stroke.names.map(noteLetter))].join(' ');
  const line = fittedLine(letters, frame.type.note, cell - 18, frame.type.note * 0.7);
  const width = Math.max(46, line.width + 14);
  const chips = mark.ringsIn
    ? []
    : [
        {
          x: centre - width / 2,
          y: y - chip / 2,
          width,
          height: chip,
          lettering: { ...line, x: centre - line.width / 2, y: y + line.size * 0.345 },
        },
      ];
  return { mark, centre, blocks: chips, beads: [], stem: null, tails: mark.steps > 1 || mark.ringsIn ? [tail(mark, cell, y)] : [] };
}

function bassBox(mark: NoteMark<BassStroke>, cell: number, frame: Frame): BassBox {
  const lane = frame.lanes.bass;
  const from = mark.ringsIn ? 0 : mark.step * cell + 6;
  const end = (mark.step + mark.steps) * cell;
  const to = mark.ringsOut ? Math.min(end, frame.width) : end - 6;
  const box = { x: from, y: lane.top + 4, width: Math.max(10, to - from), height: lane.height - 10 };
  const line = fittedLine(noteLetter(mark.stroke.names[0] ?? ''), frame.type.note, Math.max(20, box.width - 20), 14);
  const lettering =
    mark.ringsIn && (box.width < cell || !frame.stacked) ? null : { ...line, x: from + 18, y: box.y + box.height / 2 + line.size * 0.345 };
  return { mark, box, flatLeft: mark.ringsIn, flatRight: mark.ringsOut, lettering };
}

function lineOf(panel: Panel, { before, after }: Neighbours, scale: ContourScale, cell: number): readonly Point[] {
  const outers = (of: Panel) => of.right.filter((mark) => !mark.ringsIn && isOuter(mark.stroke));
  const point = (mark: NoteMark<PianoStroke>, shift: number): Point => ({
    x: (mark.step + 0.5 + shift) * cell,
    y: outerY(scale, mark.stroke.midi[0] ?? 60),
  });
  const own = outers(panel);
  if (own.length === 0) return [];
  const previous = before && outers(before).at(-1);
  const following = after && outers(after)[0];
  return [
    ...(previous ? [point(previous, -before.steps)] : []),
    ...own.map((mark) => point(mark, 0)),
    ...(following ? [point(following, panel.steps)] : []),
  ];
}
