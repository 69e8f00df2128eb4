import { secondsOf, tempoAt } from '../performance/tempo';
import { TICKS_PER_STEP } from '../vocabulary';
import { strokeOf } from './find-notes';
import type { Finding } from './finding';
import type { LabelledStroke } from './labelled';
import { loopAround, loopOfHabit, mostFrequent, worstBar } from './repair-loop';
import { meanOf, spreadOf, withoutOutliers } from './statistics';
import type { Take, TakenNote } from './take';
import { LIMITS } from './timing-limits';

/** Strokes below which nothing is said about the touch. */
const LEAST = 6;

/** Hands that are apart, notes cut short before a silent downbeat, inner notes as loud as the octaves. Needs notes. */
export function findTouch(take: Take, strokes: readonly LabelledStroke[]): Finding[] {
  if (!take.pitched) return [];
  const struck = strokes.filter(({ expected, played }) => expected && played);
  return [...handsApart(take, struck), ...cutShort(take, strokes), ...innerLoud(take, struck)];
}

function handsApart(take: Take, struck: readonly LabelledStroke[]): Finding[] {
  if (take.timing === 'coarse' || take.timing === 'off') return [];
  const apart = struck.flatMap(({ expected, played }) => {
    if (!expected || !played) return [];
    const moments = (part: 'piano right' | 'piano left') =>
      played.notes
        .filter(({ midi }) => expected.notes.some((note) => note.part === part && note.midi === midi))
        .map(({ at }) => at as number);
    const [left, right] = [meanOf(moments('piano left')), meanOf(moments('piano right'))];
    return left === null || right === null ? [] : [1000 * (left - right)];
  });
  const kept = withoutOutliers(apart);
  const mean = meanOf(kept) ?? 0;
  const error = (spreadOf(kept) ?? 0) / Math.sqrt(Math.max(1, kept.length));
  if (kept.length < LEAST || Math.abs(mean) < LIMITS.handsApartMs.value || Math.abs(mean) < 3 * error) return [];
  return [{ facts: { kind: 'hands apart', leftBehindMs: mean }, weight: 0.5, loop: loopOfHabit(take.music.performance) }];
}

/** Strokes of the last beat of a bar that must ring on, because nothing is struck before step 1 of the next, and were let go early. */
function cutShort(take: Take, strokes: readonly LabelledStroke[]): Finding[] {
  // In 6/8 no stroke is written over a silent downbeat.
  if (take.music.performance.clave.cycleSteps !== 16) return [];
  const asked = strokes.flatMap(({ expected }) => (expected ? [expected] : []));
  const ringing = strokes.filter(({ expected, played }) => {
    if (!expected || !played || (expected.step !== 6 && expected.step !== 7)) return false;
    const next = asked[asked.indexOf(expected) + 1];
    const barEnd = expected.playTick + (8 - expected.step) * TICKS_PER_STEP;
    const wanted = Math.max(...expected.notes.map(({ soundingTicks }) => soundingTicks));
    return next !== undefined && next.playTick > barEnd && wanted >= LIMITS.ringSteps.value * TICKS_PER_STEP;
  });
  const known = ringing.filter(({ played }) => played?.notes.every(({ until }) => until !== null));
  const short = known.filter(({ played }) => played && lengthInSteps(take, played.notes) < LIMITS.ringSteps.value);
  if (short.length < 3 || short.length < 0.5 * known.length) return [];
  const bar = worstBar(short);
  const step = mostFrequent(short.flatMap(({ expected }) => (expected ? [expected.step] : []))) ?? 7;
  const facts = { kind: 'cut short', count: short.length, of: known.length, step, bar } as const;
  return [{ facts, weight: 0.45, loop: loopAround(take.music.performance, bar + 1, 1) }];
}

function lengthInSteps(take: Take, notes: readonly TakenNote[]): number {
  const longest = Math.max(...notes.map(({ at, until }) => (until ?? at) - at));
  return longest / secondsOf(TICKS_PER_STEP, tempoAt(take.tempo, take.fromPlayTick));
}

function innerLoud({ score, music }: Take, struck: readonly LabelledStroke[]): Finding[] {
  if (score === null) return [];
  const of = (role: 'octave' | 'inner') =>
    struck.flatMap(({ expected, played }) => {
      if (!expected || !played || strokeOf(score, expected)?.role !== role) return [];
      return [meanOf(played.notes.map(({ velocity }) => velocity)) ?? 0];
    });
  const [octaves, inner] = [of('octave'), of('inner')];
  // Keys without touch give every note the same velocity: nothing can be said.
  if (octaves.length < LEAST || inner.length < LEAST || (spreadOf([...octaves, ...inner]) ?? 0) === 0) return [];
  const apart = (meanOf(octaves) ?? 0) - (meanOf(inner) ?? 0);
  const error = Math.hypot((spreadOf(octaves) ?? 0) / Math.sqrt(octaves.length), (spreadOf(inner) ?? 0) / Math.sqrt(inner.length));
  if (apart + 2 * error >= LIMITS.innerApart.value) return [];
  return [{ facts: { kind: 'inner loud', velocityApart: apart }, weight: 0.25, loop: loopOfHabit(music.performance) }];
}
