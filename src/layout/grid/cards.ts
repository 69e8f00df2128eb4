import type { Hit, SoundingBar } from '../../music/chart/chart';
import type { BassStroke, Level, PianoStroke, Side, Stroke } from '../../vocabulary';

/** A stroke placed in a panel. `step` counts from the panel's start and is negative when the stroke began before it. */
export interface NoteMark<Kind extends Stroke = Stroke> {
  readonly stroke: Kind;
  readonly step: number;
  /** How long it is drawn, in steps from `step`: sounding length for the piano, notated length for the bass. */
  readonly steps: number;
  /** True when it began in an earlier panel and only its ringing is drawn here. */
  readonly ringsIn: boolean;
  /** True when it rings past the panel's end. */
  readonly ringsOut: boolean;
}

/** A chord symbol placed in a panel. */
export interface ChordMark {
  /** As typed. */
  readonly symbol: string;
  /** `played`: where it is first heard; `echo`: where it is written, after being played early; `carried`: still in force from before. */
  readonly kind: 'played' | 'echo' | 'carried';
  readonly step: number;
  /** For a chord played early, the step at which it is written (past the panel's end when it is written in the next one), else null. */
  readonly tieTo: number | null;
}

/** One step of a panel: what is struck in it and what it is called. */
export interface Cell {
  readonly step: number;
  readonly tick: number;
  /** In words; worked out when it is read. */
  readonly label: string;
  readonly right: PianoStroke | null;
  readonly left: PianoStroke | null;
  readonly bass: BassStroke | null;
  /** Piano strokes that are struck later within the step: the second of two sixteenths. */
  readonly later: readonly PianoStroke[];
}

/** One count of a panel: `1`, `&`; strong on the beat. */
export interface CountMark {
  readonly step: number;
  readonly text: string;
  readonly strong: boolean;
}

/** One bar, on one side of the clave. */
export interface Panel {
  readonly bar: SoundingBar;
  readonly side: Side;
  /** Steps in this bar, and in a whole bar of the meter. */
  readonly steps: number;
  readonly fullSteps: number;
  /** Runs of steps [from, to) by the side they belong to; one run unless the clave lies across the bar. */
  readonly sides: readonly { readonly from: number; readonly to: number; readonly side: Side }[];
  /** Bar of its section, from 1, and how many it has. */
  readonly sectionBar: number;
  readonly sectionBars: number;
  readonly chords: readonly ChordMark[];
  readonly counts: readonly CountMark[];
  readonly claveSteps: readonly number[];
  readonly right: readonly NoteMark<PianoStroke>[];
  readonly left: readonly NoteMark<PianoStroke>[];
  readonly bass: readonly NoteMark<BassStroke>[];
  /** True when the left hand plays the bass line: its strokes stand in the cells, but are drawn once, in the bass lane. */
  readonly doubled: boolean;
  readonly percussion: readonly {
    readonly name: string;
    readonly strokes: readonly { readonly step: number; readonly stroke: string }[];
  }[];
  readonly hits: readonly Hit[];
  readonly cells: readonly Cell[];
}

/** What a card has to say about itself, or nothing. */
export type CardNote = 'other side' | 'lone bar' | 'half side' | 'restart' | 'half step out';

/** One clave cycle, or what is left of one at the end of an odd section. */
export interface Card {
  readonly index: number;
  readonly fromBar: number;
  readonly toBar: number;
  readonly tick: number;
  readonly toTick: number;
  readonly panels: readonly Panel[];
  /** The side it begins with. */
  readonly side: Side;
  readonly section: string;
  readonly notes: readonly CardNote[];
}

/** One time through a section, for the map of the form. */
export interface MapSection {
  readonly name: string;
  readonly fromBar: number;
  readonly toBar: number;
  readonly side: Side;
  /** True when it has an odd number of bars or begins on another side than the form does. */
  readonly odd: boolean;
  readonly otherSide: boolean;
  /** True for an open vamp, which goes round until it is cued. */
  readonly onCue: boolean;
  /** Lowest and highest level of its bars, or null when the whole form has one level. */
  readonly levels: readonly [Level, Level] | null;
  /** Its bars by the card they stand on; a card that two sections share is listed in both. */
  readonly blocks: readonly { readonly card: number; readonly fromBar: number; readonly toBar: number }[];
}

/** A place ahead where the sides turn over. */
export interface Turn {
  /** The bar that begins on the other side than one expects. */
  readonly bar: number;
  readonly section: string;
  readonly side: Side;
  /** `section`: a section begins on another side than the one before, or than it did before; `restart`: the clave begins again; `across`: half a side turns the count. */
  readonly kind: 'section' | 'restart' | 'across';
}

/** The whole form as cards. */
export interface StepGrid {
  readonly cards: readonly Card[];
  /** All panels, by bar index. */
  readonly panels: readonly Panel[];
  /** Lowest and highest note of the octave line in the whole form. */
  readonly outerRange: { readonly low: number; readonly high: number };
  readonly sections: readonly MapSection[];
  /** Card of each bar, by bar index. */
  readonly cardOfBar: readonly number[];
  /** Every place where the sides turn over, by bar; bar 0 among them when the way from the last section back to the first turns them. */
  readonly turns: readonly Turn[];
  /** Instruments of the percussion that sound anywhere in the form, in the order of the score. */
  readonly instruments: readonly string[];
  /** The bars that go round, [fromTick, toTick). */
  readonly fromTick: number;
  readonly toTick: number;
  readonly closed: boolean;
}
