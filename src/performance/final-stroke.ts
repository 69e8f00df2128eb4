import type { Score } from '../music/score';
import type { PianoStroke } from '../vocabulary';
import type { DraftEvent } from './draft-event';

/**
 * The last stroke of an ending, on the first tick after the last bar and held for `barTicks`: the piano's last chord
 * with its octave and the notes inside it, the bass on that chord's root, one stroke of clave, pulse and each
 * drum that sounded in the last two bars.
 * Only the parts that occur in `sounding` take part. (Common practice, no source.)
 */
export function finalStrokes(score: Score, sounding: readonly DraftEvent[], barTicks: number): DraftEvent[] {
  const tick = score.toTick;
  const plays = (part: DraftEvent['part']) => sounding.some((event) => event.part === part);
  const held = (part: DraftEvent['part'], midi: number, velocity: number): DraftEvent => ({
    part,
    tick,
    soundingTicks: barTicks,
    midi,
    drum: null,
    velocity,
    firstPassOnly: false,
  });
  const struck = (part: DraftEvent['part'], drum: string, velocity: number): DraftEvent => ({
    part,
    tick,
    soundingTicks: barTicks,
    midi: null,
    drum,
    velocity,
    firstPassOnly: false,
  });
  const root = finalBass(score);
  return [
    ...(plays('piano right') ? finalChord(score.parts.rightHand).map((midi) => held('piano right', midi, 100)) : []),
    ...(plays('piano left') ? finalChord(score.parts.leftHand).map((midi) => held('piano left', midi, 100)) : []),
    ...(plays('bass') && root !== null ? [held('bass', root, 100)] : []),
    ...(plays('clave') ? [struck('clave', 'clave', 100)] : []),
    ...(plays('pulse') ? [struck('pulse', 'pulse high', 96)] : []),
    ...Object.entries(score.parts.percussion).flatMap(([instrument, strokes]) => {
      // Shells of a verse do not come back for the end of a coro.
      const lately = strokes.filter((stroke) => stroke.tick >= tick - 2 * barTicks && stroke.stroke !== 'roll');
      const last = lately.findLast(({ stroke }) => stroke === 'accent') ?? lately.at(-1);
      return last === undefined ? [] : [struck('percussion', `${instrument} ${last.stroke}`, 100)];
    }),
  ];
}

/** The hand's last outer stroke, with the last notes inside it that belong to the same chord. */
function finalChord(strokes: readonly PianoStroke[]): readonly number[] {
  const outer = strokes.findLast(({ role }) => role === 'octave') ?? strokes.findLast(({ role }) => role !== 'approach');
  if (outer === undefined) return [];
  const low = Math.min(...outer.midi);
  const high = Math.max(...outer.midi);
  const inner = strokes.findLast(({ role, chord }) => role === 'inner' && chord === outer.chord);
  const inside = inner?.midi.filter((note) => note > low && note < high) ?? [];
  return [...new Set([...outer.midi, ...inside])].sort((a, b) => a - b);
}

/** The root of the last chord the bass played, or its last root of all, or its last note. */
function finalBass(score: Score): number | null {
  const { bass } = score.parts;
  const chord = bass.at(-1)?.chord;
  const stroke =
    bass.findLast((candidate) => candidate.role === 'root' && candidate.chord === chord) ??
    bass.findLast((candidate) => candidate.role === 'root') ??
    bass.at(-1);
  return stroke?.midi[0] ?? null;
}
