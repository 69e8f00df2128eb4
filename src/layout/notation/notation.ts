import type { Side } from '../../vocabulary';

/** The staves of a system, top to bottom. */
export const STAVES = ['clave', 'right', 'left', 'bass'] as const;
export type StaffName = (typeof STAVES)[number];
/** Staves with pitches. */
export type PitchedStaff = Exclude<StaffName, 'clave'>;

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

/** One note, chord or rest (no pitches, no stroke). Ticks count from the start of its bar. */
export interface NotatedEvent {
  readonly tick: number;
  readonly ticks: number;
  readonly value: NoteValue;
  readonly kind: 'notes' | 'stroke' | 'rest';
  /** Ascending; empty for rests and for strokes of the clave. */
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
}

/** One staff of one bar. */
export interface StaffBar {
  readonly events: readonly NotatedEvent[];
  /** Indexes into `events` of notes joined by a beam, two or more each. */
  readonly beams: readonly (readonly number[])[];
}

/** One bar, all staves. Ticks of events and chords count from its start. */
export interface NotatedBar {
  /** Index of the sounding bar in the form. */
  readonly index: number;
  /** Absolute tick of its start. */
  readonly tick: number;
  readonly ticks: number;
  readonly side: Side;
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
  /** True when the last bar leads back to the first. */
  readonly closed: boolean;
}
