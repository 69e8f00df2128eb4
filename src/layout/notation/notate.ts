import type { SoundingBar } from '../../music/chart/chart';
import type { Score } from '../../music/score';
import { TICKS_PER_QUARTER, TICKS_PER_STEP } from '../../vocabulary';
import { printedChord } from '../../words/spoken';
import { signs } from './accidentals';
import { beamGroups, stemDirection } from './beams-and-stems';
import { claveSpans } from './clave-line';
import { keyFifths } from './key-fifths';
import type { BarMeter, ClefName, NotatedBar, Notation, PitchedStaff, StaffBar } from './notation';
import type { BarFrame } from './note-values';
import { barEvents, type PlainEvent, type Span, spans } from './strokes-to-events';
import { CLEF_LINES, fittingClef, staffStep } from './written-pitch';

/**
 * A score as written notes: for each bar and staff (clave, right hand, left hand, bass) note values that sum to the bar, ties, beams,
 * signs and stems, with chord symbols where they are written and the count. Bars keep their absolute ticks; nothing here draws.
 */
export function notate(score: Score): Notation {
  const frames = score.bars.map((bar) => barFrame(score, bar));
  const fifths = score.bars.map((bar) => keyFifths(bar.key));
  const right = spans(score.parts.rightHand, score.toTick);
  const left = spans(score.parts.leftHand, score.toTick);
  const bass = spans(score.parts.bass, score.toTick);
  const clefs = { right: 'treble', left: fittingClef(stepsOf(left), ['bass', 'treble', 'bass-8vb']), bass: 'bass-8vb' } as const;
  const staff = (all: readonly Span[], clef: ClefName): StaffBar[] => pitchedStaff(all, score, frames, fifths, clef);
  const staves: Record<PitchedStaff, StaffBar[]> = {
    right: staff(right, clefs.right),
    left: staff(left, clefs.left),
    bass: staff(bass, clefs.bass),
  };
  const starts = new Map(score.form.visits.map((visit) => [visit.fromBar, visit.section]));
  const meters = score.bars.map((bar) => barMeter(score, bar));
  const bars = score.bars.map((bar, i): NotatedBar => {
    const frame = frames[i] ?? barFrame(score, bar);
    return {
      index: bar.index,
      tick: bar.tick,
      ticks: bar.ticks,
      side: bar.side,
      sectionStart: starts.get(bar.index) ?? null,
      restart: bar.restart,
      chords: bar.chords.map((chord) => ({ tick: chord.tick - bar.tick, text: printedChord(chord.symbol), push: chord.push })),
      counts: countsOf(frame),
      meter: meters[i] ?? barMeter(score, bar),
      meterChange: i === 0 || JSON.stringify(meters[i]) !== JSON.stringify(meters[i - 1]),
      keyChange: i === 0 || fifths[i] !== fifths[i - 1],
      fifths: fifths[i] ?? 0,
      staves: { clave: claveBar(score, bar, frame), right: at(staves.right, i), left: at(staves.left, i), bass: at(staves.bass, i) },
    };
  });
  return { bars, clefs, closed: score.closed };
}

const EMPTY_BAR: StaffBar = { events: [], beams: [] };
const at = (bars: readonly StaffBar[], i: number): StaffBar => bars[i] ?? EMPTY_BAR;
const stepsOf = (all: readonly Span[]): number[] => all.flatMap((span) => span.pitches.map(staffStep));

/** How a bar of a score is divided for writing: cut time in halves, 6/8 in dotted quarters; a pickup fills the end of a whole bar. */
export function barFrame(score: Pick<Score, 'meter'>, bar: SoundingBar): BarFrame {
  const compound = score.meter === '6/8';
  const full = compound ? 3 * TICKS_PER_QUARTER : 4 * TICKS_PER_QUARTER;
  const shift = bar.kind === 'pickup' && bar.ticks < full ? full - bar.ticks : 0;
  return { half: full / 2, beat: compound ? TICKS_PER_STEP : TICKS_PER_QUARTER, shift, ticks: bar.ticks };
}

function barMeter(score: Score, bar: SoundingBar): BarMeter {
  if (score.meter === '6/8')
    return { kind: 'fraction', beats: bar.kind === 'pickup' ? 6 : Math.round(bar.ticks / TICKS_PER_STEP), unit: 8 };
  if (bar.ticks === 4 * TICKS_PER_QUARTER || bar.kind === 'pickup') return { kind: 'cut' };
  const quarters = bar.ticks / TICKS_PER_QUARTER;
  return Number.isInteger(quarters)
    ? { kind: 'fraction', beats: quarters, unit: 4 }
    : { kind: 'fraction', beats: Math.round(quarters * 2), unit: 8 };
}

/** `1 & 2 &` on the eighths of simple meters, `1` to `6` in 6/8. */
function countsOf(frame: BarFrame): { tick: number; text: string }[] {
  return Array.from({ length: Math.floor(frame.ticks / TICKS_PER_STEP) }, (_, i) => {
    const step = i + frame.shift / TICKS_PER_STEP;
    const text = frame.beat === TICKS_PER_STEP ? String(step + 1) : step % 2 === 0 ? String(step / 2 + 1) : '&';
    return { tick: i * TICKS_PER_STEP, text };
  });
}

function pitchedStaff(
  all: readonly Span[],
  score: Score,
  frames: readonly BarFrame[],
  fifths: readonly number[],
  clef: ClefName,
): StaffBar[] {
  const { bottom, top } = CLEF_LINES[clef];
  const plain = inBars(all, score, frames);
  const marked = signs(plain.map((events, i) => ({ fifths: fifths[i] ?? 0, events: events.filter((event) => event.kind !== 'rest') })));
  return plain.map((events, i) => {
    const beams = beamGroups(events, frames[i] ?? barFrame(score, score.bars[i] as SoundingBar));
    const notes = events.filter((event) => event.kind !== 'rest');
    const together = (n: number): readonly number[] => beams.find((group) => group.includes(n)) ?? [n];
    const stems = events.map((_, n) =>
      stemDirection(
        together(n).flatMap((m) => (events[m]?.pitches ?? []).map(staffStep)),
        (bottom + top) / 2,
      ),
    );
    return {
      beams,
      events: events.map((event, n) => {
        const found = marked[i]?.[notes.indexOf(event)];
        const pitches = event.pitches.map((pitch, p) => ({ ...pitch, ...(found?.[p] ?? { accidental: null, courtesy: false }) }));
        return { ...event, pitches, stem: stems[n] ?? 'up' };
      }),
    };
  });
}

/** Events of each bar; spans are in order, so each bar looks only at those that can reach it. */
function inBars(all: readonly Span[], score: Score, frames: readonly BarFrame[]): PlainEvent[][] {
  let first = 0;
  return score.bars.map((bar, i) => {
    while ((all[first]?.to ?? Number.POSITIVE_INFINITY) <= bar.tick) first++;
    let last = first;
    while ((all[last]?.from ?? Number.POSITIVE_INFINITY) < bar.tick + bar.ticks) last++;
    return barEvents(all.slice(first, last), bar.tick, frames[i] ?? barFrame(score, bar), 'notes');
  });
}

function claveBar(score: Score, bar: SoundingBar, frame: BarFrame): StaffBar {
  const strokes = score.parts.clave.filter((stroke) => stroke.tick >= bar.tick && stroke.tick < bar.tick + bar.ticks);
  const events = barEvents(claveSpans(strokes, bar.tick, frame), bar.tick, frame, 'stroke');
  return { beams: beamGroups(events, frame), events: events.map((event) => ({ ...event, pitches: [], stem: 'up' })) };
}
