/**
 * Renders public/samples/ from Debian's fluid-soundfont-gm (FluidR3 GM, MIT): every note of src/performance/sounds/sample-set.ts is
 * played by fluidsynth, cut at its onset with sox and encoded with lame, whose tag lets browsers drop the encoder's delay, so the
 * decoded onset is where the cut put it. Run: npx tsx tests/scripts/render-samples.ts
 * Needs: apt-get install fluidsynth fluid-soundfont-gm sox lame
 */
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { MidiEvent } from 'midi-file';
import { writeMidi } from 'midi-file';
import { BASS_SAMPLES, DRUM_SAMPLES, PIANO_SAMPLES, PROGRAMS } from '../../src/performance/sounds/sample-set';

const SOUND_FONT = '/usr/share/sounds/sf2/FluidR3_GM.sf2';
const OUT = 'public/samples';
const RATE = 44_100;
/** Each note is held for `HOLD` and the next one starts `APART` seconds later. */
const APART = 6;
const HOLD = 4;
/** Kept before the onset, so that the attack is whole. */
const LEAD_FRAMES = 40;
/** fluidsynth's master gain: loud enough to use the encoder well, without clipping the loudest note. */
const GAIN = 0.9;

interface Note {
  readonly file: string;
  readonly midi: number;
  readonly velocity: number;
  readonly seconds: number;
  readonly speed?: number;
  readonly lowpass?: number;
  readonly peakDb?: number;
}

/** A MIDI file with the notes one by one; at 120 quarters a minute and 480 ticks a quarter, a second is 960 ticks. */
function midiOf(notes: readonly Note[], channel: number, program: number): Uint8Array {
  const events: MidiEvent[] = [
    { deltaTime: 0, type: 'setTempo', meta: true, microsecondsPerBeat: 500_000 },
    { deltaTime: 0, type: 'programChange', channel, programNumber: program },
  ];
  notes.forEach(({ midi, velocity }, index) => {
    events.push({ deltaTime: index === 0 ? 0 : (APART - HOLD) * 960, type: 'noteOn', channel, noteNumber: midi, velocity });
    events.push({ deltaTime: HOLD * 960, type: 'noteOff', channel, noteNumber: midi, velocity: 0 });
  });
  events.push({ deltaTime: 1920, type: 'endOfTrack', meta: true });
  return Uint8Array.from(writeMidi({ header: { format: 0, numTracks: 1, ticksPerBeat: 480 }, tracks: [events] }));
}

/** The frame in [from, to) where the sound begins: the first above a hundredth of the peak. */
function onsetIn(frames: Int16Array, from: number, to: number): number {
  const part = frames.subarray(from, to);
  const peak = part.reduce((high, value) => Math.max(high, Math.abs(value)), 0);
  if (peak < 500) throw new Error(`nothing sounds in frames ${from} to ${to}: peak ${peak} of 32768`);
  if (peak > 32_700) throw new Error(`clipped in frames ${from} to ${to}: lower GAIN`);
  return from + part.findIndex((value) => Math.abs(value) > peak / 100);
}

function render(name: string, notes: readonly Note[], channel: number, program: number, folder: string) {
  const [midi, stereo, wav] = ['mid', 'stereo.wav', 'wav'].map((end) => join(folder, `${name}.${end}`)) as [string, string, string];
  writeFileSync(midi, midiOf(notes, channel, program));
  execFileSync('fluidsynth', ['-q', '-ni', '-R', '0', '-C', '0', '-g', String(GAIN), '-r', String(RATE), '-F', stereo, SOUND_FONT, midi]);
  execFileSync('sox', [stereo, '-c', '1', '-b', '16', wav]);
  const bytes = readFileSync(wav);
  const data = bytes.indexOf('data') + 8;
  const frames = new Int16Array(
    bytes.buffer.slice(bytes.byteOffset + data, bytes.byteOffset + data + Math.floor((bytes.length - data) / 2) * 2),
  );
  notes.forEach(({ file, seconds, speed = 1, lowpass, peakDb }, index) => {
    const from = index * APART * RATE;
    const start = Math.max(0, onsetIn(frames, from, from + HOLD * RATE) - LEAD_FRAMES);
    const cut = join(folder, 'cut.wav');
    const fadeOut = Math.min(0.5, seconds / 3);
    execFileSync('sox', [
      wav,
      cut,
      'trim',
      `${start}s`,
      `${Math.round(seconds * speed * RATE)}s`,
      ...(speed === 1 ? [] : ['speed', String(speed), 'rate', String(RATE)]),
      ...(lowpass === undefined ? [] : ['lowpass', String(lowpass)]),
      ...(peakDb === undefined ? [] : ['norm', String(peakDb)]),
      'fade',
      't',
      '0.0005',
      String(seconds),
      String(fadeOut),
    ]);
    execFileSync('lame', ['--quiet', '-m', 'm', '-V', '3', '--noreplaygain', cut, join(OUT, file)]);
  });
}

const NOTICE = `The recordings in this folder are rendered from the sound font "Fluid (R3)" (package fluid-soundfont-gm of
Debian) by tests/scripts/render-samples.ts.

${readFileSync('/usr/share/doc/fluid-soundfont-gm/README', 'utf8').trim()}

The licence, as shipped with the sound font:

${
  /Permission is hereby granted[\s\S]*?SOFTWARE\./
    .exec(readFileSync('/usr/share/doc/fluid-soundfont-gm/copyright', 'utf8').split('COPYING')[1] ?? '')?.[0]
    .replaceAll(/^ /gm, '') ?? ''
}

Copyright © 2000-2002, 2008 Frank Wen
Copyright © 2008 Toby Smithe
`;

mkdirSync(OUT, { recursive: true });
const folder = mkdtempSync(join(tmpdir(), 'render-samples-'));
try {
  // High strings ring shorter, so less of them is kept.
  const pianoSeconds = (midi: number) => (midi < 60 ? 3 : midi < 80 ? 2.4 : 1.8);
  render(
    'piano',
    PIANO_SAMPLES.map((note) => ({ ...note, seconds: pianoSeconds(note.midi) })),
    0,
    PROGRAMS.piano,
    folder,
  );
  render(
    'bass',
    BASS_SAMPLES.map((note) => ({ ...note, seconds: 2.2 })),
    0,
    PROGRAMS.bass,
    folder,
  );
  render(
    'drums',
    DRUM_SAMPLES.map(({ generalMidi, ...sample }) => ({ ...sample, midi: generalMidi, velocity: 110 })),
    9,
    0,
    folder,
  );
} finally {
  rmSync(folder, { recursive: true });
}
writeFileSync(join(OUT, 'NOTICE'), NOTICE);
const files = [...PIANO_SAMPLES, ...BASS_SAMPLES, ...DRUM_SAMPLES].map(({ file }) => file);
const total = files.reduce((sum, file) => sum + statSync(join(OUT, file)).size, 0);
console.log(`${files.length} files, ${(total / 1024).toFixed(0)} KB`);
