import type { SoundingBar } from '../../music/chart/chart';
import type { Score } from '../../music/score';
import { TICKS_PER_STEP } from '../../vocabulary';
import { printedChord } from '../../words/spoken';
import { signs } from './accidentals';
import { articulationsOf } from './articulation';
import { beamGroups, stemDirection } from './beams-and-stems';
import { claveSpans } from './clave-line';
import { type Fingering, withFingers } from './fingering';
import { keyFifths } from './key-fifths';
import type { ClefName, Habit, NotatedBar, NotatedEvent, Notation, PitchedStaff, StaffBar } from './notation';
import { octaveShifts } from './octave-lines';
import { barEvents, type PlainEvent, type Span, spans } from './strokes-to-events';
import { countsOf, scaleOf, type WrittenBar, writtenBars } from './written-bars';
import { CLEF_LINES, fittingClef, staffStep } from './written-pitch';

/** What a reader may choose: how values are written, and how much fingering is printed. */
export interface NotateOptions {
  readonly habit?: Habit;
  readonly fingering?: Fingering;
}

/** Bars after which fingering is shown anew even where nothing changed: as many as a line usually holds. */
const FRESH_FINGERS_BARS = 4;

/**
 * A score as written notes: for each bar and staff (clave, right hand, left hand, bass) note values that sum to the bar, ties, beams, signs, stems,
 * octave lines, articulation and fingers, with chord symbols where they are written and the count. Ticks stay those of the score in either habit; nothing
 * here draws.
 */
export function notate(score: Score, options: NotateOptions = {}): Notation {
  const habit = options.habit ?? 'eighths';
  const fingering = options.fingering ?? 'none';
  const scale = scaleOf(score, habit);
  const written = writtenBars(score, habit);
  const right = spans(score.parts.rightHand, score.toTick, scale);
  const left = spans(score.parts.leftHand, score.toTick, scale);
  const bass = spans(score.parts.bass, score.toTick, scale);
  const clefs = { right: 'treble', left: fittingClef(stepsOf(left), ['bass', 'treble', 'bass-8vb']), bass: 'bass-8vb' } as const;
  const freshAt = freshTicks(score, scale);
  const withMarks = (hand: 'right' | 'left', all: readonly Span[]): Span[] => {
    const shifts = octaveShifts(all, clefs[hand]);
    const articulated = hand === 'right' || right.length === 0;
    return withFingers(all, hand, fingering, freshAt).map((span, i) => ({
      ...span,
      octaves: shifts[i] ?? 0,
      articulations: articulated && span.stroke ? articulationsOf(span.stroke, placeOf(score, span, scale)) : [],
    }));
  };
  const staff = (all: readonly Span[], clef: ClefName): StaffBar[] => pitchedStaff(all, written, scale, clef);
  const staves: Record<PitchedStaff, StaffBar[]> = {
    right: staff(withMarks('right', right), clefs.right),
    left: staff(withMarks('left', left), clefs.left),
    bass: staff(bass, clefs.bass),
  };
  const starts = new Map(score.form.visits.map((visit) => [visit.fromBar, visit.section]));
  const bars = written.map((bar, i): NotatedBar => {
    const [first] = bar.bars;
    const before = written[i - 1];
    const fifths = keyFifths(first.key);
    return {
      index: first.index,
      count: bar.bars.length,
      tick: bar.tick,
      ticks: bar.ticks,
      side: first.side,
      sides: bar.bars.map(({ tick, side }) => ({ tick: tick - bar.tick, side })),
      hits: bar.bars.flatMap(({ tick, hits }) => hits.map(({ step, held }) => ({ tick: tick - bar.tick + step * TICKS_PER_STEP, held }))),
      silence: silenceOf(bar.bars),
      repeat: { start: false, end: null },
      ending: null,
      sectionStart: starts.get(first.index) ?? null,
      restart: first.restart,
      chords: bar.bars.flatMap(chordsAt(bar.tick)),
      counts: countsOf(bar, scale),
      meter: bar.meter,
      meterChange: JSON.stringify(bar.meter) !== JSON.stringify(before?.meter),
      keyChange: before === undefined || fifths !== keyFifths(before.bars[0].key),
      fifths,
      staves: {
        clave: claveBar(score, bar, scale),
        rhythm: rhythmBar((right.length > 0 ? staves.right : staves.left)[i] ?? EMPTY_BAR),
        right: staves.right[i] ?? EMPTY_BAR,
        left: staves.left[i] ?? EMPTY_BAR,
        bass: staves.bass[i] ?? EMPTY_BAR,
      },
    };
  });
  return { bars, clefs, ends: score.closed ? 'repeat' : 'final', scale };
}

const EMPTY_BAR: StaffBar = { events: [], beams: [] };
const stepsOf = (all: readonly Span[]): number[] => all.flatMap((span) => span.pitches.map(staffStep));

/** Chords of a sounding bar from the start of its written bar; one that is only carried into the second half is not printed again. */
function chordsAt(from: number) {
  return (bar: SoundingBar, _: number, all: readonly SoundingBar[]): NotatedBar['chords'] => {
    const before = all[0] === bar ? undefined : all[0]?.chords.at(-1)?.symbol;
    return bar.chords
      .filter((chord, i) => i > 0 || chord.symbol !== before)
      .map((chord) => ({ tick: chord.tick - from, text: printedChord(chord.symbol), push: chord.push }));
  };
}

function silenceOf(bars: readonly SoundingBar[]): NotatedBar['silence'] {
  if (bars.some((bar) => bar.playing === 'band')) return null;
  return bars.every((bar) => bar.playing === 'nobody') ? 'stop' : 'rest';
}

/** Written ticks where a reader starts anew: every section and every few bars in it. */
function freshTicks(score: Score, scale: 1 | 2): number[] {
  const starts = score.form.visits.map((visit) => visit.fromBar);
  let since = 0;
  return score.bars.flatMap((bar) => {
    if (starts.includes(bar.index) || since === FRESH_FINGERS_BARS) since = 0;
    since++;
    return since === 1 ? [bar.tick / scale] : [];
  });
}

/** What `articulationsOf` needs to know of a stroke's place: hits and pushes of its bar, and whether it is tied over a barline. */
function placeOf(score: Score, span: Span, scale: 1 | 2) {
  const tick = span.stroke?.tick ?? 0;
  const at = score.bars.findLastIndex((bar) => bar.tick <= tick);
  const bar = score.bars[at];
  const end = (bar?.tick ?? 0) + (bar?.ticks ?? 0);
  const hit = bar?.hits.some(({ step }) => bar.tick + step * TICKS_PER_STEP === tick) ?? false;
  const pushes = [bar, score.bars[at + 1]].flatMap((one) => one?.chords.filter((chord) => chord.push) ?? []);
  const pushed = pushes.some((chord) => chord.tick - TICKS_PER_STEP === tick);
  return { withBand: hit || pushed, tied: span.to * scale > end || span.ringsOn, fourFour: score.meter === '4/4' };
}

function pitchedStaff(all: readonly Span[], written: readonly WrittenBar[], scale: 1 | 2, clef: ClefName): StaffBar[] {
  const { bottom, top } = CLEF_LINES[clef];
  const plain = inBars(all, written, scale);
  const marked = signs(
    plain.map((events, i) => ({
      fifths: keyFifths(written[i]?.bars[0].key ?? { tonic: 'C', mode: 'major' }),
      events: events.filter((event) => event.kind !== 'rest').map((event) => ({ ...event, pitches: event.pitches.map(lowered(event)) })),
    })),
  );
  return plain.map((events, i) => {
    const frame = written[i]?.frame;
    const beams = frame ? beamGroups(events, frame) : [];
    const notes = events.filter((event) => event.kind !== 'rest');
    const together = (n: number): readonly number[] => beams.find((group) => group.includes(n)) ?? [n];
    const stepsIn = (m: number): number[] => (events[m] ? events[m].pitches.map(lowered(events[m])).map(staffStep) : []);
    return {
      beams,
      events: events.map((event, n) => {
        const found = marked[i]?.[notes.indexOf(event)];
        const pitches = event.pitches.map((pitch, p) => ({ ...pitch, ...(found?.[p] ?? { accidental: null, courtesy: false }) }));
        const stem = stemDirection(together(n).flatMap(stepsIn), (bottom + top) / 2);
        return { ...inScoreTicks(event, scale), pitches, stem };
      }),
    };
  });
}

/** Pitches as an octave line lets them be written. */
const lowered =
  (event: Pick<PlainEvent, 'octaves'>) =>
  <Pitch extends { readonly octave: number }>(pitch: Pitch): Pitch => ({ ...pitch, octave: pitch.octave - event.octaves });

const inScoreTicks = (event: PlainEvent, scale: 1 | 2): PlainEvent => ({ ...event, tick: event.tick * scale, ticks: event.ticks * scale });

/** Events of each bar in written ticks; spans are in order, so each bar looks only at those that can reach it. */
function inBars(all: readonly Span[], written: readonly WrittenBar[], scale: 1 | 2): PlainEvent[][] {
  let first = 0;
  return written.map((bar) => {
    const tick = bar.tick / scale;
    while ((all[first]?.to ?? Number.POSITIVE_INFINITY) <= tick) first++;
    let last = first;
    while ((all[last]?.from ?? Number.POSITIVE_INFINITY) < tick + bar.frame.ticks) last++;
    return barEvents(all.slice(first, last), tick, bar.frame, 'notes');
  });
}

/** The rhythm of a staff on one line: same values, ties and beams. */
const rhythmBar = (bar: StaffBar): StaffBar => ({
  beams: bar.beams,
  events: bar.events.map((event) => ({
    ...event,
    pitches: [],
    octaves: 0,
    fingers: [],
    stem: 'up',
    kind: event.kind === 'notes' ? 'stroke' : event.kind,
  })),
});

function claveBar(score: Score, bar: WrittenBar, scale: 1 | 2): StaffBar {
  const strokes = score.parts.clave.filter((stroke) => stroke.tick >= bar.tick && stroke.tick < bar.tick + bar.ticks);
  const events = barEvents(claveSpans(strokes, bar.tick / scale, bar.frame, scale), bar.tick / scale, bar.frame, 'stroke');
  return {
    beams: beamGroups(events, bar.frame),
    events: events.map((event): NotatedEvent => ({ ...inScoreTicks(event, scale), pitches: [], stem: 'up' })),
  };
}
