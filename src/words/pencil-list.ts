import type { Side } from '../vocabulary';

/** The count on which a step of a bar falls, as charts write it: `1`, `3&`. */
const count = (step: number): string => (step % 2 === 0 ? String(step / 2 + 1) : `${(step + 1) / 2}&`);

/** Words of the pencil list. Bars and places count from 1. */
export const PENCIL_WORDS = {
  name: 'Pencil list',
  order: 'Order',
  /** A section in the order of the form: `A ×2`. */
  inOrder: (section: string, times: number): string => (times > 1 ? `${section} ×${times}` : section),
  side: (side: Side): string => `${side}-side`,
  /** Sides on which a section begins when it comes more than once and they differ. */
  sides: (sides: readonly Side[]): string => sides.map((side) => `${side}-side`).join(', then '),
  bars: (bars: number): string => (bars === 1 ? '1 bar' : `${bars} bars`),
  onCue: 'on cue',
  stop: 'stop',
  rest: 'rest',
  hitsOn: (steps: readonly number[]): string => `hits ${steps.map(count).join(' ')}`,
  times: (times: number): string => `×${times}`,
  ending: (passes: readonly number[]): string => `${passes.join('.')}.`,
  reentry: (step: number, side: Side): string => `in on ${count(step)}, ${side}-side`,
  legend: {
    octave: 'The note over a chord: the octave.',
    leaveOut: 'A 1 struck out: you have played the chord already, leave the downbeat out.',
    odd: 'A ring: an odd number of bars, so what follows begins on the other side.',
  },
  setLines: 'Bars in each line, as in the part',
  setLinesHint: 'Whole numbers with spaces, such as 4 4 8. Or touch the gap behind a bar.',
  badLines: (text: string): string => `“${text}” is no number of bars: whole numbers from 1 to 32 with spaces between them, such as 4 4 8.`,
  fours: 'Four bars a line',
  breakHere: (bar: number): string => `Line ends after bar ${bar} of the list`,
} as const;
