import { beamGroups } from '../../layout/notation/beams-and-stems';
import { claveSpans } from '../../layout/notation/clave-line';
import type { ClefName, NotatedEvent, Notation, PitchedStaff, StaffBar } from '../../layout/notation/notation';
import { barEvents } from '../../layout/notation/strokes-to-events';
import { barFrame } from '../../layout/notation/written-bars';
import type { Score } from '../../music/score';
import type { DrumStroke } from '../../vocabulary';
import { SCORE_FILE_WORDS } from '../../words/score-file';
import { drumKey } from '../midi/drum-keys';
import { type Head, type NotesPlace, pitchHeads } from './write-notes';
import { element, type Xml } from './xml';

/** One voice of a part: where it is written and what stands in each sounding bar. */
export interface PartVoice extends NotesPlace {
  readonly bars: readonly StaffBar[];
  /** The heads of an event in a bar, lowest first. */
  readonly headsOf: (event: NotatedEvent, bar: number) => readonly Head[];
}

/** One part of the file. */
export interface ScorePart {
  readonly id: string;
  /** `piano`, `bass`, `clave` or an instrument of the percussion. */
  readonly name: string;
  /** Its entry in the list of parts. */
  readonly entry: Xml;
  /** What its first measure says after key and meter: staves, clefs, lines. */
  readonly setup: readonly Xml[];
  readonly voices: readonly PartVoice[];
}

/** Programs of General MIDI level 1 (RP-003), counted from 1 as MusicXML does. */
const PROGRAMS = { piano: 1, bass: 33 } as const;
/** The percussion channel of General MIDI, counted from 1. */
const DRUM_CHANNEL = 10;
const CLEFS: Readonly<Record<ClefName, readonly Xml[]>> = {
  treble: [element('sign', 'G'), element('line', 2)],
  bass: [element('sign', 'F'), element('line', 4)],
  'bass-8vb': [element('sign', 'F'), element('line', 4), element('clef-octave-change', -1)],
};

/** Both hands of the piano on two staves of one part. */
export function pianoPart(id: string, notation: Notation): ScorePart {
  const { right, left } = notation.clefs;
  return {
    ...pitchedPart(id, 'piano', 1),
    setup: [element('staves', 2), clef(right, 1), clef(left, 2)],
    voices: [pitchedVoice(notation, 'right', { voice: 1, staff: 1 }), pitchedVoice(notation, 'left', { voice: 2, staff: 2 })],
  };
}

/** The bass on a staff that sounds an octave below what is written. */
export function bassPart(id: string, notation: Notation): ScorePart {
  return {
    ...pitchedPart(id, 'bass', 2),
    setup: [clef(notation.clefs.bass, null)],
    voices: [pitchedVoice(notation, 'bass', { voice: 1, staff: null })],
  };
}

/** A percussion instrument on one line: every kind of stroke is an instrument of its own, so that it sounds as its key of the percussion map. */
export function drumPart(id: string, name: string, strokes: readonly DrumStroke[], score: Score): ScorePart {
  const kinds = [...new Set(strokes.map(({ stroke }) => stroke))];
  const instrument = (stroke: string): string => `${id}-I${kinds.indexOf(stroke) + 1}`;
  const byTick = new Map<number, DrumStroke[]>();
  for (const stroke of strokes) byTick.set(stroke.tick, [...(byTick.get(stroke.tick) ?? []), stroke]);
  const headsOf = (event: NotatedEvent, bar: number): Head[] =>
    (byTick.get((score.bars[bar]?.tick ?? 0) + event.tick) ?? []).map(({ stroke }) => drumHead(stroke, instrument(stroke)));
  return {
    id,
    name,
    entry: element(
      'score-part',
      [
        element('part-name', SCORE_FILE_WORDS.part(name)),
        ...kinds.map((stroke) =>
          element('score-instrument', [element('instrument-name', kinds.length === 1 ? SCORE_FILE_WORDS.part(name) : stroke)], {
            id: instrument(stroke),
          }),
        ),
        ...kinds.map((stroke) =>
          element('midi-instrument', [element('midi-channel', DRUM_CHANNEL), element('midi-unpitched', drumKey(name, stroke) + 1)], {
            id: instrument(stroke),
          }),
        ),
      ],
      { id },
    ),
    setup: [element('clef', [element('sign', 'percussion')]), element('staff-details', [element('staff-lines', 1)])],
    voices: [{ voice: 1, staff: null, headsOf, bars: score.bars.map((_, bar) => drumBar(score, bar, strokes)) }],
  };
}

function drumBar(score: Score, index: number, strokes: readonly DrumStroke[]): StaffBar {
  const bar = score.bars[index];
  if (!bar) return { events: [], beams: [] };
  const frame = barFrame(score, bar);
  const inBar = strokes.filter(({ tick }) => tick >= bar.tick && tick < bar.tick + bar.ticks);
  const events = barEvents(claveSpans(inBar, bar.tick, frame), bar.tick, frame, 'stroke');
  return { beams: beamGroups(events, frame), events: events.map((event) => ({ ...event, pitches: [], stem: 'up' })) };
}

/** The middle of a one-line staff: E4 stands on the bottom line of the treble clef that a percussion clef is read like. */
const ON_THE_LINE = element('unpitched', [element('display-step', 'E'), element('display-octave', 4)]);
const CROSSED: ReadonlySet<string> = new Set(['slap', 'soft slap', 'rimshot', 'rim', 'muffled', 'heel', 'toe', 'fingers', 'thumb']);
const ACCENTED: ReadonlySet<string> = new Set(['accent', 'rimshot']);
/** Slashes through the stem of a roll: thirty-seconds. */
const ROLL_SLASHES = 3;

/** Accents and rolls are written as such; strokes that are not let ring have crossed heads (common practice, no source). */
function drumHead(stroke: string, instrument: string): Head {
  const accent = element('articulations', [element('accent')]);
  const roll = element('ornaments', [element('tremolo', ROLL_SLASHES, { type: 'single' })]);
  const notations = [...(stroke === 'roll' ? [roll] : []), ...(ACCENTED.has(stroke) ? [accent] : [])];
  return { place: ON_THE_LINE, instrument, notations, ...(CROSSED.has(stroke) ? { notehead: 'x' } : {}) };
}

const clef = (name: ClefName, number: number | null): Xml => element('clef', CLEFS[name], number === null ? {} : { number });

const pitchedVoice = (notation: Notation, staff: PitchedStaff, place: NotesPlace): PartVoice => ({
  ...place,
  bars: notation.bars.map((bar) => bar.staves[staff]),
  headsOf: pitchHeads,
});

function pitchedPart(id: string, name: keyof typeof PROGRAMS, channel: number): Pick<ScorePart, 'id' | 'name' | 'entry'> {
  const instrument = `${id}-I1`;
  const entry = element(
    'score-part',
    [
      element('part-name', SCORE_FILE_WORDS.part(name)),
      element('score-instrument', [element('instrument-name', SCORE_FILE_WORDS.part(name))], { id: instrument }),
      element('midi-instrument', [element('midi-channel', channel), element('midi-program', PROGRAMS[name])], { id: instrument }),
    ],
    { id },
  );
  return { id, name, entry };
}
