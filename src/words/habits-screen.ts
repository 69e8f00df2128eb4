/** What the quiet hints, the pedals and the choices of the view say. */
export const HABITS_SCREEN = {
  hints: {
    'press play': 'Press Play, or Space: the band comes in.',
    'touch a note': 'Touch a note: one sentence says why it is there.',
    'exchange the sides': 'The other direction? ⇄ exchanges the sides.',
  },
  /** The first one where there is no keyboard. */
  pressPlayByTouch: 'Press Play: the band comes in.',
  hintSeen: 'Got it',
  hintName: 'A hint',
  pedals: 'Pedals',
  pedalsHint: 'Page Up and Page Down always turn pages. A pedal that sends another key is taught here.',
  pedalActions: { forward: 'forward, or the cue', back: 'back', 'play or stop': 'play or stop' },
  pedalTeach: 'Teach',
  pedalForget: 'Forget',
  pedalWaiting: 'Press the pedal…',
  pedalTaken: (key: string): string => `${key} has another use here. Set the pedal to send another key.`,
  pedalNone: 'none yet',
  space: 'Space',
  percussionRows: 'Percussion rows',
  rows: { 'where there is room': 'where there is room', always: 'always', never: 'never' },
  strip: 'Hand strip',
  stripOn: 'shown',
  stripOff: 'not shown',
} as const;
