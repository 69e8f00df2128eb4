import type { Clave, HalfNotesPerMinute, Meter, Side } from '../../vocabulary';
import type { Chord } from '../chord/chord';
import type { Key } from '../pitch/key';
import type { ChartFaultCode } from './fault-codes';

export type { Key } from '../pitch/key';

/** The roles a section can play in an arrangement. */
export const SECTION_ROLES = ['intro', 'verse', 'coro', 'mambo', 'piano solo', 'percussion solo', 'break', 'coda'] as const;
export type SectionRole = (typeof SECTION_ROLES)[number];

/** A chord (or N.C.) in a written bar, where it is written. */
export interface WrittenChord {
  /** Ticks from the start of the bar. */
  readonly tick: number;
  /** Null for N.C. */
  readonly chord: Chord | null;
  /** As typed (`N.C.` included). */
  readonly symbol: string;
  /** Written with `>`: the whole band strikes it an eighth early and holds. */
  readonly push: boolean;
}

/** One hit of the whole band: step of the bar (0 = beat 1) and whether it is held. */
export interface Hit {
  readonly step: number;
  readonly held: boolean;
}

/** One bar as written. */
export type BarContent =
  | { readonly kind: 'chords'; readonly chords: readonly WrittenChord[] }
  | { readonly kind: 'repeat'; readonly bars: 1 | 2 }
  | { readonly kind: 'stop' }
  | { readonly kind: 'rest'; readonly bars: number };

/** One bar as written, with what its barlines and marks say. */
export interface WrittenBar {
  readonly content: BarContent;
  /** How the chords (or `%`, `stop`, `rest 8`) were typed, single spaces between tokens, so that the chart can be written out again. */
  readonly source: string;
  readonly hits: readonly Hit[];
  /** Length in ticks: 1920 in 4/4, 1440 in 6/8, half of that with `(2/4)` or `(3/8)`. `%%` and `rest n` stand for several bars of this length. */
  readonly ticks: number;
  readonly pickup: boolean;
  readonly repeatStart: boolean;
  /** Times the passage is played in all when a repeat ends here (2 for `:|`, n for `:| xn`), else null. */
  readonly repeatEnd: number | null;
  /** Passes (from 1) of the ending that begins here, or null. */
  readonly ending: readonly number[] | null;
  /** True when `||` closes the bar. */
  readonly doubleBar: boolean;
  readonly marks: readonly ('segno' | 'coda' | 'to coda' | 'fine' | 'D.S. al coda' | 'D.C. al fine' | 'D.S. al fine' | 'D.C. al coda')[];
  /** Place in the text, from 1. */
  readonly line: number;
  readonly column: number;
}

/** A section as written: its head and its bars. */
export interface Section {
  readonly name: string;
  readonly role: SectionRole | null;
  /** A role as typed that is none of the known ones: it is kept, said, and the section plays without a role. */
  readonly unknownRole?: string;
  /** Times played in all. */
  readonly times: number;
  readonly onCue: boolean;
  /** Clave restarts here with this direction, or null. */
  readonly restart: Clave['direction'] | null;
  /** A printed label that checks the count, or null. */
  readonly expects: Clave['direction'] | null;
  readonly style: string | null;
  readonly key: Key | null;
  readonly tempo: HalfNotesPerMinute | null;
  readonly figure: string | null;
  readonly bars: readonly WrittenBar[];
  /** Line of the head, from 1; 0 for the bars of a chart that has no head before them. */
  readonly line: number;
}

/** The header lines a chart can have. */
export const HEADER_NAMES = ['title', 'key', 'clave', 'tempo', 'style', 'meter', 'changes', 'figure', 'form'] as const;
export type HeaderName = (typeof HEADER_NAMES)[number];

/** A chart that has been read: what the person typed, as data. Defaults are filled in. */
export interface Chart {
  readonly title: string;
  readonly key: Key;
  readonly clave: Clave;
  readonly tempo: HalfNotesPerMinute;
  /** Style name as read, lower case; `salsa` when missing. */
  readonly style: string;
  readonly meter: Meter;
  readonly changes: 'on the beat' | 'as played';
  readonly figure: string | null;
  readonly sections: readonly Section[];
  /** Section names in playing order, or null when the sections are played as written. */
  readonly form: readonly string[] | null;
  /** The header lines that were typed, in their order, with the line they stand on (from 1). */
  readonly headers: readonly { readonly name: HeaderName; readonly line: number }[];
  /** Comments, with the line they stand on (from 1) and whether they fill it. */
  readonly comments: readonly { readonly line: number; readonly text: string; readonly wholeLine: boolean }[];
  /** Things worth saying that are not faults. */
  readonly notices: readonly ChartNotice[];
}

/** A fault in chart text; line and column count from 1. */
export interface ChartFault {
  readonly code: ChartFaultCode;
  readonly line: number;
  readonly column: number;
  /** The offending text, exactly as typed. */
  readonly text: string;
  /** What would have been right there. */
  readonly expected: string;
  /** The nearest valid text, or null. */
  readonly nearest: string | null;
}

/** Something to tell the player about a chart or form that is no fault. */
export interface ChartNotice {
  readonly code:
    | 'odd section'
    | 'section on the other side'
    | 'half-side'
    | 'outside the clave'
    | 'label disagrees'
    | 'style against meter'
    | 'tempo outside style'
    | 'figure bends'
    | 'edit out of place'
    | 'figure crossed'
    | 'device idle'
    | 'unknown role'
    | 'open odd vamp';
  /** Sounding bar (from 0) it concerns, or null when it concerns the text alone. */
  readonly bar: number | null;
  readonly section: string | null;
  /** What the sentence needs: the names and numbers in it. */
  readonly detail: Readonly<Record<string, string | number>>;
}

/** One bar as it sounds, after repeats, endings, jumps and forms are unfolded. */
export interface SoundingBar {
  readonly index: number;
  /** Index among all written bars of the chart. */
  readonly writtenBar: number;
  /** Which time this written bar is heard, from 0. */
  readonly pass: number;
  /** Index into `Form.visits`. */
  readonly visit: number;
  readonly section: string;
  readonly role: SectionRole | null;
  readonly kind: 'groove' | 'rest' | 'hit' | 'short' | 'pickup';
  /** Who plays in it: everyone, clave and percussion alone (N.C., rest), or no one (stop). */
  readonly playing: 'band' | 'rhythm' | 'nobody';
  readonly tick: number;
  readonly ticks: number;
  /** Step of the clave cycle at the bar's start; 0 = start of the first side. */
  readonly cycleStep: number;
  readonly side: Side;
  readonly restart: boolean;
  /** Where written, absolute ticks; a chord carried over is listed at the bar's first tick. */
  readonly chords: readonly { readonly tick: number; readonly chord: Chord | null; readonly symbol: string; readonly push: boolean }[];
  /** Steps of the bar struck by the whole band. */
  readonly hits: readonly Hit[];
  readonly key: Key;
  readonly style: string;
  readonly figure: string | null;
  /** Tempo in force. */
  readonly tempo: HalfNotesPerMinute;
}

/** One time through a section. */
export interface SectionVisit {
  readonly section: string;
  readonly role: SectionRole | null;
  readonly fromBar: number;
  /** Exclusive. */
  readonly toBar: number;
  readonly side: Side;
  readonly onCue: boolean;
  /** True when this section was heard before from the other side. */
  readonly otherSide: boolean;
}

/** The chart as it sounds. */
export interface Form {
  readonly bars: readonly SoundingBar[];
  readonly visits: readonly SectionVisit[];
  /** The clave, with the direction at the first bar (a pickup does not count). */
  readonly clave: Clave;
  readonly meter: Meter;
  readonly changes: Chart['changes'];
  readonly totalTicks: number;
  readonly notices: readonly ChartNotice[];
}
