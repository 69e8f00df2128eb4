/*
 * The recorded sounds: which files there are, what each one sounds, and how loud the instruments stand to each other.
 * `tests/scripts/render-samples.ts` renders the files from this list, so list and files cannot differ.
 */

/** The pitched instruments, and everything that is struck once and rings out. */
export const INSTRUMENTS = ['piano', 'bass', 'drums'] as const;
export type InstrumentName = (typeof INSTRUMENTS)[number];

/** One recorded note. */
export interface NoteSample {
  readonly file: string;
  readonly midi: number;
  /** Velocity at which it was recorded, 1 to 127. */
  readonly velocity: number;
}

/** One recorded drum stroke. */
export interface DrumSample {
  readonly file: string;
  /** Name as in `PerformedEvent.drum`. */
  readonly drum: string;
  /** Note of the General MIDI percussion key map it is rendered from (General MIDI 1, percussion key map). */
  readonly generalMidi: number;
  /** Seconds kept. */
  readonly seconds: number;
  /** Played faster (higher) or slower than recorded, where the key map has one sound for instruments of several sizes. */
  readonly speed?: number;
  /** Cut above this many hertz, for strokes that damp the skin. */
  readonly lowpass?: number;
  /** Peak brought to this many decibels under full scale, where the sound font stands out or the cut took level away. */
  readonly peakDb?: number;
}

/** Pitches four semitones apart, so no note is bent by more than two. */
const PIANO_PITCHES = [36, 40, 44, 48, 52, 56, 60, 64, 68, 72, 76, 80, 84, 88, 92, 96] as const;
/** Soft and strong. The soft one sounds below `STRONG_FROM`. */
const PIANO_VELOCITIES = [72, 108] as const;
/** Three semitones apart over the range of the tumbao. */
const BASS_PITCHES = [28, 31, 34, 37, 40, 43, 46, 49, 52, 55] as const;
const BASS_VELOCITY = 100;

/** Velocities from here on take the strong piano samples. */
export const STRONG_FROM = 90;

/** Program numbers from 0 (General MIDI 1): acoustic grand piano and acoustic bass. */
export const PROGRAMS = { piano: 0, bass: 32 } as const;

/** The piano, soft and strong, from C2 to C7. */
export const PIANO_SAMPLES: readonly NoteSample[] = PIANO_VELOCITIES.flatMap((velocity) =>
  PIANO_PITCHES.map((midi) => ({ file: `piano-${midi}-${velocity}.mp3`, midi, velocity })),
);

/** The bass, from E1 to G3. */
export const BASS_SAMPLES: readonly NoteSample[] = BASS_PITCHES.map((midi) => ({
  file: `bass-${midi}.mp3`,
  midi,
  velocity: BASS_VELOCITY,
}));

/** Clave, and the percussion that styles will call on. The pulse is made by rule and needs no file. */
export const DRUM_SAMPLES: readonly DrumSample[] = [
  { file: 'clave.mp3', drum: 'clave', generalMidi: 75, seconds: 0.5 },
  { file: 'shell.mp3', drum: 'shell', generalMidi: 37, seconds: 0.4 },
  { file: 'bell.mp3', drum: 'bell', generalMidi: 56, seconds: 0.6 },
  { file: 'mambo-bell.mp3', drum: 'mambo bell', generalMidi: 56, seconds: 0.5, speed: 1.12 },
  { file: 'bongo-bell-mouth.mp3', drum: 'bongo bell mouth', generalMidi: 56, seconds: 0.6, speed: 0.85 },
  { file: 'bongo-bell-neck.mp3', drum: 'bongo bell neck', generalMidi: 56, seconds: 0.2, speed: 1.35 },
  { file: 'cha-cha-bell.mp3', drum: 'cha-cha bell', generalMidi: 56, seconds: 0.3, speed: 1.7 },
  { file: 'conga-open.mp3', drum: 'conga open', generalMidi: 63, seconds: 0.7 },
  { file: 'conga-slap.mp3', drum: 'conga slap', generalMidi: 62, seconds: 0.5 },
  // The low drum a good fourth under the other; as recorded it lies only a tone below.
  { file: 'conga-low.mp3', drum: 'conga low', generalMidi: 64, seconds: 0.8, speed: 0.84 },
  { file: 'conga-heel.mp3', drum: 'conga heel', generalMidi: 64, seconds: 0.16, lowpass: 500, peakDb: -11 },
  { file: 'conga-toe.mp3', drum: 'conga toe', generalMidi: 63, seconds: 0.12, lowpass: 900, peakDb: -11 },
  { file: 'bongo-high.mp3', drum: 'bongo high', generalMidi: 60, seconds: 0.5 },
  { file: 'bongo-low.mp3', drum: 'bongo low', generalMidi: 61, seconds: 0.5 },
  { file: 'bongo-thumb.mp3', drum: 'bongo thumb', generalMidi: 60, seconds: 0.12, lowpass: 800, peakDb: -11 },
  { file: 'bongo-fingers.mp3', drum: 'bongo fingers', generalMidi: 60, seconds: 0.12, lowpass: 2000, peakDb: -11 },
  { file: 'timbal-high.mp3', drum: 'timbal high', generalMidi: 65, seconds: 0.7 },
  { file: 'timbal-low.mp3', drum: 'timbal low', generalMidi: 66, seconds: 0.8 },
  { file: 'timbal-muffled.mp3', drum: 'timbal muffled', generalMidi: 66, seconds: 0.16, lowpass: 900, peakDb: -11 },
  { file: 'timbal-rim.mp3', drum: 'timbal rim', generalMidi: 65, seconds: 0.5, speed: 1.25 },
  { file: 'maracas.mp3', drum: 'maracas', generalMidi: 70, seconds: 0.3, peakDb: -12 },
  { file: 'guiro-short.mp3', drum: 'guiro short', generalMidi: 73, seconds: 0.4 },
  { file: 'guiro-long.mp3', drum: 'guiro long', generalMidi: 74, seconds: 0.8, peakDb: -12 },
];
