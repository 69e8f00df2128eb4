import type { Score } from '../music/score';
import type { PianoStroke } from '../vocabulary';
import type { Finding } from './finding';
import type { ExpectedStroke, LabelledStroke } from './labelled';
import { loopAround, mostFrequent, worstBar } from './repair-loop';
import { placeOf } from './step-pictures';
import type { Take } from './take';

/** Shares of the strokes from which a fault is worth a sentence, and the least number. Chosen here: one slip is a slip. */
const WORTH = { missed: 0.06, extra: 0.06, wrong: 0.04, lateChords: 0.2, octave: 0.05, least: 2 } as const;

/** Wrong notes, chords changed late, strokes left out and added. `strokes` are those of stretches in place. */
export function findNotes(take: Take, strokes: readonly LabelledStroke[]): Finding[] {
  const asked = strokes.filter(({ expected }) => expected !== null);
  if (asked.length === 0) return [];
  const early = asked.filter(({ expected, played }) => played && expected && takesEarly(take.score, expected)).length;
  const sure = strokes.filter((stroke) => isLateChord(take.score, stroke));
  const habit = sure.length >= WORTH.least && sure.length >= WORTH.lateChords * early;
  // Whose hand stays, stays on tones that both chords have too.
  const late = habit ? strokes.filter((stroke) => sure.includes(stroke) || stays(take.score, stroke)) : sure;
  return [
    ...(habit ? lateChords(take, early, late) : []),
    ...wrongNotes(
      take,
      asked,
      strokes.filter((stroke) => !late.includes(stroke)),
    ),
    ...missed(take, asked),
    ...extra(take, asked, strokes),
  ];
}

function lateChords({ music }: Take, of: number, late: readonly LabelledStroke[]): Finding[] {
  const bar = worstBar(late);
  const step = mostFrequent(late.flatMap(({ expected }) => (expected ? [expected.step] : []))) ?? 7;
  const facts = { kind: 'late chords', count: late.length, of, step, bar } as const;
  return [{ facts, weight: 0.62 + (0.3 * late.length) / of, loop: loopAround(music.performance, bar + 1, 1) }];
}

function wrongNotes({ music, score }: Take, asked: readonly LabelledStroke[], strokes: readonly LabelledStroke[]): Finding[] {
  const found: Finding[] = [];
  const wrong = strokes.filter(({ label }) => label === 'wrong note');
  if (wrong.length >= WORTH.least && wrong.length >= WORTH.wrong * asked.length) {
    const bar = worstBar(wrong);
    const chords = wrong.flatMap(({ expected }) => (expected && score ? (strokeOf(score, expected)?.chord ?? []) : []));
    const chord = mostFrequent(chords);
    const own = chord !== null && chords.filter((each) => each === chord).length >= 0.6 * wrong.length ? chord : null;
    const facts = { kind: 'wrong notes', count: wrong.length, of: asked.length, chord: own, bar } as const;
    found.push({ facts, weight: Math.min(0.93, 0.55 + wrong.length / asked.length), loop: loopAround(music.performance, bar) });
  }
  const octave = strokes.filter(({ label }) => label === 'wrong octave');
  if (octave.length >= WORTH.least && octave.length >= WORTH.octave * asked.length) {
    const bar = worstBar(octave);
    const facts = { kind: 'wrong octave', count: octave.length, of: asked.length, bar } as const;
    found.push({ facts, weight: 0.35 + (0.3 * octave.length) / asked.length, loop: loopAround(music.performance, bar) });
  }
  return found;
}

function missed({ music }: Take, asked: readonly LabelledStroke[]): Finding[] {
  const left = asked.filter(({ label }) => label === 'missed');
  if (left.length < WORTH.least || left.length < WORTH.missed * asked.length) return [];
  const bar = worstBar(left);
  const step = dominant(left.flatMap(({ expected }) => (expected ? [expected.step] : [])));
  const facts = { kind: 'missed', count: left.length, of: asked.length, step, bar } as const;
  return [{ facts, weight: Math.min(0.92, 0.5 + left.length / asked.length), loop: loopAround(music.performance, bar) }];
}

function extra(take: Take, asked: readonly LabelledStroke[], strokes: readonly LabelledStroke[]): Finding[] {
  const more = strokes.filter(({ label }) => label === 'extra');
  if (more.length < WORTH.least || more.length < WORTH.extra * asked.length) return [];
  const places = more.map(({ playTick }) => placeOf(take, playTick));
  const bar = mostFrequent(places.map((place) => place.bar)) ?? 0;
  const facts = { kind: 'extra', count: more.length, step: dominant(places.map((place) => place.step)), bar } as const;
  return [{ facts, weight: Math.min(0.9, 0.45 + more.length / asked.length), loop: loopAround(take.music.performance, bar) }];
}

/** The step on which at least three in five lie, or null. */
function dominant(steps: readonly number[]): number | null {
  const step = mostFrequent(steps);
  return step !== null && steps.filter((each) => each === step).length >= 0.6 * steps.length ? step : null;
}

/** The stroke of the score that a stroke asked for was made from; the right hand's where both have one. */
export function strokeOf({ parts }: Score, { tick }: ExpectedStroke): PianoStroke | null {
  return strokesAt(parts.rightHand).get(tick) ?? strokesAt(parts.leftHand).get(tick) ?? null;
}

const indexes = new WeakMap<readonly PianoStroke[], ReadonlyMap<number, PianoStroke>>();
function strokesAt(strokes: readonly PianoStroke[]): ReadonlyMap<number, PianoStroke> {
  const known = indexes.get(strokes);
  if (known) return known;
  const index = new Map(strokes.map((stroke) => [stroke.tick, stroke]));
  indexes.set(strokes, index);
  return index;
}

const takesEarly = (score: Score | null, expected: ExpectedStroke): boolean =>
  score !== null && (strokeOf(score, expected)?.leadTicks ?? 0) > 0 && oldOnlyPcs(score, expected).length > 0;

/**
 * The old chord where the new one is taken early: most of the notes that do not belong are tones of the chord still written there, and
 * at least one of them of that chord alone. A hand that stays also keeps the tones which the two chords share.
 */
export function isLateChord(score: Score | null, stroke: LabelledStroke): boolean {
  if (score === null || stroke.expected === null || !stays(score, stroke)) return false;
  const oldOnly = oldOnlyPcs(score, stroke.expected);
  return stroke.wrong.some(({ midi }) => oldOnly.includes((midi ?? 0) % 12));
}

/** Where the new chord is taken early: most of the notes that do not belong are of the old one, be they of the new one too. */
function stays(score: Score | null, { expected, label, wrong }: LabelledStroke): boolean {
  if (score === null || expected === null || label !== 'wrong note' || !takesEarly(score, expected)) return false;
  const old = oldPcs(score, expected);
  return 2 * wrong.filter(({ midi }) => old.includes((midi ?? 0) % 12)).length > wrong.length;
}

/** Tones of the chord written at a stroke, and what the figure itself has played over it up to there: a sixth, a moving line. */
function oldPcs(score: Score, { tick }: ExpectedStroke): number[] {
  const from = chordAt(score, tick)?.tick ?? tick;
  const { rightHand, leftHand } = score.parts;
  const before = [...rightHand, ...leftHand].filter((stroke) => stroke.tick >= from && stroke.tick < tick && stroke.leadTicks === 0);
  return [...tonesAt(score, tick), ...before.flatMap(({ midi }) => midi.map((note) => note % 12))];
}

/** The same without the tones of the chord that the stroke looks ahead to. */
function oldOnlyPcs(score: Score, expected: ExpectedStroke): number[] {
  const lead = strokeOf(score, expected)?.leadTicks ?? 0;
  const taken = tonesAt(score, nextTick(score, expected.tick + lead));
  return oldPcs(score, expected).filter((pc) => !taken.includes(pc));
}

const nextTick = ({ fromTick, toTick, closed }: Score, tick: number): number =>
  tick < toTick ? tick : closed ? fromTick + (tick - toTick) : toTick - 1;

function tonesAt(score: Score, tick: number): number[] {
  const found = chordAt(score, tick)?.chord;
  return found ? found.tones.map(({ pc }) => ((pc % 12) + 12) % 12) : [];
}

const chordAt = ({ bars }: Score, tick: number) => bars.flatMap(({ chords }) => chords).findLast((candidate) => candidate.tick <= tick);
