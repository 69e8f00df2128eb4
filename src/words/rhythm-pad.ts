import type { Direction } from '../vocabulary';
import { printedNote, SPOKEN } from './spoken';

const ROLES = { '.': 'rest', x: 'stroke', o: 'octave', i: 'inner notes', c: 'chord', s: 'single note', a: 'approach' } as const;

/** What the pad for rhythms and the editor of strokes say. */
export const PAD_WORDS = {
  title: 'A rhythm of your own',
  hint: 'Touch a step, or go there with the arrow keys and type its letter: x stroke, o octave, i inner notes, c chord, s single note, a approach, dot rest.',
  /** The same where there is no keyboard. */
  hintByTouch: 'Touch a step to change it, again for the next kind of stroke.',
  text: 'As text, two bars or one',
  badText: (steps: 16 | 12): string =>
    `Two bars of ${steps / 2} steps are needed (or one, played twice), x for a stroke (or o, i, c, s, a for its role) and . for a rest, such as ${steps === 16 ? 'x.xx.x.x .x.xx.x.' : 'x.xx.x .x.x.x'}`,
  found: (fault: { readonly column: number; readonly letter: string } | { readonly steps: number }): string =>
    'steps' in fault ? `found ${fault.steps} steps` : `“${fault.letter}” at column ${fault.column} means nothing here`,
  tap: 'Tap it in',
  tapHint: 'At the tempo that is set; the first tap is 1. The light shows where a tap would fall.',
  tapsDone: (taps: number): string => `Take these taps (${taps})`,
  take: 'Take what plays now',
  clear: 'Clear',
  exchange: 'Exchange its bars',
  use: 'Play it through the chart',
  inUse: 'It plays through the chart now.',
  off: 'Back to the level’s figure',
  roles: ROLES,
  marks: { '.': '', x: '●', o: 'oct', i: 'in', c: 'ch', s: 'one', a: 'ap' },
  side: (side: 2 | 3): string => `${side}-side`,
  verdicts: { aligned: 'Aligned.', neutral: 'Neutral.', crossed: 'Crossed.' },
  other: 'With its bars exchanged',
  sixEight: 'In 6/8 rhythms are known by name only; others count as neutral.',
  source:
    'The score was fitted to 7,575 rhythms that expert musicians labelled (M. Vurkaç, UCI Machine Learning Repository 324, 2015). It tells direction, not quality.',
  editor: 'Change this stroke',
  leaveOut: 'Leave it out',
  on: 'Put an octave here',
  onInner: 'Put inner notes here',
  up: 'Half step up',
  down: 'Half step down',
  stepUp: (name: string): string => `Up to ${printedNote(name)}`,
  stepDown: (name: string): string => `Down to ${printedNote(name)}`,
  longer: 'Longer',
  shorter: 'Shorter',
  shortest: 'It is one eighth long already.',
  longest: 'It is two bars long already.',
  undo: 'Undo',
  redo: 'Redo',
  reset: 'Take all changes back',
  nothingMade: 'No change was made yet.',
  nothingUndone: 'Nothing was taken back.',
  close: 'Close',
  /** Where a step of the pad lies: "3-side, 2, octave". */
  cell: (direction: Direction, step: number, role: keyof typeof ROLES, clave: boolean, steps: 16 | 12): string => {
    const half = steps / 2;
    const side = step < half === (direction === '2-3') ? 2 : 3;
    return `${side}-side, ${SPOKEN.count(step % half, steps === 12)}, ${ROLES[role]}${clave ? ', clave stroke' : ''}`;
  },
  /** Where a stroke lies: "bar 3, 2-side, on the & of 2". */
  place: (bar: number, side: 2 | 3, step: number, sixEight: boolean): string =>
    `bar ${bar + 1}, ${side}-side, on ${SPOKEN.count(step, sixEight)}`,
  changes: (count: number): string => (count === 0 ? '' : count === 1 ? '1 change by hand' : `${count} changes by hand`),
} as const;
