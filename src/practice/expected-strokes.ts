import type { Occurrence } from '../performance/occurrences';
import { notatedPlayTick, occurrencesIn, placeAt } from '../performance/occurrences';
import type { PartName, Performance } from '../performance/performance';
import { secondsAt, secondsOf, tempoAt } from '../performance/tempo';
import { assert, songSeconds, TICKS_PER_STEP } from '../vocabulary';
import type { ExpectedNote, ExpectedStroke } from './labelled';
import type { Take } from './take';

/*
 * What was asked for, from the same `occurrences` that the sound is made from. `displacedSteps` lays the whole pattern that many steps
 * later: what a player does who has the right pattern in the wrong place. A closed performance is then also asked for what lies before
 * its first tick, as if it had already been round.
 */

/** Strokes asked for in [from, to) of the play ticks, after displacement, ascending. */
export function expectedStrokes(take: Take, from: number, to: number, displacedSteps = 0): ExpectedStroke[] {
  const { music, tempo, parts } = take;
  const shift = displacedSteps * TICKS_PER_STEP;
  const byPlace = new Map<number, { playTick: number; sounding: number; pass: number; notes: ExpectedNote[] }>();
  for (const { occurrence, playTick } of soundsBetween(take, from - shift, to - shift, parts)) {
    const { event, pass } = occurrence;
    const held = byPlace.get(playTick) ?? { playTick, sounding: playTick + event.offsetTicks, pass, notes: [] };
    const { id, part, midi, velocity, soundingTicks } = event;
    if (!held.notes.some((note) => midi !== null && note.midi === midi)) held.notes.push({ id, part, midi, velocity, soundingTicks });
    byPlace.set(playTick, held);
  }
  const placed = [...byPlace.values()].sort((a, b) => a.playTick - b.playTick);
  const strokes = placed.map(({ playTick, sounding, pass, notes }): ExpectedStroke => {
    const here = playTick + shift;
    const place = barPlace(music.performance, placeAt(music, wrapped(take, here - music.fromPlay)).tick);
    return {
      playTick: here,
      ...place,
      pass,
      at: songSeconds(secondsAt(tempo, sounding + shift)),
      stepMs: 1000 * secondsOf(TICKS_PER_STEP, tempoAt(tempo, here)),
      notes,
      otherEnding: null,
    };
  });
  return parts.some((part) => part.startsWith('piano')) ? withOtherEndings(strokes, music.performance, displacedSteps) : strokes;
}

interface PlacedSound {
  readonly occurrence: Occurrence;
  /** Notated, in play ticks of the programme. */
  readonly playTick: number;
}

function soundsBetween({ music }: Take, from: number, to: number, parts: readonly PartName[]): PlacedSound[] {
  const { performance, startTick, fromPlay } = music;
  const length = performance.toTick - performance.fromTick;
  const back = performance.closed ? Math.max(0, Math.ceil((fromPlay - from) / length)) * length : 0;
  // Rounds before the first are asked for by entering the same loop earlier.
  const unrolled = { performance, startTick };
  const margin = TICKS_PER_STEP;
  return occurrencesIn(unrolled, from - fromPlay + back - margin, to - fromPlay + back + margin).flatMap((occurrence) => {
    const playTick = notatedPlayTick(unrolled, occurrence) - back + fromPlay;
    const inside = playTick >= from && playTick < to && parts.includes(occurrence.event.part);
    return inside ? [{ occurrence: { ...occurrence, pass: occurrence.pass - back / length }, playTick }] : [];
  });
}

/** A play tick of the music, moved into the rounds that it counts. */
function wrapped({ music }: Take, playTick: number): number {
  const { performance } = music;
  const length = performance.toTick - performance.fromTick;
  if (playTick >= 0 || !performance.closed) return Math.max(0, playTick);
  return playTick + Math.ceil(-playTick / length) * length;
}

/** Bar and step of a tick of the performance. Ticks after the last bar (a last stroke) count on from it. */
export function barPlace(performance: Performance, tick: number): Pick<ExpectedStroke, 'tick' | 'bar' | 'step' | 'cycleStep'> {
  const bar = Math.max(
    0,
    performance.bars.findLastIndex((candidate) => candidate.tick <= tick),
  );
  const found = performance.bars[bar];
  assert(found !== undefined, 'a performance has bars');
  const step = Math.round((tick - found.tick) / TICKS_PER_STEP);
  const { cycleSteps } = performance.clave;
  return { tick, bar, step, cycleStep: (((found.cycleStep + step) % cycleSteps) + cycleSteps) % cycleSteps };
}

/** The side that a step of the cycle belongs to, by the strokes of the clave; null when the halves have equally many. */
export function sideOfStep({ clave }: Performance, cycleStep: number): 2 | 3 | null {
  const half = clave.cycleSteps / 2;
  const first = clave.steps.filter((step) => step < half).length;
  const second = clave.steps.length - first;
  if (first === second) return null;
  return cycleStep < half === first > second ? 3 : 2;
}

/** In son clave the 3-side may end on 4 or on the & of 4 (common practice, no source); with rumba clave only on the & of 4. */
function withOtherEndings(strokes: readonly ExpectedStroke[], performance: Performance, displacedSteps: number): ExpectedStroke[] {
  if (performance.clave.cycleSteps !== 16 || isRumba(performance)) return [...strokes];
  return strokes.map((stroke, index) => {
    const patternStep = (((stroke.cycleStep - displacedSteps) % 16) + 16) % 16;
    const step = patternStep % 8;
    if (sideOfStep(performance, patternStep) !== 3 || (step !== 6 && step !== 7)) return stroke;
    const other = stroke.playTick + (step === 6 ? TICKS_PER_STEP : -TICKS_PER_STEP);
    const taken = strokes[step === 6 ? index + 1 : index - 1]?.playTick === other;
    return taken ? stroke : { ...stroke, otherEnding: other };
  });
}

/** Whether the third stroke of the clave's 3-side lies on the & of 4. */
export function isRumba(performance: Performance): boolean {
  return performance.clave.cycleSteps === 16 && performance.clave.steps.some((step) => step % 8 === 7);
}
