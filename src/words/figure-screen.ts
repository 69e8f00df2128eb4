import type { Compass, Stretch } from '../vocabulary';

/** What the settings of figure, hands and band say beside the transport's own words. */
export const FIGURE_SCREEN = {
  cells: 'Cells',
  levelCells: 'the level’s own',
  direction: 'What the figure states',
  scope:
    'By a score fitted to rhythms that expert musicians labelled (M. Vurkaç, UCI Machine Learning Repository 324, 2015). It tells direction, not quality.',
  stretch: 'Stretch of a hand',
  compass: 'Keys of the instrument',
  hands: 'Hands and instrument',
  band: 'Band',
  style: 'Style',
  charted: 'as charted',
  percussion: 'Percussion',
  feel: 'Feel',
  feels: { straight: 'straight', measured: 'as a son group plays' },
  feelHint:
    'Measured on three son performances (IEMP Cuban Son and Salsa corpus, Poole, Tarsitani and Clayton, 2018–19). It never reaches the notes on paper.',
  percussions: { 'by style': 'by style and section', none: 'none' },
  exercise: 'Exercises',
  crossed: 'crossed on purpose',
  crossedHint: 'This is the wrong side: the struck downbeat lands on the 3-side.',
  solo: 'Solo in three steps',
  solos: { none: 'no solo', example: 'example line', scaffold: 'guide tones only' },
  notices: 'Worth knowing',
  cue: 'Go on',
  cueHint: 'Leave the open section at the end of this round',
  leaving: 'leaving at the end of this round',
  oneMore: 'one more round',
  stretches: {
    'less than an octave': 'less than an octave',
    octave: 'octave',
    ninth: 'ninth',
    tenth: 'tenth',
  } satisfies Readonly<Record<Stretch, string>>,
  keys: (keys: Compass): string => `${keys} keys`,
  /** A style's usual tempo and how well it is known. */
  styleFacts: (style: { readonly from: number; readonly to: number; readonly onClave: boolean; readonly evidence: string }): string =>
    `${style.onClave ? `usually ${style.from} to ${style.to} half notes a minute` : 'not built on this clave: one safe accompaniment'} · ${style.evidence}`,
} as const;
