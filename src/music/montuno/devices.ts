import type { Device } from '../../vocabulary';
import { degreeSemitones, mod12 } from '../pitch/spell';
import type { ShapeNote } from './shapes';
import { degreeAt, type Sketch } from './sketch';

/** A change made to a finished figure. Adding a device is adding a row. */
export interface DeviceRow {
  readonly device: Device;
  readonly name: string;
  /** What it does to the sketched strokes for which it is on; a device that changes the rhythm does so in the plan and leaves them alone. */
  readonly change: (sketches: readonly Sketch[], on: (sketch: Sketch) => boolean) => readonly Sketch[];
}

const alone = (sketches: readonly Sketch[]): readonly Sketch[] => sketches;

/** The devices, in the order in which they work on a figure. */
export const DEVICES: readonly DeviceRow[] = [
  {
    device: 'one-bar-neutral',
    name: 'one-bar neutral',
    change: (sketches, on) => sketches.map((sketch) => (on(sketch) ? { ...sketch, device: sketch.device ?? 'one-bar-neutral' } : sketch)),
  },
  { device: 'extra-note', name: 'extra note', change: alone },
  { device: 'double-notes', name: 'double notes', change: alone },
  { device: 'octaves-only', name: 'octaves only', change: (sketches, on) => asOctaves(sketches, on, 'octaves-only') },
  { device: 'half-step-out', name: 'half-step out and back', change: halfStepOut },
  { device: 'octave-up', name: 'hand an octave up', change: octaveUp },
];

/** The sketches after riffs have become octaves and every device that is on in their bar has done its work, in the order of the table. */
export function applyDevices(
  sketches: readonly Sketch[],
  devicesIn: (bar: Sketch['planned']['bar']) => readonly Device[],
): readonly Sketch[] {
  const riffs = sketches.some(({ planned }) => planned.riff) ? asOctaves(sketches, ({ planned }) => planned.riff, null) : sketches;
  return DEVICES.reduce((figure, row) => {
    const on = ({ planned }: Sketch): boolean => devicesIn(planned.bar).includes(row.device);
    return figure.some(on) ? row.change(figure, on) : figure;
  }, riffs);
}

const shifted = (sketch: Sketch, semitones: number, device: Device): Sketch => ({
  ...sketch,
  device,
  lift: sketch.lift + semitones,
  notes: sketch.notes.map((note) => moved(sketch, note, semitones)),
  octave: moved(sketch, sketch.octave, semitones),
});

const moved = (sketch: Sketch, note: ShapeNote, semitones: number): ShapeNote => ({
  pitch: note.pitch + semitones,
  degree: semitones % 12 === 0 ? note.degree : degreeAt(sketch.planned, mod12(degreeSemitones[note.degree] + semitones)),
});

/** Every note of the right hand an octave higher. */
function octaveUp(sketches: readonly Sketch[], on: (sketch: Sketch) => boolean): readonly Sketch[] {
  return sketches.map((sketch) => (on(sketch) ? shifted(sketch, 12, 'octave-up') : sketch));
}

/**
 * The third cycle of every four (the second of two or three) goes out by a half step, and comes back at the anticipation before
 * the next; the left hand goes with it.
 */
function halfStepOut(sketches: readonly Sketch[], on: (sketch: Sketch) => boolean): readonly Sketch[] {
  const cycleOf = ({ planned }: Sketch): number => {
    const early = planned.step % 4 === 3 ? 240 : 0;
    return (
      Math.floor((planned.tick + Math.max(planned.leadTicks, early) - planned.bar.tick + 240 * planned.bar.cycleStep) / 3840) +
      cycles.indexOf(startOf(planned.bar))
    );
  };
  const startOf = (bar: Sketch['planned']['bar']): number => bar.tick - 240 * bar.cycleStep;
  const cycles = [...new Set(sketches.filter(on).map(({ planned }) => startOf(planned.bar)))].sort((a, b) => a - b);
  const out = cycles.length < 4 ? 1 : 2;
  return sketches.map((sketch) => {
    const cycle = cycleOf(sketch);
    return cycle < cycles.length && cycle % 4 === out && !sketch.planned.hit && on(sketch) ? shifted(sketch, 1, 'half-step-out') : sketch;
  });
}

/**
 * Inner strokes become octaves on one of their notes, so that the figure is a tune in the montuno rhythm. The notes of a chord's
 * inner pair take turns, each in the octave nearest to the line; leaps by chord tone are meant.
 */
function asOctaves(sketches: readonly Sketch[], wanted: (sketch: Sketch) => boolean, device: Device | null): readonly Sketch[] {
  let turn = 0;
  let last: Sketch | undefined;
  return sketches.map((sketch) => {
    if (!wanted(sketch)) return sketch;
    const line = device === null ? 'riff' : sketch.line;
    if (sketch.role !== 'inner' && sketch.role !== 'chord') return { ...sketch, line, device: device ?? sketch.device };
    turn = last && last.planned.span === sketch.planned.span ? turn + 1 : 0;
    last = sketch;
    const choices = sketch.role === 'chord' ? [sketch.octave] : sketch.notes;
    const chosen = choices[turn % choices.length] ?? sketch.octave;
    const near = chosen.pitch - sketch.octave.pitch > 6 ? chosen.pitch - 12 : chosen.pitch;
    const note = { pitch: near, degree: chosen.degree };
    return {
      ...sketch,
      role: 'octave',
      device: device ?? sketch.device,
      octave: note,
      notes: [note, { ...note, pitch: near + 12 }],
      line: sketch.line === 'guide' ? 'riff' : sketch.line,
      fallback: device === null ? null : 'octaves only',
    };
  });
}
