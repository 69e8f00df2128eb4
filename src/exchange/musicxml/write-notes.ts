import type { Articulation, NotatedEvent, NotatedPitch, NoteShape, StaffBar } from '../../layout/notation/notation';
import { element, type Xml } from './xml';

/** Ticks in a division: the finest written grid, so that every duration is a whole number. */
export const TICKS_PER_DIVISION = 60;

/** The type names of MusicXML 4.0 (`note-type-value`), and beams that a note of that shape takes. */
const TYPES: Readonly<Record<NoteShape, { readonly name: string; readonly beams: number }>> = {
  whole: { name: 'whole', beams: 0 },
  half: { name: 'half', beams: 0 },
  quarter: { name: 'quarter', beams: 0 },
  eighth: { name: 'eighth', beams: 1 },
  sixteenth: { name: '16th', beams: 2 },
  'thirty-second': { name: '32nd', beams: 3 },
};
const ACCIDENTALS = { '#': 'sharp', b: 'flat', n: 'natural', '##': 'double-sharp', bb: 'flat-flat' } as const;

/** A head of an event: what it is, besides what all heads of the event share. */
export interface Head {
  /** `pitch` or `unpitched`. */
  readonly place: Xml;
  readonly instrument?: string;
  readonly accidental?: Xml;
  readonly notehead?: string;
  /** Ornaments and articulations of this head, in `notations`. */
  readonly notations?: readonly Xml[];
}

/** Where a staff's notes are written. */
export interface NotesPlace {
  readonly voice: number;
  /** Staff of the part from 1, or null in a part of one staff. */
  readonly staff: number | null;
}

const ARTICULATIONS: Readonly<Record<Articulation, Xml>> = {
  staccato: element('staccato'),
  tenuto: element('tenuto'),
  accent: element('accent'),
  marcato: element('strong-accent', [], { type: 'up' }),
};

/** The heads of a note or chord, lowest first: every altered note says its `alter`, whatever the key signature; fingers stand with their heads, articulations with the first. */
export function pitchHeads(event: NotatedEvent): Head[] {
  const { articulations, fingers } = event;
  const played =
    articulations.length === 0
      ? []
      : [
          element(
            'articulations',
            articulations.map((name) => ARTICULATIONS[name]),
          ),
        ];
  return event.pitches.map((pitch, index) => {
    const finger = fingers[index];
    const fingered = finger === undefined ? [] : [element('technical', [element('fingering', finger)])];
    return pitchHead(pitch, [...fingered, ...(index === 0 ? played : [])]);
  });
}

function pitchHead(pitch: NotatedPitch, notations: readonly Xml[]): Head {
  const place = element('pitch', [
    element('step', pitch.letter),
    pitch.alter === 0 ? undefined : element('alter', pitch.alter),
    element('octave', pitch.octave),
  ]);
  if (pitch.accidental === null) return { place, notations };
  return {
    place,
    notations,
    accidental: element('accidental', ACCIDENTALS[pitch.accidental], pitch.courtesy ? { cautionary: 'yes' } : {}),
  };
}

/** One staff of one bar as `note` elements with the tick each begins at, counted from the bar. Rests have no head; chords share one tick. */
export function noteElements(
  bar: StaffBar,
  headsOf: (event: NotatedEvent) => readonly Head[],
  at: NotesPlace,
): { readonly tick: number; readonly notes: readonly Xml[] }[] {
  const beams = beamElements(bar);
  return bar.events.map((event, index) => {
    if (event.kind === 'rest') return { tick: event.tick, notes: [restElement(event, at)] };
    const notes = headsOf(event).map((head, n) => noteElement(event, head, n > 0, n === 0 ? (beams.get(index) ?? []) : [], at));
    return { tick: event.tick, notes };
  });
}

function restElement(event: NotatedEvent, at: NotesPlace): Xml {
  return element('note', [
    element('rest', [], event.wholeBar ? { measure: 'yes' } : {}),
    duration(event),
    element('voice', at.voice),
    ...(event.wholeBar ? [] : typeOf(event)),
    staffOf(at),
  ]);
}

function noteElement(event: NotatedEvent, head: Head, chord: boolean, beams: readonly Xml[], at: NotesPlace): Xml {
  const ties = [...(event.tieIn ? ['stop'] : []), ...(event.tieOut ? ['start'] : [])];
  const notations = [...ties.map((type) => element('tied', [], { type })), ...(head.notations ?? [])];
  return element('note', [
    chord ? element('chord') : undefined,
    head.place,
    duration(event),
    ...ties.map((type) => element('tie', [], { type })),
    head.instrument === undefined ? undefined : element('instrument', [], { id: head.instrument }),
    element('voice', at.voice),
    ...typeOf(event),
    head.accidental,
    event.value.shape === 'whole' ? undefined : element('stem', event.stem),
    head.notehead === undefined ? undefined : element('notehead', head.notehead),
    staffOf(at),
    ...beams,
    notations.length === 0 ? undefined : element('notations', notations),
  ]);
}

const duration = (event: NotatedEvent): Xml => element('duration', event.ticks / TICKS_PER_DIVISION);
const typeOf = ({ value }: NotatedEvent): Xml[] => [
  element('type', TYPES[value.shape].name),
  ...(value.dots === 1 ? [element('dot')] : []),
];
const staffOf = ({ staff }: NotesPlace): Xml | undefined => (staff === null ? undefined : element('staff', staff));

/** Beams by event: on each level, neighbours of a group that both reach it are joined, and one alone gets a hook towards its neighbour. */
function beamElements(bar: StaffBar): Map<number, Xml[]> {
  const beams = new Map<number, Xml[]>();
  const levelOf = (index: number): number => {
    const event = bar.events[index];
    return event ? TYPES[event.value.shape].beams : 0;
  };
  for (const group of bar.beams) {
    group.forEach((index, n) => {
      const reaches = (other: number, level: number): boolean => {
        const neighbour = group[other];
        return neighbour !== undefined && levelOf(neighbour) >= level;
      };
      const said = Array.from({ length: levelOf(index) }, (_, below) => {
        const level = below + 1;
        const before = reaches(n - 1, level);
        const after = reaches(n + 1, level);
        const hook = n > 0 ? 'backward hook' : 'forward hook';
        return element('beam', before ? (after ? 'continue' : 'end') : after ? 'begin' : hook, { number: level });
      });
      beams.set(index, said);
    });
  }
  return beams;
}
