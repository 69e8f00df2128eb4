import { type NotatedBar, type NotatedEvent, PLAYED_STAVES } from '../notation/notation';

/**
 * Everything that begins in a bar, as text to compare, whatever its place in the form. What rings in from before, notes of the first pass alone, reminders of
 * the bar before, fingers that are shown anew and signatures that only the start shows are left out.
 */
export function barContent(bar: NotatedBar): string {
  const { ticks, sides, hits, silence, chords, fifths, meter, restart } = bar;
  const staves = PLAYED_STAVES.map((staff) =>
    bar.staves[staff].events.filter((event) => event.kind !== 'rest' && !isLead(event)).map(begun),
  );
  return JSON.stringify([ticks, sides, hits, silence, chords, fifths, meter, restart, staves]);
}

/** Notes that ring into the bar, staff by staff; empty where nothing does, or where a note of the first pass stands in their place. */
const ringingIn = (bar: NotatedBar): string[] =>
  PLAYED_STAVES.map((staff) => {
    const [first] = bar.staves[staff].events;
    return first?.tieIn && !first.firstPassOnly ? first.pitches.map((pitch) => pitch.midi).join(' ') : '';
  });

/** Says whether a bar can stand for another one that begins the same passage later: what rings in is the same, or nothing is printed for it. */
export function standsFor(printed: NotatedBar, later: NotatedBar): boolean {
  const here = ringingIn(printed);
  const there = ringingIn(later);
  return barContent(printed) === barContent(later) && here.every((notes, i) => notes === '' || notes === there[i]);
}

const isLead = (event: NotatedEvent): boolean => event.firstPassOnly || (event.tick === 0 && event.tieIn);

const begun = ({ tick, value, kind, pitches, tieIn, tieOut, ringsOn, octaves, articulations }: NotatedEvent) => [
  tick,
  value,
  kind,
  pitches.map((pitch) => pitch.midi),
  tieIn,
  tieOut || ringsOn,
  octaves,
  articulations,
];
