import type { Device } from '../../vocabulary';
import type { Sketch } from './sketch';

/** A change made to a finished figure. Adding a device is adding a row. */
export interface DeviceRow {
  readonly device: Device;
  readonly name: string;
  /** What it does to the sketched strokes; a device that changes the rhythm does so in the plan and leaves them alone. */
  readonly change: (sketches: readonly Sketch[]) => readonly Sketch[];
}

export const DEVICES: readonly DeviceRow[] = [
  {
    device: 'one-bar-neutral',
    name: 'one-bar neutral',
    change: (sketches) => sketches.map((sketch) => ({ ...sketch, device: sketch.device ?? 'one-bar-neutral' })),
  },
  { device: 'octaves-only', name: 'octaves only', change: octavesOnly },
  { device: 'octave-up', name: 'hand an octave up', change: octaveUp },
];

/** The sketches after every device that is on, in the order of the table. */
export function applyDevices(sketches: readonly Sketch[], devices: readonly Device[]): readonly Sketch[] {
  return DEVICES.filter((row) => devices.includes(row.device)).reduce((figure, row) => row.change(figure), sketches);
}

/** Every note of the right hand an octave higher. */
function octaveUp(sketches: readonly Sketch[]): readonly Sketch[] {
  return sketches.map((sketch) => ({
    ...sketch,
    device: 'octave-up',
    lift: sketch.lift + 12,
    notes: sketch.notes.map((note) => ({ ...note, pitch: note.pitch + 12 })),
    octave: { ...sketch.octave, pitch: sketch.octave.pitch + 12 },
  }));
}

/**
 * Inner strokes become octaves on one of their notes, so that the figure is a tune in the montuno rhythm. The notes of a chord's
 * inner pair take turns, each in the octave nearest to the line; leaps by chord tone are meant.
 */
function octavesOnly(sketches: readonly Sketch[]): readonly Sketch[] {
  let turn = 0;
  let last: Sketch | undefined;
  return sketches.map((sketch) => {
    if (sketch.role !== 'inner' && sketch.role !== 'chord') return { ...sketch, device: 'octaves-only' };
    turn = last && last.planned.span === sketch.planned.span ? turn + 1 : 0;
    last = sketch;
    const choices = sketch.role === 'chord' ? [sketch.octave] : sketch.notes;
    const chosen = choices[turn % choices.length] ?? sketch.octave;
    const near = chosen.pitch - sketch.octave.pitch > 6 ? chosen.pitch - 12 : chosen.pitch;
    const note = { pitch: near, degree: chosen.degree };
    return {
      ...sketch,
      role: 'octave',
      device: 'octaves-only',
      octave: note,
      notes: [note, { ...note, pitch: near + 12 }],
      line: sketch.line === 'guide' ? 'riff' : sketch.line,
      fallback: 'octaves only',
    };
  });
}
