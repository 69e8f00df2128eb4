const STEPS = {
  1: 'octave melody, chord tones on the strokes that matter',
  2: 'chords on the clave',
  3: 'a repeated element goes out by a half step and comes back',
} as const;

/** The line over the sounding card while an exercise is on. */
export const BANNERS = {
  crossed: 'Exercise: crossed on purpose. The struck downbeat lands on the 3-side.',
  example: 'Solo: octave melody, then chords, then a repeated element that goes out and comes back.',
  scaffold: 'Solo scaffold: guide tones and clave; the rest is yours.',
  soloStep: (step: 1 | 2 | 3): string => `Solo, step ${step} of 3: ${STEPS[step]}`,
  steps: STEPS,
  soloBars: (fromBar: number, toBar: number): string => `bars ${fromBar + 1}–${toBar}`,
  soloHint: 'Touch a step to loop it; take them one after the other.',
} as const;
