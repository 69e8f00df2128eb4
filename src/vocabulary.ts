/**
 * The nouns that every part of the program shares: time, notes, strokes, results.
 * Nothing here knows about charts, sound or screens, and nothing is imported.
 */

/** Ticks in a quarter note; all score time is counted in whole ticks. */
export const TICKS_PER_QUARTER = 480;
/** Ticks in a step, the eighth note on which clave, montuno and bass are written. */
export const TICKS_PER_STEP = 240;
/** The furthest that a stroke looks ahead in the harmony, in ticks: the bass on beat 4 takes the next root (`Stroke.leadTicks`). */
export const LONGEST_LEAD_TICKS = 480;

declare const unit: unique symbol;
type Unit<Name extends string> = number & { readonly [unit]: Name };

/** Seconds from the first tick of the music, at the tempo in force. */
export type SongSeconds = Unit<'SongSeconds'>;
/** Seconds on the audio device's clock. */
export type AudioSeconds = Unit<'AudioSeconds'>;
/** Milliseconds on the clock that stamps keys, MIDI and pointer events. */
export type InputMillis = Unit<'InputMillis'>;
/** Tempo as half notes per minute, the beat that salsa is counted in. */
export type HalfNotesPerMinute = Unit<'HalfNotesPerMinute'>;

/** A finite number of seconds of song time. Throws on NaN and infinities. */
export const songSeconds = (value: number): SongSeconds => finite(value, 'song seconds') as SongSeconds;
/** A finite number of seconds of audio time. Throws on NaN and infinities. */
export const audioSeconds = (value: number): AudioSeconds => finite(value, 'audio seconds') as AudioSeconds;
/** A finite number of milliseconds of input time. Throws on NaN and infinities. */
export const inputMillis = (value: number): InputMillis => finite(value, 'input milliseconds') as InputMillis;

/** The slowest and fastest tempo on offer, in half notes per minute. */
export const TEMPO_RANGE = { from: 25, to: 140 } as const;

/** A tempo within `TEMPO_RANGE`. Throws outside it; text from people is checked before it comes here. */
export function halfNotesPerMinute(value: number): HalfNotesPerMinute {
  assert(
    value >= TEMPO_RANGE.from && value <= TEMPO_RANGE.to,
    `tempo must be ${TEMPO_RANGE.from} to ${TEMPO_RANGE.to} half notes a minute, got ${value}`,
  );
  return value as HalfNotesPerMinute;
}

function finite(value: number, what: string): number {
  assert(Number.isFinite(value), `${what} must be a finite number, got ${value}`);
  return value;
}

/** Throws an Error with `message` unless `condition` holds: for mistakes of ours, never for what a person typed. */
export function assert(condition: unknown, message: string): asserts condition {
  if (!condition) throw new Error(message);
}

/** How many items at the front of a list pass `holds`, found by halving: once an item fails it, all after it must fail too. */
export function countLeading<Item>(items: readonly Item[], holds: (item: Item) => boolean): number {
  let low = 0;
  let high = items.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (holds(items[middle] as Item)) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** What reading something typed or loaded gives: the value, or every fault that was found. */
export type Result<Value, Fault> = { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly faults: readonly Fault[] };

/** A successful `Result`. */
export const ok = <Value>(value: Value): Result<Value, never> => ({ ok: true, value });
/** A failed `Result` with all its faults. */
export const failed = <Fault>(...faults: readonly Fault[]): Result<never, Fault> => ({ ok: false, faults });

/** Which side of the clave a bar is: the side with two strokes or the side with three. */
export type Side = 2 | 3;
/** Which side comes first. */
export type Direction = '2-3' | '3-2';
/** The direction that begins on the other side. */
export const oppositeDirection = (direction: Direction): Direction => (direction === '2-3' ? '3-2' : '2-3');
/** Meters that have a clave. */
export type Meter = '4/4' | '6/8';
/** A full bar, one side of the clave, in ticks. */
export const fullBarTicks = (meter: Meter): 1440 | 1920 => (meter === '6/8' ? 1440 : 1920);
/** Steps of a clave cycle: two full bars. */
export const stepsInCycle = (meter: Meter): 12 | 16 => (meter === '6/8' ? 12 : 16);
/** Which clave sounds. */
export type ClaveKind = 'son' | 'rumba' | 'bembe';
/** The clave of a chart: what sounds, and from which side. */
export interface Clave {
  readonly kind: ClaveKind;
  readonly direction: Direction;
}

/** How busy the piano figure is, from 1 (sparse) to 6 (riffs and bloques). */
export type Level = 1 | 2 | 3 | 4 | 5 | 6;
/** What the hands do with the figure. */
export type Hands = 'double' | 'wide' | 'tenths' | 'contrary' | 'tumbao' | 'right' | 'left';
/** Harmonic colour: triads, sixths and plain sevenths, or ninths, thirteenths and maj7. */
export type Colour = 'plain' | 'jazz';
/** A change made to a finished figure, switched on independently of the level. */
export type Device = 'octave-up' | 'octaves-only' | 'one-bar-neutral' | 'extra-note' | 'double-notes' | 'half-step-out';
/** The widest that one hand stretches. */
export type Stretch = 'less than an octave' | 'octave' | 'ninth' | 'tenth';
/** Keys of the instrument. */
export type Compass = 49 | 61 | 76 | 88;
/** What kind of slow line the octaves follow. */
export type LineName = 'guide' | 'minor' | 'major' | 'vamp' | 'riff';

/** A degree above a chord's root, in the order of its semitones. */
export type Degree =
  | '1'
  | 'b2'
  | '2'
  | 'b3'
  | '3'
  | '4'
  | '#4'
  | 'b5'
  | '5'
  | '#5'
  | 'b6'
  | '6'
  | 'b7'
  | '7'
  | 'b9'
  | '9'
  | '#9'
  | '11'
  | '#11'
  | 'b13'
  | '13'
  | 'bb7';

/** The part a piano stroke plays in its cell. */
export type PianoRole = 'octave' | 'inner' | 'chord' | 'single' | 'approach';
/** Which note of the chord a bass stroke takes. */
export type BassRole = 'root' | 'fifth' | 'octave' | 'third' | 'approach';

/** Why a stroke is what it is, as data; `src/words/` turns it into one sentence. */
export interface StrokeReason {
  /** Step of the bar (0 = beat 1) and side on which the stroke falls. */
  readonly step: number;
  readonly side: Side;
  /** Index of the bar (from 0) whose chord is taken early, or null when the stroke takes the chord of its own place. */
  readonly anticipatesBar: number | null;
  /** True when the chord taken early is still in the stroke's own bar (two chords a bar). */
  readonly anticipatesWithinBar: boolean;
  /** How the outer line came here from its last note: semitones, and what that note was; null for the first. */
  readonly move: { readonly semitones: number; readonly fromName: string; readonly fromDegree: Degree; readonly fromChord: string } | null;
  /** Which clave stroke sounds at the same moment, if any. */
  readonly claveStroke: 'first' | 'second' | 'third' | 'fourth' | 'fifth' | null;
  /** Why the stroke is thinner than its cell asks for, if it is. */
  readonly fallback: 'power chord' | 'no inner note fits' | 'fast changes' | 'octaves only' | null;
}

/** One stroke of a pitched part. `midi`, `names` and `degrees` are parallel and ascending. */
export interface Stroke<Role extends string = PianoRole | BassRole> {
  /** Where it is struck, from the first bar of the form. */
  readonly tick: number;
  /** Notated length. */
  readonly durationTicks: number;
  /** Length that sounds. */
  readonly soundingTicks: number;
  readonly midi: readonly number[];
  /** ASCII scientific names, C4 = 60: `Eb4`, `F#5`. */
  readonly names: readonly string[];
  /** 1 to 127. */
  readonly velocity: number;
  readonly role: Role;
  /** The symbol, as typed, of the chord at `tick + leadTicks`. */
  readonly chord: string;
  readonly degrees: readonly Degree[];
  /** How far ahead in the harmony the stroke looks: 0, 240 or 480. */
  readonly leadTicks: number;
  /** Semitones by which a device moved it. */
  readonly lift: number;
  readonly line: LineName | null;
  readonly device: Device | null;
  /** True when it is struck on the first pass only, not again round a loop. */
  readonly firstPassOnly: boolean;
  /** True when a player has changed it by hand; missing otherwise. */
  readonly edited?: true;
  readonly reason: StrokeReason;
}
/** A stroke of one hand at the piano. */
export type PianoStroke = Stroke<PianoRole>;
/** A stroke of the bass. */
export type BassStroke = Stroke<BassRole>;

/** A note that a person played, on the clock of the input. */
export interface PlayedNote {
  readonly midi: number;
  /** 1 to 127. */
  readonly velocity: number;
  readonly at: InputMillis;
  /** When it was let go; null while it is held, or where the input cannot tell. */
  readonly until: InputMillis | null;
}

/** A clap or a tap: an onset without pitch. */
export interface PlayedOnset {
  readonly at: InputMillis;
  /** 0 to 1. */
  readonly strength: number;
}

/** One stroke of an unpitched part. */
export interface DrumStroke {
  readonly tick: number;
  /** The kind of stroke: `stroke` for the clave, `accent`, `plain`, `open` and so on for percussion. */
  readonly stroke: string;
}
