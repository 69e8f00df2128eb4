import type { Device } from '../../vocabulary';
import type { HarmonyBar } from '../harmony/timeline';
import { type Pattern, pattern } from './patterns';
import type { PlannedStroke } from './plan';
import type { Sketch } from './sketch';
import type { HandPosition } from './voice-leading';

/** A solo in place of the figure: an example line in three steps, or guide tones alone to improvise on. */
export type SoloKind = 'example' | 'scaffold';

/** What is played in each of the three steps (common practice, no source; the order is the one in which the solo is learned). */
export const SOLO_STEPS: readonly {
  readonly step: 1 | 2 | 3;
  readonly name: string;
  readonly patterns: readonly Pattern[];
  readonly devices: readonly Device[];
}[] = [
  {
    step: 1,
    name: 'octave melody',
    patterns: [
      pattern('call', 'M2', 'M3', { riff: true }),
      pattern('answer', 'A1', 'M5', { riff: true }),
      pattern('melody', 'M4', 'B1', { riff: true }),
    ],
    devices: [],
  },
  {
    step: 2,
    name: 'chords',
    patterns: [pattern('chords on the clave', 'A5', 'B3'), pattern('chords on the clave', 'A5', 'B7')],
    devices: [],
  },
  { step: 3, name: 'repeated element, out and back', patterns: [pattern('riff', 'A1', 'B1', { riff: true })], devices: ['half-step-out'] },
];

/** The step of the solo that a bar belongs to: octave melody to the middle of the form, chords for a quarter, the repeated element to the end. */
export function soloStepOf(bar: HarmonyBar, bars: number): (typeof SOLO_STEPS)[number] {
  const share = (bar.index - (bar.index % 2)) / Math.max(bars, 1);
  const step = SOLO_STEPS[share < 0.5 ? 0 : share < 0.75 ? 1 : 2];
  if (!step) throw new Error('the solo has three steps');
  return step;
}

/** The scaffold: of every hand position only its first octave, the guide tone, so that the rest is the player's. */
export function guideTonesOnly(
  planned: readonly PlannedStroke[],
  positions: readonly HandPosition[],
  sketches: readonly Sketch[],
): readonly Sketch[] {
  const first = new Set(positions.map(({ strokes }) => strokes[0]));
  const kept = new Set(planned.filter((_, index) => first.has(index)));
  return sketches
    .filter((sketch) => kept.has(sketch.planned))
    .map((sketch) => ({
      ...sketch,
      role: 'octave',
      line: 'guide',
      notes: [sketch.octave, { ...sketch.octave, pitch: sketch.octave.pitch + 12 }],
    }));
}
