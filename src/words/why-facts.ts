import type { SoundingBar } from '../music/chart/chart';
import {
  assert,
  type BassRole,
  countLeading,
  type Degree,
  type Device,
  type LineName,
  type PianoRole,
  type Side,
  type Stroke,
  type StrokeReason,
} from '../vocabulary';
import { printedChord, printedNote } from './spoken';

/** A note of a stroke as the sentence names it. */
export interface WhyNote {
  /** Printed without octave: `G♯`. */
  readonly note: string;
  readonly degree: Degree;
}

/** What the sentence about a stroke says, in no language yet. Bars count from 1. */
export interface WhyFacts {
  readonly role: PianoRole | BassRole;
  /** The note that is doubled at the octave, or the only one; null for two or more notes that are not doubled. */
  readonly outer: WhyNote | null;
  /** The notes besides `outer`. */
  readonly inner: readonly WhyNote[];
  readonly chord: string;
  readonly move: { readonly semitones: number; readonly from: WhyNote; readonly fromChord: string } | null;
  readonly step: number;
  readonly sixEight: boolean;
  readonly side: Side;
  /** How early the chord is taken and where it is written: `bar` is null in the stroke's own bar, `again` when the loop has gone round. */
  readonly lead: { readonly ticks: number; readonly bar: number | null; readonly again: boolean } | null;
  readonly claveStroke: StrokeReason['claveStroke'];
  readonly line: LineName | null;
  readonly device: Device | null;
  /** Semitones by which the device moved the stroke. */
  readonly lift: number;
  readonly fallback: StrokeReason['fallback'];
  readonly firstPassOnly: boolean;
  /** True when the player has changed it by hand. */
  readonly edited: boolean;
}

/** What there is to say about a stroke. `bars` are the bars of its score. Throws when no bar holds the stroke. */
export function whyFacts(stroke: Stroke, bars: readonly SoundingBar[]): WhyFacts {
  const bar = barAt(bars, stroke.tick);
  assert(bar, `no bar holds a stroke at tick ${stroke.tick}`);
  const { outer, inner } = shape(stroke);
  const { move, anticipatesBar, anticipatesWithinBar, step, side, claveStroke, fallback } = stroke.reason;
  const otherBar = anticipatesBar === null || anticipatesWithinBar || anticipatesBar === bar.index ? null : anticipatesBar;
  return {
    role: stroke.role,
    outer,
    inner,
    chord: printedChord(stroke.chord),
    move: move && {
      semitones: move.semitones,
      from: { note: printedNote(move.fromName), degree: move.fromDegree },
      fromChord: printedChord(move.fromChord),
    },
    step,
    sixEight: isSixEight(bar),
    side,
    lead:
      stroke.leadTicks === 0
        ? null
        : { ticks: stroke.leadTicks, bar: otherBar === null ? null : otherBar + 1, again: otherBar !== null && otherBar < bar.index },
    claveStroke,
    line: stroke.line,
    device: stroke.device,
    lift: stroke.lift,
    fallback,
    firstPassOnly: stroke.firstPassOnly,
    edited: stroke.edited === true,
  };
}

/** The bar that holds a tick. */
function barAt(bars: readonly SoundingBar[], tick: number): SoundingBar | undefined {
  const bar = bars[countLeading(bars, ({ tick: from }) => from <= tick) - 1];
  return bar && tick < bar.tick + bar.ticks ? bar : undefined;
}

/** Bars of 6/8 are 1440 ticks, or 720 when halved; no bar of 4/4 is. */
const isSixEight = (bar: SoundingBar): boolean => bar.ticks % 720 === 0 && bar.ticks % 960 !== 0;

function shape(stroke: Stroke): Pick<WhyFacts, 'outer' | 'inner'> {
  const notes = stroke.names.map((name, index): WhyNote => {
    const degree = stroke.degrees[index];
    assert(degree, `a stroke has a degree for each note, missing for ${name}`);
    return { note: printedNote(name), degree };
  });
  const [first] = notes;
  assert(first, `a stroke has at least one note, at tick ${stroke.tick}`);
  const doubled = notes.length > 1 && first.note === notes.at(-1)?.note;
  if (notes.length === 1 || doubled) return { outer: first, inner: notes.slice(1, -1) };
  return { outer: null, inner: notes };
}
