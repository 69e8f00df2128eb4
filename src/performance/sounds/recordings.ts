import type { InstrumentName } from './sample-set';
import { BASS_SAMPLES, DRUM_SAMPLES, PIANO_SAMPLES } from './sample-set';
import type { BankSound } from './sound-bank';
import { bassTone, DRUM_NAMES, drumTone, pianoTone, SYNTHESISED_RATE } from './synthesised-set';

/** A recorded file and what it sounds. */
export interface Recording {
  readonly file: string;
  readonly midi: number | null;
  readonly drum: string | null;
  readonly velocity: number;
}

/** The files of every instrument. */
export const RECORDINGS: Readonly<Record<InstrumentName, readonly Recording[]>> = {
  piano: PIANO_SAMPLES.map(({ file, midi, velocity }) => ({ file, midi, velocity, drum: null })),
  bass: BASS_SAMPLES.map(({ file, midi, velocity }) => ({ file, midi, velocity, drum: null })),
  drums: DRUM_SAMPLES.map(({ file, drum }) => ({ file, drum, midi: null, velocity: 110 })),
};

const MADE_VELOCITY = 108;
const PIANO_MADE = [36, 42, 48, 54, 60, 66, 72, 78, 84, 90, 96];
const BASS_MADE = [28, 34, 40, 46, 52];

/** Turns frames made by rule (at `rate` a second) into whatever a player keeps sounds in. */
export type MakeBuffer<Buffer> = (frames: Float32Array, rate: number) => Buffer;

/** An instrument made by rule, without any file. */
export function madeBank<Buffer>(instrument: InstrumentName, make: MakeBuffer<Buffer>): BankSound<Buffer>[] {
  if (instrument === 'drums') return DRUM_NAMES.map((name) => madeDrum(name, make));
  const [pitches, tone] = instrument === 'piano' ? [PIANO_MADE, pianoTone] : [BASS_MADE, bassTone];
  return pitches.map((midi) => ({ buffer: make(tone(midi), SYNTHESISED_RATE), midi, drum: null, velocity: MADE_VELOCITY }));
}

/** An instrument's decoded recordings as a bank; drums that have no file are made by rule. */
export function recordedBank<Buffer>(
  instrument: InstrumentName,
  decoded: readonly BankSound<Buffer>[],
  make: MakeBuffer<Buffer>,
): readonly BankSound<Buffer>[] {
  if (instrument !== 'drums') return decoded;
  const missing = DRUM_NAMES.filter((name) => !decoded.some(({ drum }) => drum === name));
  return [...decoded, ...missing.map((name) => madeDrum(name, make))];
}

function madeDrum<Buffer>(drum: string, make: MakeBuffer<Buffer>): BankSound<Buffer> {
  return { buffer: make(drumTone(drum), SYNTHESISED_RATE), midi: null, drum, velocity: 110 };
}
