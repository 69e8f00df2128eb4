import type { Side } from '../../vocabulary';

/** The staves that a system can have, top to bottom; `rhythm` is the figure on one line, without pitches. */
export const STAVES = ['clave', 'rhythm', 'right', 'left', 'bass'] as const;
export type StaffName = (typeof STAVES)[number];
/** The staves of the music as it is played. */
export const PLAYED_STAVES = ['clave', 'right', 'left', 'bass'] as const satisfies readonly StaffName[];
/** Staves of one line, without pitches. */
export type LineStaff = 'clave' | 'rhythm';
/** Staves with pitches. */
export type PitchedStaff = Exclude<StaffName, LineStaff>;
/** Says whether a staff is one line without pitches. */
export const isLine = (staff: StaffName): staff is LineStaff => staff === 'clave' || staff === 'rhythm';

/** Clefs in use; `bass-8vb` sounds an octave below what is written, as double bass parts do. */
export type ClefName = 'treble' | 'bass' | 'bass-8vb';

/** Shapes of notes and rests, without dots. */
export type NoteShape = 'whole' | 'half' | 'quarter' | 'eighth' | 'sixteenth' | 'thirty-second';
/** A written note value: its shape and how many dots follow it. */
export interface NoteValue {
  readonly shape: NoteShape;
  readonly dots: 0 | 1;
}

/** Signs before a note. */
export type Accidental = '#' | 'b' | 'n' | '##' | 'bb';

/** How a note is played, drawn over it. `marcato` marks what the whole band strikes. */
export type Articulation = 'staccato' | 'tenuto' | 'accent' | 'marcato';

/** How values are written: cut time in eighths, or the Cuban habit, one bar for a clave cycle, in sixteenths. */
export const HABITS = ['eighths', 'sixteenths'] as const;
export type Habit = (typeof HABITS)[number];

/** One note head. */
export interface NotatedPitch {
  readonly midi: number;
  readonly letter: string;
  /** Semitones off the natural note, −2 to 2. */
  readonly alter: number;
  /** Octave of the letter as it sounds (C4 = middle C). */
  readonly octave: number;
  readonly accidental: Accidental | null;
  /** True for a sign that key and bar do not call for: a reminder after another sign in the bar before. */
  readonly courtesy: boolean;
}

/** One note, chord, rest (no pitches, no stroke) or gap (a note that is left out for the reader to find; its pitches are the answer). Ticks count from the start of its bar. */
export interface NotatedEvent {
  readonly tick: number;
  readonly ticks: number;
  readonly value: NoteValue;
  readonly kind: 'notes' | 'stroke' | 'rest' | 'gap';
  /** Ascending; empty for rests and for strokes on one line. */
  readonly pitches: readonly NotatedPitch[];
  /** Tied from the event before, or to the event after (perhaps over the barline). */
  readonly tieIn: boolean;
  readonly tieOut: boolean;
  /** Rings past the last bar into the next pass of a closed score. */
  readonly ringsOn: boolean;
  /** A rest that fills its bar, centred whatever the meter. */
  readonly wholeBar: boolean;
  readonly firstPassOnly: boolean;
  readonly stem: 'up' | 'down';
  /** Octaves that an octave line takes off: 1 under 8va, −1 over 8vb, 2 under 15ma; 0 without a line. */
  readonly octaves: number;
  readonly articulations: readonly Articulation[];
  /** Fingers of the right or left hand, parallel to `pitches`; empty where none are printed. */
  readonly fingers: readonly number[];
}

/** One staff of one bar. */
export interface StaffBar {
  readonly events: readonly NotatedEvent[];
  /** Indexes into `events` of notes joined by a beam, two or more each. */
  readonly beams: readonly (readonly number[])[];
}

/** Numbers over an ending, as in `1.2.`, and whether its bracket begins and is closed in this bar. */
export interface EndingMark {
  readonly passes: readonly number[];
  readonly opens: boolean;
  readonly closes: boolean;
  /** True in the last bar that the bracket reaches, closed or open. */
  readonly last: boolean;
}

/** One bar, all staves. Ticks of events and chords count from its start. */
export interface NotatedBar {
  /** Index of the sounding bar in the form; of the first one where a bar holds two. */
  readonly index: number;
  /** Sounding bars in it: 1, or 2 where one bar is one clave cycle. */
  readonly count: 1 | 2;
  /** Absolute tick of its start. */
  readonly tick: number;
  readonly ticks: number;
  /** Side at its start, and of every sounding bar in it. */
  readonly side: Side;
  readonly sides: readonly { readonly tick: number; readonly side: Side }[];
  /** Where the whole band strikes. */
  readonly hits: readonly { readonly tick: number; readonly held: boolean }[];
  /** `stop` when nobody plays, `rest` when clave and percussion go on alone, else null. */
  readonly silence: 'stop' | 'rest' | null;
  /** Repeat signs inside the form; `end` says how often the passage is played in all. */
  readonly repeat: { readonly start: boolean; readonly end: number | null };
  readonly ending: EndingMark | null;
  /** Name of the section visit that begins here, or null. */
  readonly sectionStart: string | null;
  /** True when the clave restarts here. */
  readonly restart: boolean;
  readonly chords: readonly { readonly tick: number; readonly text: string; readonly push: boolean }[];
  /** Steps that are counted, with their words: `1`, `&`, … */
  readonly counts: readonly { readonly tick: number; readonly text: string }[];
  readonly meter: BarMeter;
  /** True where meter or key differ from the bar before, and in the first bar. */
  readonly meterChange: boolean;
  readonly keyChange: boolean;
  /** Sharps (positive) or flats (negative) in the signature. */
  readonly fifths: number;
  readonly staves: Readonly<Record<StaffName, StaffBar>>;
}

/** The signature of a bar: cut time, or beats over unit. */
export type BarMeter = { readonly kind: 'cut' } | { readonly kind: 'fraction'; readonly beats: number; readonly unit: number };

/** A whole score as written notes. */
export interface Notation {
  readonly bars: readonly NotatedBar[];
  readonly clefs: Readonly<Record<PitchedStaff, ClefName>>;
  /** How it ends: round again by repeat signs about the whole, round again by `D.C.` where repeat signs stand inside it, or for good. */
  readonly ends: 'repeat' | 'da capo' | 'final';
  /** Score ticks to a written tick: 2 in the sixteenth-note habit, else 1. */
  readonly scale: 1 | 2;
}
