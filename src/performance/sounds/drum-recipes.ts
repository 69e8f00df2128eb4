/* How unpitched sounds are made by rule: a few decaying modes and a knock of noise. Common practice, no source. */

/** One mode of a struck thing. */
export interface Mode {
  /** Multiple of the fundamental, or hertz for a drum. */
  readonly at: number;
  readonly level: number;
  /** Seconds in which it falls to about a third. */
  readonly decay: number;
}

/** Recipes of the unpitched sounds: modes in hertz, the share of noise, seconds, and peak. */
export const DRUM_RECIPES: Readonly<
  Record<string, { readonly partials: readonly Mode[]; readonly noise: number; readonly seconds: number; readonly peak: number }>
> = {
  clave: {
    partials: [
      { at: 2500, level: 1, decay: 0.022 },
      { at: 2540, level: 0.4, decay: 0.03 },
    ],
    noise: 0.05,
    seconds: 0.2,
    peak: 0.47,
  },
  'pulse high': {
    partials: [
      { at: 1100, level: 1, decay: 0.012 },
      { at: 1660, level: 0.4, decay: 0.008 },
    ],
    noise: 0.04,
    seconds: 0.1,
    peak: 0.45,
  },
  'pulse low': {
    partials: [
      { at: 780, level: 1, decay: 0.012 },
      { at: 1180, level: 0.4, decay: 0.008 },
    ],
    noise: 0.04,
    seconds: 0.1,
    peak: 0.4,
  },
  shell: {
    partials: [
      { at: 1800, level: 0.6, decay: 0.02 },
      { at: 3100, level: 0.4, decay: 0.015 },
    ],
    noise: 0.4,
    seconds: 0.15,
    peak: 0.3,
  },
  bell: {
    partials: [
      { at: 587, level: 0.8, decay: 0.12 },
      { at: 845, level: 1, decay: 0.1 },
      { at: 1980, level: 0.3, decay: 0.05 },
    ],
    noise: 0.05,
    seconds: 0.5,
    peak: 0.34,
  },
  'conga open': {
    partials: [
      { at: 220, level: 1, decay: 0.16 },
      { at: 460, level: 0.3, decay: 0.06 },
    ],
    noise: 0.08,
    seconds: 0.6,
    peak: 0.3,
  },
  'conga slap': {
    partials: [
      { at: 330, level: 0.6, decay: 0.03 },
      { at: 900, level: 0.6, decay: 0.02 },
    ],
    noise: 0.5,
    seconds: 0.2,
    peak: 0.3,
  },
  'mambo bell': {
    partials: [
      { at: 560, level: 0.9, decay: 0.1 },
      { at: 830, level: 1, decay: 0.08 },
      { at: 2100, level: 0.3, decay: 0.04 },
    ],
    noise: 0.05,
    seconds: 0.4,
    peak: 0.34,
  },
  'bongo bell mouth': {
    partials: [
      { at: 400, level: 1, decay: 0.13 },
      { at: 620, level: 0.9, decay: 0.1 },
      { at: 1500, level: 0.3, decay: 0.05 },
    ],
    noise: 0.05,
    seconds: 0.5,
    peak: 0.34,
  },
  'bongo bell neck': {
    partials: [
      { at: 690, level: 0.8, decay: 0.03 },
      { at: 1240, level: 1, decay: 0.025 },
    ],
    noise: 0.08,
    seconds: 0.15,
    peak: 0.3,
  },
  'cha-cha bell': {
    partials: [
      { at: 860, level: 1, decay: 0.06 },
      { at: 1290, level: 0.9, decay: 0.05 },
      { at: 3100, level: 0.2, decay: 0.02 },
    ],
    noise: 0.05,
    seconds: 0.3,
    peak: 0.34,
  },
  'conga heel': { partials: [{ at: 170, level: 1, decay: 0.03 }], noise: 0.15, seconds: 0.14, peak: 0.28 },
  'conga toe': { partials: [{ at: 260, level: 1, decay: 0.018 }], noise: 0.2, seconds: 0.1, peak: 0.28 },
  'bongo thumb': { partials: [{ at: 380, level: 1, decay: 0.02 }], noise: 0.2, seconds: 0.1, peak: 0.28 },
  'bongo fingers': { partials: [{ at: 620, level: 1, decay: 0.014 }], noise: 0.3, seconds: 0.1, peak: 0.28 },
  'timbal muffled': { partials: [{ at: 205, level: 1, decay: 0.035 }], noise: 0.2, seconds: 0.16, peak: 0.28 },
  'timbal rim': {
    partials: [
      { at: 360, level: 1, decay: 0.1 },
      { at: 1700, level: 0.6, decay: 0.02 },
    ],
    noise: 0.4,
    seconds: 0.4,
    peak: 0.32,
  },
  'conga low': {
    partials: [
      { at: 165, level: 1, decay: 0.2 },
      { at: 340, level: 0.3, decay: 0.07 },
    ],
    noise: 0.08,
    seconds: 0.7,
    peak: 0.3,
  },
  'bongo high': {
    partials: [
      { at: 420, level: 1, decay: 0.07 },
      { at: 800, level: 0.4, decay: 0.03 },
    ],
    noise: 0.1,
    seconds: 0.3,
    peak: 0.3,
  },
  'bongo low': {
    partials: [
      { at: 300, level: 1, decay: 0.09 },
      { at: 580, level: 0.4, decay: 0.04 },
    ],
    noise: 0.1,
    seconds: 0.3,
    peak: 0.3,
  },
  'timbal high': {
    partials: [
      { at: 310, level: 1, decay: 0.12 },
      { at: 640, level: 0.5, decay: 0.07 },
    ],
    noise: 0.2,
    seconds: 0.5,
    peak: 0.3,
  },
  'timbal low': {
    partials: [
      { at: 210, level: 1, decay: 0.15 },
      { at: 430, level: 0.5, decay: 0.08 },
    ],
    noise: 0.2,
    seconds: 0.6,
    peak: 0.3,
  },
  maracas: { partials: [], noise: 1, seconds: 0.08, peak: 0.25 },
  'guiro short': { partials: [], noise: 1, seconds: 0.12, peak: 0.2 },
  'guiro long': { partials: [], noise: 1, seconds: 0.4, peak: 0.2 },
};
