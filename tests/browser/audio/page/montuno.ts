import type { Performance } from '../../../../src/performance/performance';
import type { EventSketch } from '../../../performance/hand-made';
import { events, performanceOf, SON_2_3 } from '../../../performance/hand-made';

/**
 * A full band over two cycles, hand-made to judge levels by: both hands in octaves with inner notes on the common
 * 2-3 rhythm, an anticipated bass, son clave and the pulse. Chords: Ebm6, Ab7.
 */
export function montuno(): Performance {
  const made: EventSketch[] = [];
  const octaves = [0, 3, 5, 7, 8 + 1, 8 + 3, 8 + 5, 8 + 7];
  const inner = [2, 4, 6, 8 + 2, 8 + 4, 8 + 6];
  for (const cycle of [0, 1]) {
    const at = (step: number) => (cycle * 16 + step) * 240;
    const [top, middle] = cycle === 0 ? [75, [66, 70]] : [74, [68, 72]];
    for (const step of octaves)
      for (const lift of [0, 12]) {
        made.push({ tick: at(step), midi: top - 12 + lift, velocity: 96, soundingTicks: 210 });
        made.push({ tick: at(step), part: 'piano left', midi: top - 36 + lift, velocity: 92, soundingTicks: 210 });
      }
    for (const step of inner)
      for (const note of middle) {
        made.push({ tick: at(step), midi: note, velocity: 84, soundingTicks: 210 });
        made.push({ tick: at(step), part: 'piano left', midi: note - 24, velocity: 80, soundingTicks: 210 });
      }
    for (const [step, midi] of [
      [3, 34],
      [6, 32],
      [8 + 3, 39],
      [8 + 6, 39],
    ] as const)
      made.push({ tick: at(step), part: 'bass', midi, velocity: 96, soundingTicks: 680 });
    for (const step of SON_2_3) made.push({ tick: at(step), part: 'clave', midi: null, drum: 'clave', velocity: 100 });
    for (const step of [0, 4, 8, 12])
      made.push({ tick: at(step), part: 'pulse', midi: null, drum: step % 8 === 0 ? 'pulse high' : 'pulse low', velocity: 90 });
  }
  return performanceOf(4, events(...made));
}
