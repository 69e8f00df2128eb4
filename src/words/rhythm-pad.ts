import type { Direction } from '../vocabulary';
import { SPOKEN } from './spoken';

const ROLES = { '.': 'rest', x: 'stroke', o: 'octave', i: 'inner notes', c: 'chord', a: 'approach' } as const;

/** What the pad for rhythms and the editor of strokes say. */
export const PAD_WORDS = {
  title: 'A rhythm of your own',
  hint: 'Touch a step to go through rest, stroke, octave, inner notes, chord and approach.',
  text: 'As text',
  badText: 'Two bars of 8 steps are needed, x for a stroke (or o, i, c, a for its role) and . for a rest, such as x.xx.x.x .x.xx.x.',
  found: (fault: { readonly column: number; readonly letter: string } | { readonly steps: number }): string =>
    'steps' in fault ? `found ${fault.steps} steps` : `“${fault.letter}” at column ${fault.column} means nothing here`,
  tap: 'Tap it in',
  tapHint: 'At the tempo that is set; the first tap is 1.',
  tapsDone: 'Take these taps',
  take: 'Take what plays now',
  clear: 'Clear',
  exchange: 'Exchange its bars',
  use: 'Play it through the chart',
  roles: ROLES,
  marks: { '.': '', x: '●', o: 'oct', i: 'in', c: 'ch', a: 'ap' },
  other: 'with its bars exchanged',
  source:
    'The score was fitted to 7,575 rhythms that expert musicians labelled (M. Vurkaç, UCI Machine Learning Repository 324, 2015). It tells direction, not quality.',
  editor: 'Change this stroke',
  off: 'Leave it out',
  on: 'Put an octave here',
  onInner: 'Put inner notes here',
  up: 'Half step up',
  down: 'Half step down',
  longer: 'Longer',
  shorter: 'Shorter',
  undo: 'Undo',
  redo: 'Redo',
  reset: 'Take all changes back',
  close: 'Close',
  /** Where a step of the pad lies: "3-side, 2 and, octave". */
  cell: (direction: Direction, step: number, role: keyof typeof ROLES, clave: boolean): string =>
    `${step < 8 === (direction === '2-3') ? 2 : 3}-side, ${SPOKEN.count(step % 8, false)}, ${ROLES[role]}${clave ? ', clave stroke' : ''}`,
  /** Where a stroke lies: "bar 3, on the & of 2". */
  place: (bar: number, step: number): string => `bar ${bar + 1}, on ${SPOKEN.count(step, false)}`,
  changes: (count: number): string => (count === 1 ? '1 change by hand' : `${count} changes by hand`),
} as const;
