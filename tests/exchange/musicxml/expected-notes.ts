import type { Score } from '../../../src/music/score';
import type { Stroke } from '../../../src/vocabulary';
import type { ReadNote } from './verovio-reader';

/** The notes of one hand or the bass as they are to be read back: each lasts until the next stroke of its staff at the latest, and none past the end. */
export function expectedNotes(strokes: readonly Stroke[], score: Pick<Score, 'fromTick' | 'toTick'>): ReadNote[] {
  const onsets = [...new Set(strokes.map(({ tick }) => tick)), score.toTick].sort((a, b) => a - b);
  return strokes
    .flatMap(({ tick, durationTicks, midi }) => {
      const next = onsets.find((onset) => onset > tick) ?? score.toTick;
      return midi.map((note) => ({ tick: tick - score.fromTick, ticks: Math.min(durationTicks, next - tick), midi: note }));
    })
    .toSorted((a, b) => a.tick - b.tick || a.midi - b.midi);
}

/** Every staff of a file in the order of its parts: right hand, left hand, bass, then the onsets of each unpitched part. */
export function expectedStaves(score: Score): { readonly pitched: readonly ReadNote[][]; readonly unpitched: readonly number[][] } {
  const { rightHand, leftHand, bass, clave, percussion } = score.parts;
  const pitched = [rightHand, leftHand, ...(bass.length > 0 ? [bass] : [])].map((strokes) => expectedNotes(strokes, score));
  const unpitched = [clave, ...Object.values(percussion)]
    .filter((strokes) => strokes.length > 0)
    .map((strokes) => [...new Set(strokes.map(({ tick }) => tick - score.fromTick))].sort((a, b) => a - b));
  return { pitched, unpitched };
}
