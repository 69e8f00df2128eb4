import { type ClaveKind, type PianoRole, type PianoStroke, TICKS_PER_STEP } from '../../vocabulary';
import { strokeName } from '../clave/patterns';
import { stepFromThreeSide } from '../harmony/bar-steps';
import { barAt, type HarmonicTimeline, silenceAfter } from '../harmony/timeline';
import { diatonicPcs, nameInKey } from '../pitch/key';
import { degreeName, mod12, simplestName, spellMidi } from '../pitch/spell';
import type { PlannedStroke } from './plan';
import type { ShapeNote } from './shapes';
import type { Sketch } from './sketch';

/** Loudness, 1 to 127: octaves above inner notes, accents on 1 of the 2-side and on the & of 4 (Keyboard Magazine, 2017; numbers from memory). */
const VELOCITY: Readonly<Record<PianoRole, number>> = { octave: 92, chord: 88, single: 84, approach: 80, inner: 74 };
const ACCENT = 12;
/** A short stroke sounds for three quarters of its eighth; a ringing one until just before the next. */
const SHORT_TICKS = 180;
const GAP_TICKS = 24;
/** The longest a stroke rings by itself, and a held hit. */
const LONGEST_RING = 960;
const LONGEST_HIT = 1920;

/** What turns sketches into strokes of one hand. */
export interface Placing {
  /** MIDI note of pitch 0 of the sketches. */
  readonly tonicMidi: number;
  readonly timeline: HarmonicTimeline;
  readonly claveKind: ClaveKind;
  /** Lowest and highest key of the instrument, MIDI; notes beyond them are left out. */
  readonly lowest: number;
  readonly highest: number;
}

/** Strokes of a hand that plays `notesOf` each sketch; a sketch that gives no notes is left out. */
export function strokesOf(
  sketches: readonly Sketch[],
  placing: Placing,
  notesOf: (sketch: Sketch, index: number) => readonly ShapeNote[],
  roleOf: (sketch: Sketch) => PianoRole = ({ role }) => role,
): PianoStroke[] {
  const lengths = lengthsOf(sketches, placing.timeline);
  let line: { readonly sketch: Sketch; readonly name: string } | undefined;
  const closing = placing.timeline.closed ? [...sketches].reverse().find(isLine) : undefined;
  if (closing) line = { sketch: closing, name: nameOf(closing, closing.octave, placing) };
  return sketches.flatMap((sketch, index): PianoStroke[] => {
    const notes = notesOf(sketch, index).filter(
      ({ pitch }) => placing.tonicMidi + pitch >= placing.lowest && placing.tonicMidi + pitch <= placing.highest,
    );
    const move = isLine(sketch) && line ? moveFrom(line, sketch) : null;
    if (isLine(sketch)) line = { sketch, name: nameOf(sketch, sketch.octave, placing) };
    if (notes.length === 0) return [];
    const { planned } = sketch;
    const midi = notes.map((note) => placing.tonicMidi + note.pitch);
    const durationTicks = sketch.lengthTicks ?? lengths[index] ?? TICKS_PER_STEP;
    return [
      {
        tick: planned.tick,
        durationTicks,
        soundingTicks:
          rings(planned) || sketch.lengthTicks !== undefined ? durationTicks - GAP_TICKS : Math.min(SHORT_TICKS, durationTicks),
        midi,
        names: notes.map((note, at) => spellMidi(midi[at] ?? 0, nameOf(sketch, note, placing))),
        velocity: Math.max(1, Math.min(127, VELOCITY[sketch.role] + (accented(planned) ? ACCENT : 0) + planned.loudness)),
        role: roleOf(sketch),
        chord: planned.span.symbol,
        degrees: notes.map((note) => note.degree),
        leadTicks: planned.leadTicks,
        lift: sketch.lift,
        line: sketch.line,
        device: sketch.device,
        firstPassOnly: false,
        ...(sketch.edited ? { edited: true as const } : {}),
        reason: {
          step: planned.step,
          side: planned.side,
          anticipatesBar: anticipated(planned, placing.timeline),
          anticipatesWithinBar: planned.leadTicks > 0 && planned.tick + planned.leadTicks < planned.bar.tick + planned.bar.ticks,
          move,
          claveStroke: strokeName(placing.claveKind, '3-2', stepFromThreeSide(planned.bar, planned.step)),
          fallback: sketch.fallback,
        },
      },
    ];
  });
}

const isLine = (sketch: Sketch): boolean => sketch.role === 'octave' || sketch.role === 'chord';
const rings = (planned: PlannedStroke): boolean => planned.rings;
const accented = (planned: PlannedStroke): boolean => planned.hit || (planned.side === 2 && planned.step === 0) || planned.step === 7;

function moveFrom(line: { readonly sketch: Sketch; readonly name: string }, to: Sketch): PianoStroke['reason']['move'] {
  const from = line.sketch;
  const semitones = to.octave.pitch - to.lift - (from.octave.pitch - from.lift);
  return { semitones, fromName: line.name, fromDegree: from.octave.degree, fromChord: from.planned.span.symbol };
}

/** How long each stroke is written: ringing ones to the next stroke or barrier, others an eighth. */
function lengthsOf(sketches: readonly Sketch[], timeline: HarmonicTimeline): number[] {
  const first = sketches[0]?.planned.tick ?? 0;
  return sketches.map(({ planned }, index) => {
    const following =
      sketches[index + 1]?.planned.tick ?? (timeline.closed ? first + timeline.toTick - timeline.fromTick : timeline.toTick);
    const room = following - planned.tick;
    if (!rings(planned)) return Math.min(TICKS_PER_STEP, room);
    const longest = Math.min(room, planned.hit ? LONGEST_HIT : LONGEST_RING);
    const silence = silenceAfter(timeline, planned.tick);
    return Math.max(TICKS_PER_STEP, Math.min(longest, silence === undefined ? longest : silence - planned.tick));
  });
}

function anticipated(planned: PlannedStroke, timeline: HarmonicTimeline): number | null {
  if (planned.leadTicks === 0) return null;
  const at = planned.tick + planned.leadTicks;
  if (at < planned.bar.tick + planned.bar.ticks) return planned.bar.index;
  return barAt(timeline, at)?.index ?? null;
}

/**
 * A note's name: as the member of its chord; approach notes and figures gone outside as in the key, where a note outside the key that
 * rises into its goal is a sharp and one that falls a flat.
 */
function nameOf(sketch: Sketch, note: ShapeNote, placing: Placing): string {
  const pc = mod12(placing.tonicMidi + note.pitch);
  const { span } = sketch.planned;
  const { chord, key } = span;
  const outside = sketch.lift % 12 !== 0;
  const own = outside ? undefined : chord?.tones.find((tone) => tone.pc === pc);
  if (own) return own.name;
  if (sketch.role !== 'approach' && chord && !outside && sketch.edited !== 'pitch or place')
    return degreeName(chord.root, note.degree).name;
  if (sketch.rises === undefined || diatonicPcs(key).has(pc)) return nameInKey(pc, key);
  return simplestName(pc, sketch.rises ? 'sharp' : 'flat');
}
