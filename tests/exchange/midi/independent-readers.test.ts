/**
 * Standard MIDI Files read by programs that nobody here wrote: midi-file (npm), midicsv, mido (Python) and mftext (abcmidi). The last three are
 * system packages; where one is missing a line says so and its checks are skipped.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseMidi } from 'midi-file';
import { afterAll, describe, expect, it } from 'vitest';
import { writeMidi } from '../../../src/exchange/midi/write-midi';
import { readChart } from '../../../src/music/chart/read';
import { arrange, type Score } from '../../../src/music/score';
import { MEASURED } from '../../../src/performance/feel';

/** A note on as [tick, channel, key, velocity]. */
type NoteOn = readonly [number, number, number, number];

const folder = mkdtempSync(join(tmpdir(), 'midi-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function scoreOf(key: string): Score {
  const read = readChart(
    `title: Salón de la Última Barca y de todas las demás\nkey: ${key}\n\n[A, x2]\n| C6 | >A7b9 / Dm7 / |\n[Coro con un nombre larguísimo de verdad]\n| Dm7 | G7 {1 2& 4} |\n`,
  );
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return arrange(read.value, { level: 4 });
}
const bytes = writeMidi(scoreOf('C'));
const path = join(folder, 'song.mid');
writeFileSync(path, bytes);

const run = (program: string, ...args: string[]): string | null => {
  const { status, stdout, error } = spawnSync(program, args, { encoding: 'utf8', maxBuffer: 1 << 26 });
  return error || status !== 0 ? null : stdout;
};
const PYTHON = ['/usr/bin/python3', 'python3'].find((python) => run(python, '-c', 'import mido') !== null);
const HAS_MIDICSV = run('midicsv', path) !== null;
const HAS_MFTEXT = !spawnSync('mftext', [path]).error;
const missing = [HAS_MIDICSV ? '' : 'midicsv', HAS_MFTEXT ? '' : 'mftext (abcmidi)', PYTHON ? '' : 'python3-mido'].filter(
  (name) => name !== '',
);
if (missing.length > 0) console.log(`MIDI files were not read by ${missing.join(', ')}: not installed`);

const ordered = (notes: NoteOn[]): NoteOn[] => notes.toSorted((a, b) => a[0] - b[0] || a[1] - b[1] || a[2] - b[2] || a[3] - b[3]);

function byMidiFile(file: Uint8Array): NoteOn[] {
  return ordered(
    parseMidi(file).tracks.flatMap((track) => {
      let tick = 0;
      return track.flatMap((event): NoteOn[] => {
        tick += event.deltaTime;
        return event.type === 'noteOn' ? [[tick, event.channel, event.noteNumber, event.velocity]] : [];
      });
    }),
  );
}

/** Prints every note on, and every key signature and tempo, of the files named, as JSON. */
const MIDO = `
import json, sys, mido
out = []
for path in sys.argv[1:]:
    song = mido.MidiFile(path)
    notes, keys, tempi = [], [], []
    for track in song.tracks:
        tick = 0
        for message in track:
            tick += message.time
            if message.type == 'note_on' and message.velocity > 0:
                notes.append([tick, message.channel, message.note, message.velocity])
            if message.type == 'key_signature':
                keys.append(message.key)
            if message.type == 'set_tempo':
                tempi.append(mido.tempo2bpm(message.tempo))
    out.append({'ticks': song.ticks_per_beat, 'type': song.type, 'notes': notes, 'keys': keys, 'tempi': tempi})
print(json.dumps(out))
`;
interface MidoFile {
  readonly ticks: number;
  readonly type: number;
  readonly notes: NoteOn[];
  readonly keys: readonly string[];
  readonly tempi: readonly number[];
}
const byMido = (paths: readonly string[]): MidoFile[] => JSON.parse(run(PYTHON ?? '', '-c', MIDO, ...paths) ?? '[]') as MidoFile[];

describe('independent readers of a MIDI file', () => {
  it.skipIf(!HAS_MIDICSV)('midicsv reads the notes that midi-file reads', () => {
    const rows = (run('midicsv', path) ?? '').split('\n').map((row) => row.split(', '));
    const notes = rows.flatMap(([, tick, kind, channel, key, velocity]): NoteOn[] =>
      kind === 'Note_on_c' && velocity !== '0' ? [[Number(tick), Number(channel), Number(key), Number(velocity)]] : [],
    );
    expect(notes.length).toBeGreaterThan(100);
    expect(ordered(notes)).toEqual(byMidiFile(bytes));
    const markers = rows.flatMap(([, , kind, ...text]) => (kind === 'Marker_t' ? [text.join(', ').replaceAll('"', '')] : []));
    expect(markers).toEqual(['A, 2-side', '3-side', 'A, 2-side', '3-side', 'Coro con un nombre largu, 2-side', '3-side']);
    for (const name of rows.flatMap(([, , kind, ...text]) => (kind === 'Title_t' || kind === 'Marker_t' ? [text.join(', ')] : [])))
      expect(name).toMatch(/^"[ -~]{1,32}"$/);
  });

  it.skipIf(!PYTHON)('mido reads the notes that midi-file reads, and the tempo within 0.001', () => {
    const [song] = byMido([path]);
    expect([song?.ticks, song?.type]).toEqual([480, 1]);
    expect(ordered([...(song?.notes ?? [])])).toEqual(byMidiFile(bytes));
    expect(Math.abs((song?.tempi[0] ?? 0) - 180)).toBeLessThan(0.001);
  });

  it.skipIf(!HAS_MFTEXT)('mftext reports no fault', () => {
    const { status, stdout, stderr } = spawnSync('mftext', [path], { encoding: 'utf8', maxBuffer: 1 << 26 });
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).not.toMatch(/error|unexpected|didn't find|bad/i);
    expect(stdout.match(/Track end/g)).toHaveLength(parseMidi(bytes).tracks.length);
  });

  it('ends notes before others begin at the same tick, in every track', () => {
    for (const track of parseMidi(bytes).tracks) {
      let begun = false;
      for (const event of track) {
        if (event.deltaTime > 0) begun = false;
        if (event.type === 'noteOn') begun = true;
        if (event.type === 'noteOff') expect(begun).toBe(false);
      }
    }
  });

  it('moves notes off the grid only when a feel is asked for', () => {
    const score = scoreOf('C');
    const straight = byMidiFile(writeMidi(score)).filter(([, channel]) => channel < 3);
    expect(straight.every(([tick]) => tick % 240 === 0)).toBe(true);
    const felt = byMidiFile(writeMidi(score, { feel: MEASURED })).filter(([, channel]) => channel < 3);
    expect(felt).toHaveLength(straight.length);
    expect(felt.some(([tick]) => tick % 240 !== 0)).toBe(true);
  });
});

/** Circle of fifths (handbook knowledge; MusicXML 4.0 counts `fifths` the same way): tonics from seven flats to seven sharps. */
const MAJOR = ['Cb', 'Gb', 'Db', 'Ab', 'Eb', 'Bb', 'F', 'C', 'G', 'D', 'A', 'E', 'B', 'F#', 'C#'];
const MINOR = ['Abm', 'Ebm', 'Bbm', 'Fm', 'Cm', 'Gm', 'Dm', 'Am', 'Em', 'Bm', 'F#m', 'C#m', 'G#m', 'D#m', 'A#m'];

describe('key signatures in all thirty keys', () => {
  const keys = [...MAJOR, ...MINOR];
  const files = keys.map((key, index) => {
    const file = writeMidi(scoreOf(key));
    const name = join(folder, `${index}.mid`);
    writeFileSync(name, file);
    return { file, name };
  });

  it('as midi-file reads them', () => {
    const read = files.map(({ file }) =>
      parseMidi(file).tracks[0]?.flatMap((event) => (event.type === 'keySignature' ? [[event.key, event.scale]] : [])),
    );
    expect(read).toEqual([...MAJOR.map((_, index) => [[index - 7, 0]]), ...MINOR.map((_, index) => [[index - 7, 1]])]);
  });

  it.skipIf(!PYTHON)('as mido names them', () =>
    expect(byMido(files.map(({ name }) => name)).map((song) => song.keys)).toEqual(keys.map((key) => [key])),
  );
});
