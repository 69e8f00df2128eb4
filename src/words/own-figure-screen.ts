/** What changes made by hand and the choice of percussion say. */
export const OWN_FIGURE_SCREEN = {
  /** When a change is heard, said once for the whole sheet. */
  heardFrom: 'What you change here while the music plays is heard from the next cycle on.',
  edits: {
    name: 'Changes by hand',
    count: (changes: number): string => (changes === 1 ? '1 change by hand' : `${changes} changes by hand`),
    undo: 'Undo',
    redo: 'Redo',
    reset: 'Take all back',
  },
  percussion: { chosen: 'chosen', name: 'What plays' },
  /** The button that makes a style's usual tempo the goal. */
  usualTempo: (tempo: number, unit: 'half' | 'quarter'): string =>
    `Its usual tempo as the goal: ${tempo} ${unit === 'half' ? 'half' : 'quarter'} notes`,
} as const;
