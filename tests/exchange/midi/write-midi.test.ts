import fc from 'fast-check';
import { type MidiEvent, parseMidi } from 'midi-file';
import { describe, expect, it } from 'vitest';
import { drumKey, drumVelocity } from '../../../src/exchange/midi/drum-keys';
import { writeMidi } from '../../../src/exchange/midi/write-midi';
import type { Score } from '../../../src/music/score';
import { halfNotesPerMinute } from '../../../src/vocabulary';
import { LOOP_SCORE } from '../../layout/loop-score';

interface ReadNote {
  readonly tick: number;
  readonly ticks: number;
  readonly midi: number;
  readonly velocity: number;
  readonly channel: number;
}

/** Notes of a track, read with midi-file; fails when a pitch overlaps itself, or a note never ends. */
function notesOf(track: readonly MidiEvent[]): ReadNote[] {
  const open = new Map<number, Omit<ReadNote, 'ticks'>>();
  const notes: ReadNote[] = [];
  let tick = 0;
  for (const event of track) {
    tick += event.deltaTime;
    if (event.type === 'noteOn') {
      expect(open.has(event.noteNumber), `pitch ${event.noteNumber} overlaps itself at ${tick}`).toBe(false);
      open.set(event.noteNumber, { tick, midi: event.noteNumber, velocity: event.velocity, channel: event.channel });
    } else if (event.type === 'noteOff') {
      const begun = open.get(event.noteNumber);
      expect(begun).toBeDefined();
      if (begun) notes.push({ ...begun, ticks: tick - begun.tick });
      open.delete(event.noteNumber);
    }
  }
  expect(open.size).toBe(0);
  return notes.toSorted((a, b) => a.tick - b.tick || a.midi - b.midi);
}

const at = (track: readonly MidiEvent[] | undefined): { readonly tick: number; readonly event: MidiEvent }[] => {
  let tick = 0;
  return (track ?? []).map((event) => {
    tick += event.deltaTime;
    return { tick, event };
  });
};
const nameOf = (track: readonly MidiEvent[]): string => track.flatMap((event) => (event.type === 'trackName' ? [event.text] : []))[0] ?? '';

describe('writeMidi', () => {
  const read = parseMidi(writeMidi(LOOP_SCORE));

  it('is type 1 with 480 ticks to the quarter and one named track per part', () => {
    expect(read.header).toMatchObject({ format: 1, numTracks: 5, ticksPerBeat: 480 });
    expect(read.tracks.map(nameOf)).toEqual(['Last Ferry', 'Piano RH', 'Piano LH', 'Bass', 'Clave']);
  });

  it('has tempo, cut time, key and a marker for the section and every side in track 0', () => {
    const events = at(read.tracks[0]);
    // 92 half notes are 184 quarters: 60000000 / 184 = 326086.96
    expect(events.find(({ event }) => event.type === 'setTempo')?.event).toMatchObject({ microsecondsPerBeat: 326087 });
    expect(events.find(({ event }) => event.type === 'timeSignature')?.event).toMatchObject({
      numerator: 2,
      denominator: 2,
      metronome: 48,
      thirtyseconds: 8,
    });
    expect(events.find(({ event }) => event.type === 'keySignature')?.event).toMatchObject({ key: 2, scale: 0 });
    expect(events.flatMap(({ tick, event }) => (event.type === 'marker' ? [[tick, event.text]] : []))).toEqual([
      [0, 'A, 2-side'],
      [1920, '3-side'],
      [3840, '2-side'],
      [5760, '3-side'],
    ]);
  });

  it('ends every track with FF 2F 00 at the last tick of the music', () => {
    for (const track of read.tracks) {
      const last = at(track).at(-1);
      expect(last?.event.type).toBe('endOfTrack');
      expect(last?.tick).toBe(7680);
    }
  });

  it('holds exactly the notes of the score, with what rings past the end cut there', () => {
    const expected = (
      strokes: readonly { tick: number; midi: readonly number[]; soundingTicks: number; velocity: number }[],
      channel: number,
    ): ReadNote[] =>
      strokes.flatMap((s) =>
        s.midi.map((midi) => ({ tick: s.tick, ticks: Math.min(s.soundingTicks, 7680 - s.tick), midi, velocity: s.velocity, channel })),
      );
    expect(notesOf(read.tracks[1] ?? [])).toEqual(expected(LOOP_SCORE.parts.rightHand, 0));
    expect(notesOf(read.tracks[2] ?? [])).toEqual(expected(LOOP_SCORE.parts.leftHand, 1));
    expect(notesOf(read.tracks[3] ?? [])).toEqual(expected(LOOP_SCORE.parts.bass, 2));
  });

  it('includes the bass note of the first pass once', () => {
    const first = notesOf(read.tracks[3] ?? []).filter((note) => note.tick === 0);
    expect(first.map((note) => note.midi)).toEqual([40]);
  });

  it('puts the clave on channel 10 as key 75, and piano and bass on their General MIDI programs (RP-003)', () => {
    const clave = notesOf(read.tracks[4] ?? []);
    expect(clave.map((note) => note.tick / 240)).toEqual([2, 4, 8, 11, 14, 18, 20, 24, 27, 30]);
    expect(new Set(clave.map((note) => [note.channel, note.midi].join()))).toEqual(new Set(['9,75']));
    const programs = read.tracks.flatMap((track) =>
      track.flatMap((event) => (event.type === 'programChange' ? [[event.channel, event.programNumber]] : [])),
    );
    expect(programs).toEqual([
      [0, 0],
      [1, 0],
      [2, 32],
    ]);
  });

  it('scales to another tempo and starts a range at tick 0', () => {
    const range: Score = { ...LOOP_SCORE, fromTick: 3840, bars: LOOP_SCORE.bars.slice(2) };
    const again = parseMidi(writeMidi(range, { tempo: halfNotesPerMinute(60) }));
    expect(at(again.tracks[0]).find(({ event }) => event.type === 'setTempo')).toMatchObject({
      tick: 0,
      event: { microsecondsPerBeat: 500000 },
    });
    expect(notesOf(again.tracks[1] ?? [])[0]).toMatchObject({ tick: 0, midi: 74 });
    expect(at(again.tracks[3]).at(-1)?.tick).toBe(3840);
  });

  it('writes names in ASCII of at most 32 characters, whatever the title', () => {
    const odd = {
      ...LOOP_SCORE,
      title: '<img src=x onerror=alert(1)> Salón de la Última Barca ♭',
      parts: { ...LOOP_SCORE.parts, percussion: { cascara: [{ tick: 0, stroke: 'accent' }] } },
    };
    const names = parseMidi(writeMidi(odd)).tracks.map(nameOf);
    expect(names[0]).toBe('<img src=x onerror=alert(1)> Sal');
    expect(names.at(-1)).toBe('Cascara');
    expect(nameOf(parseMidi(writeMidi({ ...LOOP_SCORE, title: '日本' })).tracks[0] ?? [])).toBe('Montuno');
  });

  it('writes changes of key, tempo and meter where they happen', () => {
    const bars = LOOP_SCORE.bars.map((bar, i) =>
      i < 2
        ? bar
        : {
            ...bar,
            key: { tonic: 'Bb', mode: 'minor' as const },
            tempo: halfNotesPerMinute(60),
            ...(i === 3 ? { ticks: 960, kind: 'short' as const } : {}),
          },
    );
    const events = at(parseMidi(writeMidi({ ...LOOP_SCORE, bars, toTick: 6720 })).tracks[0]);
    const of = (type: string): unknown[] => events.filter(({ event }) => event.type === type);
    expect(of('keySignature')).toMatchObject([{ tick: 0 }, { tick: 3840, event: { key: -5, scale: 1 } }]);
    expect(of('setTempo')).toMatchObject([{ tick: 0 }, { tick: 3840, event: { microsecondsPerBeat: 500000 } }]);
    expect(of('timeSignature')).toMatchObject([{ tick: 0 }, { tick: 5760, event: { numerator: 2, denominator: 4 } }]);
  });

  it('never overlaps a pitch with itself and keeps every onset, for any lengths', () => {
    const strokes = fc.array(
      fc.record({ tick: fc.nat(7679), soundingTicks: fc.integer({ min: 1, max: 4000 }), midi: fc.integer({ min: 60, max: 64 }) }),
      { maxLength: 60 },
    );
    const model = LOOP_SCORE.parts.rightHand[0];
    if (!model) throw new Error('the loop has strokes');
    fc.assert(
      fc.property(strokes, (list) => {
        const rightHand = list.map((s) => ({ ...model, tick: s.tick, soundingTicks: s.soundingTicks, midi: [s.midi] }));
        const file = parseMidi(writeMidi({ ...LOOP_SCORE, parts: { ...LOOP_SCORE.parts, rightHand } }));
        const track = file.tracks.find((t) => nameOf(t) === 'Piano RH') ?? [];
        const onsets = new Set(list.map((s) => `${s.tick}:${s.midi}`));
        expect(new Set(notesOf(track).map((n) => `${n.tick}:${n.midi}`))).toEqual(onsets);
      }),
      { numRuns: 100 },
    );
  });
});

describe('drum keys', () => {
  // General MIDI level 1 percussion map (RP-003): 75 Claves, 56 Cowbell, 70 Maracas, 73 Short Guiro, 60 Hi Bongo, 61 Low Bongo, 62 Mute Hi Conga, 63 Open Hi Conga, 64 Low Conga, 77 Low Wood Block.
  it.each([
    ['clave', 'stroke', 75],
    ['campana', 'accent', 56],
    ['maracas', 'plain', 70],
    ['guiro', 'short', 73],
    ['bongo', 'plain', 60],
    ['bongo', 'low', 61],
    ['conga', 'slap', 62],
    ['conga', 'open', 63],
    ['conga', 'low', 64],
    ['unheard of', 'x', 77],
  ])('plays %s %s on key %i', (part, stroke, key) => {
    expect(drumKey(part, stroke)).toBe(key);
    expect(drumVelocity(stroke)).toBeGreaterThan(0);
  });
});
