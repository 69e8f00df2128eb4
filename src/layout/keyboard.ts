/**
 * The hand strip: a keyboard around the figure, and for every stroke the hand's shape now and next, with what stays and what
 * moves. Numbers only; the screen lights the keys.
 */
import type { Score } from '../music/score';
import { countLeading, type Degree, type PianoStroke } from '../vocabulary';
import { SHAPE_WORDS } from '../words/hand-shape';
import { printedNote, SPOKEN } from '../words/spoken';

/** One key of the keyboard, in units of the drawing. */
export interface Key {
  readonly midi: number;
  readonly black: boolean;
  readonly x: number;
  readonly width: number;
}
/** A keyboard from end to end. */
export interface Keyboard {
  readonly keys: readonly Key[];
  readonly width: number;
  /** Where keys between the hands are left out: the gap drawn for them, or null. */
  readonly gap: { readonly x: number; readonly width: number } | null;
}

const WHITE = new Set([0, 2, 4, 5, 7, 9, 11]);
/** Width of a white key in units of the drawing. */
const WHITE_WIDTH = 44;
/** Width of a black key in units of the drawing. */
const BLACK_WIDTH = 28;
/** Fewest white keys drawn: two octaves and a bit. */
const LEAST_WHITE = 18;

/** White keys between two neighbouring notes from which the keys between are left out. */
const FAR_APART = 9;
const GAP_WIDTH = 36;

/**
 * A keyboard from one white key to another that holds all notes given, a whole tone of air on both sides. Where the hands lie far
 * apart and the whole would be long, the keys between them are left out.
 */
export function keyboardAround(midi: readonly number[]): Keyboard {
  const notes = (midi.length > 0 ? [...new Set(midi)] : [60, 84]).sort((one, other) => one - other);
  let low = whiteAt((notes[0] ?? 60) - 2, -1);
  let high = whiteAt((notes.at(-1) ?? 84) + 2, 1);
  const cut = widestGap(notes);
  if (cut) {
    const left = keysBetween(low, whiteAt(cut.from + 2, 1), 0);
    const right = keysBetween(whiteAt(cut.to - 2, -1), high, left.width + GAP_WIDTH);
    const keys = [...left.keys, ...right.keys];
    if (keys.filter((key) => !key.black).length >= LEAST_WHITE)
      return { keys, width: right.width, gap: { x: left.width, width: GAP_WIDTH } };
  }
  while (whitesBetween(low, high) < LEAST_WHITE) {
    high = whiteAt(high + 1, 1);
    if (whitesBetween(low, high) < LEAST_WHITE) low = whiteAt(low - 1, -1);
  }
  return { ...keysBetween(low, high, 0), gap: null };
}

function keysBetween(low: number, high: number, from: number): Pick<Keyboard, 'keys' | 'width'> {
  const keys: Key[] = [];
  let x = from;
  for (let note = low; note <= high; note++) {
    const white = isWhite(note);
    keys.push({ midi: note, black: !white, x: white ? x : x - BLACK_WIDTH / 2, width: white ? WHITE_WIDTH : BLACK_WIDTH });
    if (white) x += WHITE_WIDTH;
  }
  return { keys, width: x };
}

/** The widest stretch of keys that no note stands in, where it is wide enough to be left out. */
function widestGap(notes: readonly number[]): { readonly from: number; readonly to: number } | null {
  const gaps = notes.slice(1).map((to, at) => ({ from: notes[at] ?? to, to }));
  const widest = gaps.reduce((best, gap) => (gap.to - gap.from > best.to - best.from ? gap : best), { from: 0, to: 0 });
  return whitesBetween(widest.from, widest.to) >= FAR_APART ? widest : null;
}

const isWhite = (midi: number): boolean => WHITE.has(((midi % 12) + 12) % 12);
const whiteAt = (midi: number, step: 1 | -1): number => (isWhite(midi) ? midi : midi + step);
const whitesBetween = (low: number, high: number): number =>
  Array.from({ length: high - low + 1 }, (_, at) => low + at).filter(isWhite).length;

/** What both hands strike at one moment. */
export interface HandShape {
  readonly tick: number;
  readonly right: readonly number[];
  readonly left: readonly number[];
  readonly words: string;
  readonly leftWords: string;
  /** Right-hand notes that its last stroke of the same kind (octave, inner) held too. */
  readonly stays: readonly number[];
  /** Right-hand notes that come from another note of that stroke. */
  readonly moves: readonly { readonly from: number; readonly to: number }[];
  /** `both stay`, `a half step down`, or empty. */
  readonly motion: string;
}

/** The shapes of a score in order of time. In a closed score the first strokes are compared with the last. */
export function handShapes(score: Score): readonly HandShape[] {
  const { rightHand, leftHand } = score.parts;
  const ticks = [...new Set([...rightHand, ...leftHand].map((stroke) => stroke.tick))].sort((one, other) => one - other);
  const right = byTick(rightHand);
  const left = byTick(leftHand);
  const last: { outer: PianoStroke | null; inner: PianoStroke | null } = { outer: null, inner: null };
  if (score.closed) {
    last.outer = rightHand.findLast((stroke) => stroke.role !== 'inner') ?? null;
    last.inner = rightHand.findLast((stroke) => stroke.role === 'inner') ?? null;
  }
  return ticks.map((tick) => {
    const stroke = right.get(tick);
    const low = left.get(tick);
    const kind = stroke?.role === 'inner' ? 'inner' : 'outer';
    const before = stroke ? last[kind] : null;
    if (stroke) last[kind] = stroke;
    const motion = motionOf(before, stroke);
    // Said only when it is shown: a long form has thousands of shapes.
    return {
      tick,
      right: stroke?.midi ?? [],
      left: low?.midi ?? [],
      ...motion,
      get words() {
        return wordsOf(stroke);
      },
      get leftWords() {
        return low ? SPOKEN.list(low.names.map(printedNote)) : '';
      },
      get motion() {
        return stroke && before ? motionSentence(stroke, motion) : '';
      },
    };
  });
}

const byTick = (strokes: readonly PianoStroke[]): ReadonlyMap<number, PianoStroke> =>
  new Map(strokes.map((stroke) => [stroke.tick, stroke]));

function wordsOf(stroke: PianoStroke | undefined): string {
  if (!stroke) return '';
  const degree: Degree | null = stroke.role === 'inner' ? null : (stroke.degrees[0] ?? null);
  return SHAPE_WORDS.shape(stroke.names, degree, stroke.chord);
}

type Motion = Pick<HandShape, 'stays' | 'moves'>;

function motionOf(before: PianoStroke | null, stroke: PianoStroke | undefined): Motion {
  if (!before || !stroke) return { stays: [], moves: [] };
  const stays = stroke.midi.filter((note) => before.midi.includes(note));
  const gone = before.midi.filter((note) => !stays.includes(note));
  const come = stroke.midi.filter((note) => !stays.includes(note));
  const moves = come.flatMap((to, at) => {
    const from = gone.length === come.length ? (gone[at] ?? null) : nearest(gone, to);
    return from === null || Math.abs(to - from) > FARTHEST_MOVE ? [] : [{ from, to }];
  });
  return { stays, moves };
}

/** Of an octave, with or without notes inside, the lower note speaks for all. */
function motionSentence(stroke: PianoStroke, { stays, moves }: Motion): string {
  const spoken = stroke.role === 'inner' ? stroke.midi : stroke.midi.slice(0, 1);
  const nameOf = (midi: number) => stroke.names[stroke.midi.indexOf(midi)] ?? '';
  const came = spoken.filter((note) => !stays.includes(note));
  const named = came.map((note) => {
    const move = moves.find(({ to }) => to === note);
    return { name: nameOf(note), semitones: move ? move.to - move.from : null };
  });
  return SHAPE_WORDS.motion(spoken.filter((note) => stays.includes(note)).map(nameOf), named);
}

/** A note farther than a third from any before it is a new one and comes from nowhere. */
const FARTHEST_MOVE = 4;

function nearest(notes: readonly number[], to: number): number | null {
  return notes.reduce<number | null>((best, note) => (best === null || Math.abs(note - to) < Math.abs(best - to) ? note : best), null);
}

/** Index of the shape that is held at a tick: the last one struck at or before it, or the last of all in a closed score. -1 when nothing was struck yet. */
export function shapeAt(shapes: readonly HandShape[], tick: number, closed: boolean): number {
  const struck = countLeading(shapes, (shape) => shape.tick <= tick);
  return struck > 0 ? struck - 1 : closed ? shapes.length - 1 : -1;
}
