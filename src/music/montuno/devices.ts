import type { Degree, Device } from '../../vocabulary';
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
const DEVICES: readonly DeviceRow[] = [
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

/**
 * The sketches after riffs have become octaves and every device that is on in their bar has done its work, in the order of the table;
 * and the devices that were on and found nothing to do.
 */
export function applyDevices(
  sketches: readonly Sketch[],
  devicesIn: (bar: Sketch['planned']['bar']) => readonly Device[],
): { readonly figure: readonly Sketch[]; readonly idle: readonly Device[] } {
  let figure = sketches.some(({ planned }) => planned.riff) ? asOctaves(sketches, ({ planned }) => planned.riff, null) : sketches;
  const idle: Device[] = [];
  for (const row of DEVICES) {
    const on = ({ planned }: Sketch): boolean => devicesIn(planned.bar).includes(row.device);
    if (!figure.some(on)) continue;
    const before = figure;
    figure = row.change(before, on);
    const worked =
      row.change === alone ? figure.some(({ planned }) => planned.device === row.device) : figure.some((s, at) => s !== before[at]);
    if (!worked) idle.push(row.device);
  }
  return { figure, idle };
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
 * the next; both hands go. Only where that is heard as going out: over a riff, or where the cycle and its neighbours hold no more
 * than two chords; over changes that lead somewhere the figure stays.
 */
function halfStepOut(sketches: readonly Sketch[], on: (sketch: Sketch) => boolean): readonly Sketch[] {
  const cycles = [...new Set(sketches.filter(on).map(({ planned }) => startOf(planned.bar)))].sort((a, b) => a - b);
  const cycleOf = ({ planned }: Sketch): number => {
    const early = planned.step % 4 === 3 ? 240 : 0;
    const into = planned.tick + Math.max(planned.leadTicks, early) - startOf(planned.bar);
    return Math.floor(into / CYCLE_TICKS) + cycles.indexOf(startOf(planned.bar));
  };
  const chords = cycles.map(() => new Set<string>());
  for (const sketch of sketches) chords[cycleOf(sketch)]?.add(sketch.planned.span.symbol);
  const vamps = (cycle: number): boolean => new Set([cycle - 1, cycle, cycle + 1].flatMap((near) => [...(chords[near] ?? [])])).size <= 2;
  const out = cycles.length < 4 ? 1 : 2;
  return sketches.map((sketch, index) => {
    // An approach goes where the note goes that it leads into.
    const into = sketch.role === 'approach' ? (sketches[index + 1] ?? sketch) : sketch;
    const cycle = cycleOf(into);
    const goes = cycle < cycles.length && cycle % 4 === out && on(sketch) && !sketch.planned.hit && (sketch.planned.riff || vamps(cycle));
    return goes ? shifted(sketch, 1, 'half-step-out') : sketch;
  });
}

const CYCLE_TICKS = 3840;
const startOf = (bar: Sketch['planned']['bar']): number => bar.tick - 240 * bar.cycleStep;

/**
 * Inner strokes become octaves on one of their notes, so that the figure is a tune in the montuno rhythm. Which of the two is taken
 * follows the place in the cycle, so that the tune keeps its shape while the chords change; it is put in the octave nearest to the
 * note before, and a leap of a tritone takes the other note instead.
 */
function asOctaves(sketches: readonly Sketch[], wanted: (sketch: Sketch) => boolean, device: Device | null): readonly Sketch[] {
  let before: number | undefined;
  let span: Sketch['planned']['span'] | undefined;
  let struck = new Set<Degree>();
  return sketches.map((sketch, index) => {
    if (!wanted(sketch)) return sketch;
    if (sketch.planned.span !== span) struck = new Set();
    span = sketch.planned.span;
    const line = device === null ? 'riff' : sketch.line;
    if (sketch.role === 'single') return oneOfArpeggio(sketch, device);
    if (sketch.role !== 'inner' && sketch.role !== 'chord') {
      if (sketch.role === 'octave') {
        before = sketch.octave.pitch;
        struck.add(sketch.octave.degree);
      }
      return { ...sketch, line, device: device ?? sketch.device };
    }
    const following = sketches[index + 1];
    const after = following && wanted(following) && following.role === 'octave' ? following.octave.pitch : undefined;
    // A chord that an arpeggio follows gives its lowest note, the others come one by one.
    const arpeggio = sketch.role === 'chord' && following?.role === 'single' && following.planned.span === sketch.planned.span;
    const note = arpeggio ? sketch.octave : tuneNote(sketch, before ?? sketch.octave.pitch, after, struck);
    before = note.pitch;
    struck.add(note.degree);
    return {
      ...sketch,
      role: 'octave',
      device: device ?? sketch.device,
      octave: note,
      notes: [note, { ...note, pitch: note.pitch + 12 }],
      line: sketch.line === 'guide' ? 'riff' : sketch.line,
      fallback: device === null ? null : 'octaves only',
    };
  });
}

/** Degrees that tell which chord it is. */
const TELLING: readonly Degree[] = ['3', 'b3', 'b7', '7', 'bb7', '6', '4'];

/** An arpeggio's single notes in octaves; its top note, which doubles the lowest, goes back to it. */
function oneOfArpeggio(sketch: Sketch, device: Device | null): Sketch {
  const [note = sketch.octave] = sketch.notes;
  const low = sketch.planned.role === 't' ? { ...note, pitch: note.pitch - 12 } : note;
  return { ...sketch, role: 'octave', device: device ?? sketch.device, octave: low, notes: [low, { ...low, pitch: low.pitch + 12 }] };
}

/** A tune leaps by a fifth at the most where it can. */
const WIDEST_LEAP = 7;

function tuneNote(sketch: Sketch, before: number, after: number | undefined, struck: ReadonlySet<Degree>): ShapeNote {
  const { step, side } = sketch.planned;
  const upper = side === 2 ? step >= 4 : step < 4;
  const inner =
    sketch.role === 'chord'
      ? [sketch.octave, ...sketch.notes.filter(({ pitch }) => mod12(pitch - sketch.octave.pitch) !== 0)]
      : upper
        ? [...sketch.notes].reverse()
        : sketch.notes;
  const choices = inner.map((note, place) => {
    const leaps = (pitch: number): number =>
      [before, after ?? pitch].reduce((sum, other) => sum + Math.max(0, Math.abs(pitch - other) - WIDEST_LEAP), 0);
    // Near the hand's octave, so that the tune does not wander off.
    const near = [note.pitch - 12, note.pitch].filter((pitch) => Math.abs(pitch - sketch.octave.pitch) <= 9);
    const [pitch = note.pitch] = near.sort((a, b) => leaps(a) - leaps(b) || Math.abs(a - before) - Math.abs(b - before));
    const third = note.degree === '3' || note.degree === 'b3' ? 7 : 5;
    const tells = TELLING.includes(note.degree) && !struck.has(note.degree) ? third : 0;
    return { note: { ...note, pitch }, cost: place + 2 * leaps(pitch) + (Math.abs(pitch - before) === 6 ? 2 : 0) - tells };
  });
  return choices.reduce((best, choice) => (choice.cost < best.cost ? choice : best), choices[0] ?? { note: sketch.octave, cost: 0 }).note;
}
