import { secondsAt, tempoAt, tickAt } from '../performance/tempo';
import { TICKS_PER_STEP } from '../vocabulary';
import type { Due, Pair } from './align-strokes';
import { alignStrokes } from './align-strokes';
import { clapsOfThreeSide, withEndingOf } from './clave-heard';
import { type CycleLag, displacedSteps } from './displacement';
import { expectedStrokes } from './expected-strokes';
import { gatherStrokes, strokeOf } from './gather-strokes';
import { guideLag } from './guide-lag';
import { extraStroke, type Judged, labelAnswer, missedStroke, octaveShiftOf } from './label-strokes';
import type { ExpectedStroke, LabelledStroke, Matched, PlayedStroke, Stretch } from './labelled';
import { lagTrack } from './lag-track';
import { meanOf, spreadOf, withoutOutliers } from './statistics';
import type { Take } from './take';

/*
 * A take against what was asked for, in four steps: notes are gathered into strokes (gather-strokes.ts); the lag of the whole pattern
 * is followed cycle by cycle (lag-track.ts), which tells a delay or a slow drift from a pattern in the wrong place; within a stretch of
 * one displacement, strokes are paired in order by dynamic programming (align-strokes.ts); each gets a label (label-strokes.ts).
 *
 * matchTake(take).strokes → what to draw on the grid; .stretches → crossed or not; assess(take, matched) → what to say (assess.ts).
 */

/**
 * Labels every stroke of a take. Deterministic; the take is not changed. A take of 30 minutes takes about a second. An empty take
 * has every stroke missed, offset 0 and one stretch in place.
 */
export function matchTake(take: Take): Matched {
  const played = gatherStrokes(take.notes, take.tempo);
  const track = lagTrack(take, played);
  const stretches = stretchesOf(take, track);
  const places = played.map(({ at }) => tickAt(take.tempo, at));
  const claveHeard = take.parts.includes('clave') ? clapsOfThreeSide(take, played, track) : null;
  const parts = stretches.map((stretch) => {
    const inside = (place: number): boolean => {
      const half = TICKS_PER_STEP / 2;
      const lag = lagAt(take, track, place);
      return place - lag >= stretch.fromPlayTick - half && place - lag < stretch.toPlayTick - half;
    };
    const strokes = played.filter((_, at) => inside(places[at] ?? 0));
    const asked = withEndingOf(
      expectedStrokes(take, stretch.fromPlayTick, stretch.toPlayTick, stretch.displacedSteps),
      claveHeard,
      take.music.performance,
      stretch.displacedSteps,
    );
    return pairStretch(take, stretch, asked, strokes, track);
  });
  return labelled(take, parts, stretches, claveHeard);
}

interface PairedStretch {
  readonly stretch: Stretch;
  readonly dues: readonly Due[];
  readonly strokes: readonly PlayedStroke[];
  readonly pairs: readonly Pair[];
}

function pairStretch(
  take: Take,
  stretch: Stretch,
  asked: readonly ExpectedStroke[],
  strokes: readonly PlayedStroke[],
  track: readonly CycleLag[],
): PairedStretch {
  const guide = guideLag(take, stretch, asked, strokes, track);
  const dues = asked.map((stroke): Due => {
    const otherAt = stroke.otherEnding === null ? null : secondsAt(take.tempo, stroke.otherEnding);
    return { stroke, at: stroke.at, otherAt, lag: guide(stroke.at) };
  });
  const pitched = take.pitched && stretch.displacedSteps === 0;
  let joined = strokes;
  let pairs = alignStrokes(dues, joined, pitched);
  for (let turn = 0; pitched && turn < MOST_PIECES; turn += 1) {
    const next = joinRolled(dues, joined, pairs);
    if (next === joined) break;
    joined = next;
    pairs = alignStrokes(dues, joined, pitched);
  }
  return { stretch, dues, strokes: joined, pairs };
}

/** A rolled chord is put together again from at most this many further pieces … */
const MOST_PIECES = 4;
/** … that lie within this share of a step: hands 80 ms apart are two hands, not two strokes. */
const ROLL_SHARE = 0.6;

/** A stroke left over whose notes are just those that its neighbour lacks is a slowly rolled chord or the other hand, not two strokes. */
function joinRolled(dues: readonly Due[], strokes: readonly PlayedStroke[], pairs: readonly Pair[]): readonly PlayedStroke[] {
  const paired = new Map(pairs.map((pair) => [pair.played, pair]));
  const joined: PlayedStroke[] = [];
  let changed = false;
  strokes.forEach((stroke, index) => {
    const before = joined.at(-1);
    const pair = paired.get(index) ?? paired.get(index - 1);
    const due = pair && dues[pair.expected];
    const together = before && due && paired.has(index) !== paired.has(index - 1);
    if (together && stroke.at - before.at < (ROLL_SHARE * due.stroke.stepMs) / 1000 && completes(due.stroke, before, stroke)) {
      joined[joined.length - 1] = strokeOf([...before.notes, ...stroke.notes]);
      changed = true;
    } else joined.push(stroke);
  });
  return changed ? joined : strokes;
}

function completes(asked: ExpectedStroke, first: PlayedStroke, second: PlayedStroke): boolean {
  const wanted = new Set(asked.notes.map(({ midi }) => midi));
  const notes = [...first.notes, ...second.notes].map(({ midi }) => midi);
  return notes.every((midi) => wanted.has(midi)) && new Set(notes).size === notes.length;
}

function labelled(take: Take, parts: readonly PairedStretch[], stretches: readonly Stretch[], claveHeard: Matched['claveHeard']): Matched {
  const raw = parts.flatMap(({ pairs, strokes }) => pairs.map(({ played, due }) => 1000 * ((strokes[played]?.at ?? due) - due)));
  const kept = withoutOutliers(raw);
  const offsetMs = meanOf(kept) ?? 0;
  const answers = parts
    .filter(({ stretch }) => stretch.displacedSteps === 0)
    .flatMap(({ dues, strokes, pairs }) => pairs.flatMap((pair) => answered(dues, strokes, pair)));
  const octaveShift = take.pitched ? octaveShiftOf(answers) : 0;
  const strokes = parts.flatMap((part) => {
    const judged: Judged = {
      pitches: take.pitched && part.stretch.displacedSteps === 0,
      moments: take.timing === 'calibrated' || take.timing === 'uncalibrated',
      octaveShift,
    };
    return labelStretch(take, part, judged, offsetMs);
  });
  const inOrder = strokes.sort((a, b) => a.playTick - b.playTick);
  return { strokes: inOrder, offsetMs, spreadMs: spreadOf(kept), stretches, claveHeard, octaveShift };
}

const answered = (dues: readonly Due[], strokes: readonly PlayedStroke[], pair: Pair) => {
  const expected = dues[pair.expected]?.stroke;
  const played = strokes[pair.played];
  return expected && played ? [{ expected, played, pair }] : [];
};

function labelStretch(take: Take, { dues, strokes, pairs }: PairedStretch, judged: Judged, offsetMs: number): LabelledStroke[] {
  const found: LabelledStroke[] = [];
  const expectedDone = new Set<number>();
  const playedDone = new Set<number>();
  for (const pair of pairs)
    for (const { expected, played } of answered(dues, strokes, pair)) {
      expectedDone.add(pair.expected);
      playedDone.add(pair.played);
      const deviationMs = 1000 * (played.at - pair.due) - offsetMs;
      found.push(labelAnswer({ expected, played, otherEnding: pair.otherEnding, deviationMs }, judged));
    }
  dues.forEach(({ stroke }, index) => {
    if (!expectedDone.has(index)) found.push(missedStroke(stroke));
  });
  strokes.forEach((stroke, index) => {
    if (!playedDone.has(index))
      found.push(extraStroke(stroke, tickAt(take.tempo, stroke.at) - (offsetMs / 1000) * ticksPerSecond(take, stroke)));
  });
  return found;
}

/** At a tempo of 60 half notes a minute, 960 ticks last one second. */
const ticksPerSecond = (take: Take, { at }: PlayedStroke): number => 16 * tempoAt(take.tempo, tickAt(take.tempo, at));

/** The lag that is left when the displacement is taken off, at a play tick. */
function lagAt(take: Take, track: readonly CycleLag[], playTick: number): number {
  const cycle = track.find(({ toPlayTick }) => playTick < toPlayTick) ?? track.at(-1);
  return cycle ? cycle.lagTicks - displacedSteps(take, cycle) * TICKS_PER_STEP : 0;
}

function stretchesOf(take: Take, track: readonly CycleLag[]): Stretch[] {
  const half = take.music.performance.clave.cycleSteps / 2;
  const found: Stretch[] = [];
  for (const cycle of track) {
    const steps = displacedSteps(take, cycle);
    const last = found.at(-1);
    if (last?.displacedSteps === steps) found[found.length - 1] = { ...last, toPlayTick: cycle.toPlayTick };
    else {
      const { fromPlayTick, toPlayTick } = cycle;
      found.push({ fromPlayTick, toPlayTick, displacedSteps: steps, crossed: steps === half });
    }
  }
  return found;
}
