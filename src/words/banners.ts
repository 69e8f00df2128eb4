/** The line over the sounding card while an exercise is on. */
export const BANNERS = {
  crossed: 'Exercise: crossed on purpose. The struck downbeat lands on the 3-side.',
  example: 'Solo: octave melody, then chords, then a repeated element that goes out and comes back.',
  scaffold: 'Solo scaffold: guide tones and clave; the rest is yours.',
} as const;
