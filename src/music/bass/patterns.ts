/** How the bass goes: a quarter ahead of the chord, with the beats, or plain half notes where the rhythm is not built on this clave. */
export type BassFeel = 'anticipated' | 'on the beat' | 'half notes';

/** What a stroke of a bass grid aims at: the chord's root, its fifth, or the root of the next bar's chord. */
export type BassAim = 'root' | 'fifth' | 'next root' | 'fifth or approach';

/** One bar of a bass line: steps and aims. */
export interface BassPattern {
  readonly feel: BassFeel;
  readonly steps: readonly { readonly step: number; readonly aim: BassAim }[];
  /** Root struck on beat 1 the first time only. */
  readonly opensOnOne: boolean;
  readonly evidence: string;
}

/** Bass lines in 4/4, by feel. */
export const BASS_IN_FOUR: Readonly<Record<BassFeel, BassPattern>> = {
  anticipated: {
    feel: 'anticipated',
    steps: [
      { step: 3, aim: 'fifth' },
      { step: 6, aim: 'next root' },
    ],
    opensOnOne: true,
    evidence: 'Manuel, “The Anticipated Bass in Cuban Popular Music”, 1985; first bar: Richards, 2005',
  },
  'on the beat': {
    feel: 'on the beat',
    steps: [
      { step: 0, aim: 'root' },
      { step: 4, aim: 'fifth' },
      { step: 6, aim: 'fifth or approach' },
    ],
    opensOnOne: false,
    evidence: 'half and two quarters: from memory',
  },
  'half notes': {
    feel: 'half notes',
    steps: [
      { step: 0, aim: 'root' },
      { step: 4, aim: 'fifth' },
    ],
    opensOnOne: false,
    evidence: 'common practice, no source',
  },
};

/** The bass in 6/8: the two dotted beats. */
export const BASS_IN_SIX: BassPattern = {
  feel: 'half notes',
  steps: [
    { step: 0, aim: 'root' },
    { step: 3, aim: 'fifth' },
  ],
  opensOnOne: false,
  evidence: 'common practice, no source',
};
