/**
 * What verovio (LGPL, tests alone) reads in a MusicXML file: a reader that nobody here wrote. Repeats are played out by verovio, and its
 * notes are taken from the MIDI file that it makes, one track a staff.
 */
import { createRequire } from 'node:module';
import { type MidiEvent, parseMidi } from 'midi-file';

interface Toolkit {
  loadData(text: string): boolean;
  getLog(): string;
  getMEI(options?: object): string;
  renderToMIDI(): string;
  setOptions(options: object): void;
  getVersion(): string;
}
interface Verovio {
  readonly toolkit: new () => Toolkit;
  readonly enableLogToBuffer: (on: boolean) => void;
  readonly module: { calledRun?: boolean; onRuntimeInitialized?: () => void };
}

/** A note as verovio plays it, in ticks of 480 to the quarter. */
export interface ReadNote {
  readonly tick: number;
  readonly ticks: number;
  readonly midi: number;
}

/** What verovio found: its warnings, the notes of each staff by the order of the staves, and its own encoding. */
export interface VerovioReading {
  readonly loaded: boolean;
  readonly warnings: readonly string[];
  readonly staves: readonly (readonly ReadNote[])[];
  /** Half notes a minute at the start, from the MIDI file. */
  readonly halfNotes: number;
  readonly mei: string;
}

let toolkit: Promise<Toolkit> | null = null;

/** The toolkit, made once: starting it takes longer than reading a file. */
export function verovioToolkit(): Promise<Toolkit> {
  toolkit ??= new Promise((resolve) => {
    const verovio = createRequire(import.meta.url)('verovio') as Verovio;
    const ready = (): void => {
      verovio.enableLogToBuffer(true);
      resolve(new verovio.toolkit());
    };
    if (verovio.module.calledRun) ready();
    else verovio.module.onRuntimeInitialized = ready;
  });
  return toolkit;
}

/** Loads a MusicXML text into verovio and takes everything back out. */
export async function readWithVerovio(xml: string): Promise<VerovioReading> {
  const vrv = await verovioToolkit();
  vrv.getLog();
  const loaded = vrv.loadData(xml);
  const warnings = vrv
    .getLog()
    .split('\n')
    .filter((line) => line.trim() !== '');
  const file = parseMidi(Buffer.from(vrv.renderToMIDI(), 'base64'));
  const scale = 480 / (file.header.ticksPerBeat ?? 480);
  const tempo = file.tracks.flat().find((event) => event.type === 'setTempo');
  return {
    loaded,
    warnings,
    staves: file.tracks.slice(1).map((track) => notesOf(track, scale)),
    halfNotes: tempo?.type === 'setTempo' ? 60_000_000 / tempo.microsecondsPerBeat / 2 : Number.NaN,
    mei: vrv.getMEI(),
  };
}

/** verovio ends every note one tick of its own early, so that a note struck again can be told apart. */
const EARLY = 1;

function notesOf(track: readonly MidiEvent[], scale: number): ReadNote[] {
  const open = new Map<number, number>();
  const notes: ReadNote[] = [];
  let now = 0;
  for (const event of track) {
    now += event.deltaTime;
    if (event.type !== 'noteOn' && event.type !== 'noteOff') continue;
    const begun = open.get(event.noteNumber);
    if (begun !== undefined) {
      notes.push({ tick: begun * scale, ticks: (now + EARLY - begun) * scale, midi: event.noteNumber });
      open.delete(event.noteNumber);
    }
    if (event.type === 'noteOn' && event.velocity > 0) open.set(event.noteNumber, now);
  }
  return notes.toSorted((a, b) => a.tick - b.tick || a.midi - b.midi);
}
