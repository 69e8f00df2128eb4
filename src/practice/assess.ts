import { findNotes } from './find-notes';
import { findPlace, stoppedAt } from './find-place';
import { findTiming, LEAST_FOR_TIMING } from './find-timing';
import { findTouch } from './find-touch';
import type { Assessment, Finding } from './finding';
import type { LabelledStroke, Matched } from './labelled';
import { stepPictures } from './step-pictures';
import type { Take } from './take';

/*
 * What a good teacher would say after a take: the worst thing first, at most three, each with the bars to loop. What is wrong with the
 * place of the whole is one mistake: strokes of a displaced stretch are not counted again as missed, extra or wrong.
 *
 * assess(take, matchTake(take)).findings → `FINDINGS.sentence(facts)` of src/words/findings.ts for each.
 */

const MOST_SAID = 3;
/** A pass is clean when at most this share of its strokes was missed, extra or wrong. Design value. */
const CLEAN_SHARE = 0.05;

/** Judges a matched take. Deterministic; nothing is changed. */
export function assess(take: Take, matched: Matched): Assessment {
  const inPlace = matched.strokes.filter((stroke) => displacementAt(matched, stroke) === 0);
  const asked = matched.strokes.filter(({ expected }) => expected !== null);
  const steps = stepPictures(take, matched.strokes);
  const place = findPlace(take, matched);
  const timing = findTiming(take, matched, steps);
  const silent = place.some(({ facts }) => facts.kind === 'silent');
  const notes = silent ? [] : findNotes(take, beforeStop(take, matched, inPlace));
  const all = [...place, ...notes, ...timing, ...findTouch(take, inPlace)].sort(byWeight);
  const right = inPlace.filter(({ expected, label }) => expected && isRight(label)).length;
  const faults = inPlace.filter(({ label }) => label !== 'right');
  const wrong = inPlace.filter(({ label }) => !isRight(label)).length;
  const judged = matched.strokes.filter(({ deviationMs }) => deviationMs !== null).length >= LEAST_FOR_TIMING;
  const trusted = take.timing === 'calibrated' || take.timing === 'uncalibrated';
  return {
    clean: asked.length > 0 && place.length === 0 && wrong <= CLEAN_SHARE * asked.length,
    shareRight: asked.length === 0 ? 0 : right / asked.length,
    timing: trusted && judged ? (timing.length === 0 ? 'in time' : 'worth a look') : null,
    steps,
    findings: all.slice(0, MOST_SAID),
    all,
    faults,
  };
}

const isRight = (label: LabelledStroke['label']): boolean => label === 'right' || label === 'early' || label === 'late';

const byWeight = (a: Finding, b: Finding): number => b.weight - a.weight;

function displacementAt({ stretches }: Matched, { playTick }: LabelledStroke): number {
  const stretch = stretches.find(({ toPlayTick }) => playTick < toPlayTick) ?? stretches.at(-1);
  return stretch?.displacedSteps ?? 0;
}

/** The strokes up to where the player stopped, if they did: what was not tried is not missed. */
function beforeStop(take: Take, { strokes }: Matched, inPlace: readonly LabelledStroke[]): readonly LabelledStroke[] {
  const stop = stoppedAt(take, strokes);
  const at = stop === null ? undefined : strokes.filter(({ expected }) => expected !== null)[stop]?.playTick;
  return at === undefined ? inPlace : inPlace.filter(({ playTick }) => playTick < at);
}
