import type { Stroke } from '../../vocabulary';
import type { Articulation, NotatedEvent } from './notation';
import { type BarFrame, noteValues, restValues, WRITTEN_GRID } from './note-values';
import { type WrittenPitch, writtenPitch } from './written-pitch';

/** What stands over a note, taken from its stroke. */
export interface SpanMarks {
  readonly octaves: number;
  readonly articulations: readonly Articulation[];
  readonly fingers: readonly number[];
}
/** Nothing over it. */
export const NO_MARKS: SpanMarks = { octaves: 0, articulations: [], fingers: [] };

/** A note or chord with a beginning and an end, absolute written ticks on the written grid; ends never pass the next beginning. */
export interface Span extends SpanMarks {
  readonly from: number;
  readonly to: number;
  readonly pitches: readonly WrittenPitch[];
  readonly firstPassOnly: boolean;
  /** The first of the strokes it was made from; missing for the clave. */
  readonly stroke?: Stroke;
  /** Its notated length goes on past the last tick. */
  readonly ringsOn: boolean;
}

/** An event before signs, stems and beams are known. */
export type PlainEvent = Omit<NotatedEvent, 'pitches' | 'stem'> & { readonly pitches: readonly WrittenPitch[] };

/** Strokes of one staff as spans: strokes at one tick become one chord, each ends where the next begins or at `scoreEnd`. `scale` is score ticks to a written tick. */
export function spans(strokes: readonly Stroke[], scoreEnd: number, scale: 1 | 2): Span[] {
  const snap = (tick: number): number => Math.round(tick / scale / WRITTEN_GRID) * WRITTEN_GRID;
  const endTick = scoreEnd / scale;
  const starts = new Map<number, Stroke[]>();
  for (const stroke of strokes.toSorted((a, b) => a.tick - b.tick)) {
    const at = snap(stroke.tick);
    if (stroke.midi.length > 0 && at < endTick) starts.set(at, [...(starts.get(at) ?? []), stroke]);
  }
  const ticks = [...starts.keys()];
  return ticks.map((from, i) => {
    const together = starts.get(from) ?? [];
    const end = Math.max(...together.map((stroke) => snap(stroke.tick + stroke.durationTicks)), from + WRITTEN_GRID);
    const pitches = new Map(
      together.flatMap((stroke) => stroke.midi.map((midi, n) => [midi, writtenPitch(stroke.names[n] ?? '', midi)] as const)),
    );
    return {
      from,
      to: Math.min(end, ticks[i + 1] ?? endTick, endTick),
      pitches: [...pitches.values()].toSorted((a, b) => a.midi - b.midi),
      firstPassOnly: together.every((stroke) => stroke.firstPassOnly),
      ringsOn: end > endTick,
      ...NO_MARKS,
      ...(together[0] ? { stroke: together[0] } : {}),
    };
  });
}

/** What stands in one bar of one staff: pieces of the spans, tied where a span goes on, and rests between. Sums to the bar exactly. */
export function barEvents(all: readonly Span[], barTick: number, frame: BarFrame, kind: 'notes' | 'stroke'): PlainEvent[] {
  const barEnd = barTick + frame.ticks;
  const events: PlainEvent[] = [];
  const rest = (from: number, to: number): void => {
    const wholeBar = from === 0 && to === frame.ticks;
    const pieces = wholeBar ? [{ at: 0, ticks: frame.ticks, value: { shape: 'whole', dots: 0 } as const }] : restValues(from, to, frame);
    for (const piece of pieces) events.push({ ...SILENT, tick: piece.at, ticks: piece.ticks, value: piece.value, wholeBar });
  };
  let at = 0;
  for (const span of all) {
    if (span.to <= barTick || span.from >= barEnd) continue;
    const from = Math.max(span.from - barTick, 0);
    const to = Math.min(span.to - barTick, frame.ticks);
    if (from > at) rest(at, from);
    const pieces = noteValues(from, to, frame);
    pieces.forEach((piece, i) => {
      const last = i === pieces.length - 1;
      events.push({
        tick: piece.at,
        ticks: piece.ticks,
        value: piece.value,
        kind,
        pitches: span.pitches,
        tieIn: i > 0 || span.from < barTick,
        tieOut: !last || span.to > barEnd,
        ringsOn: last && span.ringsOn && span.to <= barEnd,
        wholeBar: false,
        firstPassOnly: span.firstPassOnly,
        octaves: span.octaves,
        articulations: i === 0 && span.from >= barTick ? span.articulations : [],
        fingers: i === 0 && span.from >= barTick ? span.fingers : [],
      });
    });
    at = to;
  }
  if (at < frame.ticks) rest(at, frame.ticks);
  return events;
}

const SILENT = {
  ...NO_MARKS,
  kind: 'rest',
  pitches: [],
  tieIn: false,
  tieOut: false,
  ringsOn: false,
  wholeBar: false,
  firstPassOnly: false,
} as const;
