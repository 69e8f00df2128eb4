import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { notate } from '../../../src/layout/notation/notate';
import type { NotatedEvent, StaffBar } from '../../../src/layout/notation/notation';
import { STAVES } from '../../../src/layout/notation/notation';
import { fittingClef, legerLines, signatureAlter, staffStep, writtenPitch } from '../../../src/layout/notation/written-pitch';
import type { Score } from '../../../src/music/score';
import { LOOP_SCORE } from '../loop-score';

const LENGTHS = { whole: 1920, half: 960, quarter: 480, eighth: 240, sixteenth: 120, 'thirty-second': 60 } as const;
const SIGN = { '#': '♯', b: '♭', n: '♮', '##': 'x', bb: '♭♭' } as const;

/** A staff in one line: value letter, dots, signs and notes, `_` for a tie to the next, `r` for rests. */
function show(bar: StaffBar | undefined): string {
  const letter = { whole: '1', half: '2', quarter: '4', eighth: '8', sixteenth: '16', 'thirty-second': '32' } as const;
  const note = (event: NotatedEvent): string =>
    event.kind === 'rest'
      ? 'r'
      : event.kind === 'stroke'
        ? 'x'
        : event.pitches
            .map((p) => (p.accidental ? (p.courtesy ? `(${SIGN[p.accidental]})` : SIGN[p.accidental]) : '') + p.letter + p.octave)
            .join('/');
  return (bar?.events ?? [])
    .map(
      (event) =>
        letter[event.value.shape] + '.'.repeat(event.value.dots) + note(event) + (event.tieOut ? '_' : '') + (event.ringsOn ? '~' : ''),
    )
    .join(' ');
}

describe('notate, on the hand-typed loop', () => {
  const { bars, clefs } = notate(LOOP_SCORE);

  // Expected by hand from the rules (common practice of engraving, no source): D major has F sharp and C sharp.
  it('writes the right hand with ties over the barline and no sign on a tied note', () => {
    expect(bars.map((bar) => show(bar.staves.right))).toEqual([
      '8D5/D6 8r 8G5/B5 8D5/D6 8r 8G5/B5 8r 8C5/C6_',
      '8C5/C6 8G5/B5 8r 8C5/C6 8r 8G5/A5 8r 8D5/D6',
      '8D5/D6 8r 8F5/B5 8D5/D6 8r 8F5/B5 8r 8♯D5/♯D6_',
      '8D5/D6 8A5/♮C6 8r 8♯D5/♯D6 8r 8A5/C6 8r 8♮D5/♮D6~',
    ]);
  });

  it('writes the bass with anticipations tied into the next bar', () => {
    expect(bars.map((bar) => show(bar.staves.bass))).toEqual([
      '4.E2 8B2_ 4B2 4A2_',
      '4.A2 8E2_ 4E2 4D3_',
      '4.D3 8A2_ 4A2 4B2_',
      '4.B2 8F2_ 4F2 4E2~',
    ]);
  });

  // Son clave 2-3 (published in any handbook of Latin rhythm): rest, 2, 3, rest | 1, & of 2, 4.
  it('writes the clave for reading, without ties', () => {
    expect(bars.map((bar) => show(bar.staves.clave))).toEqual(['4r 4x 4x 4r', '4.x 8x 4r 4x', '4r 4x 4x 4r', '4.x 8x 4r 4x']);
  });

  it('gives cut time, key, sides, chords, counts and the section', () => {
    expect(
      bars.map((bar) => [bar.side, bar.fifths, bar.meter.kind, bar.chords.map((chord) => chord.text).join(), bar.sectionStart]),
    ).toEqual([
      [2, 2, 'cut', 'Em7', 'A'],
      [3, 2, 'cut', 'A7', null],
      [2, 2, 'cut', 'D6', null],
      [3, 2, 'cut', 'B7♭9', null],
    ]);
    expect(bars[0]?.counts.map((count) => count.text).join(' ')).toBe('1 & 2 & 3 & 4 &');
    expect(bars.map((bar) => [bar.meterChange, bar.keyChange])).toEqual([
      [true, true],
      [false, false],
      [false, false],
      [false, false],
    ]);
  });

  it('puts the left hand on the clef with the fewest leger lines and the bass on an octave clef', () => {
    expect(clefs).toEqual({ right: 'treble', left: 'treble', bass: 'bass-8vb' });
    const low = LOOP_SCORE.parts.rightHand.map((s) => ({
      ...s,
      midi: [(s.midi[0] ?? 0) - 24],
      names: [(s.names[0] ?? '').replace('5', '3')],
    }));
    expect(notate({ ...LOOP_SCORE, parts: { ...LOOP_SCORE.parts, leftHand: low } }).clefs.left).toBe('bass');
  });

  it('joins neighbouring eighths inside half a bar and marks the note of the first pass', () => {
    expect(bars[0]?.staves.right.beams).toEqual([[2, 3]]);
    expect(bars[1]?.staves.right.beams).toEqual([[0, 1]]);
    expect(bars[0]?.staves.bass.events[0]?.firstPassOnly).toBe(true);
  });

  it('writes an empty part as whole-bar rests', () => {
    const silent = notate({ ...LOOP_SCORE, parts: { ...LOOP_SCORE.parts, rightHand: [] } });
    expect(silent.bars[0]?.staves.right.events).toMatchObject([{ kind: 'rest', wholeBar: true, ticks: 1920 }]);
  });

  it('reminds of a natural after an altered note in the bar before, in brackets, once', () => {
    const [model] = LOOP_SCORE.parts.rightHand;
    if (!model) throw new Error('the loop has strokes');
    const line = ['D#5', 'D5', 'D5', 'D#5'].map((name, i) => ({
      ...model,
      tick: [0, 1920, 2160, 3840][i] ?? 0,
      midi: [name.includes('#') ? 75 : 74],
      names: [name],
    }));
    const again = notate({ ...LOOP_SCORE, parts: { ...LOOP_SCORE.parts, rightHand: line } });
    expect(again.bars.map((bar) => show(bar.staves.right).replace(/ (\d+\.?r ?)+/g, ' '))).toEqual(['8♯D5 ', '8(♮)D5 8D5 ', '8♯D5 ', '1r']);
  });

  it('changes signature where key and meter change', () => {
    const changed = LOOP_SCORE.bars.map((bar, i) =>
      i < 2 ? bar : { ...bar, key: { tonic: 'F', mode: 'major' as const }, ...(i === 3 ? { ticks: 960, kind: 'short' as const } : {}) },
    );
    const read = notate({ ...LOOP_SCORE, bars: changed, toTick: 6720 }).bars;
    expect(read.map((bar) => [bar.keyChange, bar.fifths, bar.meterChange])).toEqual([
      [true, 2, true],
      [false, 2, false],
      [true, -1, false],
      [false, -1, true],
    ]);
    expect(read[3]?.meter).toEqual({ kind: 'fraction', beats: 2, unit: 4 });
  });
});

const NAMES = ['C5', 'C#5', 'Db5', 'D5', 'D#5', 'Eb5', 'E5', 'F5', 'F#5', 'G5', 'Ab5', 'A5', 'Bb5', 'B5', 'Cb6', 'B#4', 'F##5', 'Bbb5'];
const midiOf = (name: string): number => {
  const p = writtenPitch(name, 0);
  return 12 * (p.octave + 1) + [0, 2, 4, 5, 7, 9, 11]['CDEFGAB'.indexOf(p.letter)]! + p.alter;
};
const anyStrokes = fc
  .uniqueArray(
    fc.record({
      step: fc.nat(63),
      names: fc.uniqueArray(fc.constantFrom(...NAMES), { minLength: 1, maxLength: 3, selector: (name) => name.slice(0, 1) }),
      eighths: fc.integer({ min: 1, max: 20 }),
    }),
    { selector: (s) => s.step, maxLength: 30 },
  )
  .map((list): Score => {
    const model = LOOP_SCORE.parts.rightHand[0]!;
    const rightHand = list.map((s) => {
      const sorted = s.names.toSorted((a, b) => midiOf(a) - midiOf(b));
      return { ...model, tick: s.step * 120, durationTicks: s.eighths * 120, names: sorted, midi: sorted.map(midiOf) };
    });
    return { ...LOOP_SCORE, parts: { ...LOOP_SCORE.parts, rightHand } };
  });

describe('notate, on any strokes', () => {
  it('fills every bar of every staff exactly, with values as long as their shapes', () => {
    fc.assert(
      fc.property(anyStrokes, (score) => {
        for (const bar of notate(score).bars)
          for (const staff of STAVES) {
            let at = 0;
            for (const event of bar.staves[staff].events) {
              expect(event.tick).toBe(at);
              if (!event.wholeBar) expect(event.ticks).toBe(LENGTHS[event.value.shape] * (event.value.dots === 1 ? 1.5 : 1));
              at += event.ticks;
            }
            expect(at).toBe(bar.ticks);
          }
      }),
    );
  });

  it('keeps every onset and pairs every tie', () => {
    fc.assert(
      fc.property(anyStrokes, (score) => {
        const { bars } = notate(score);
        const flat = bars.flatMap((bar) => bar.staves.right.events.map((event) => ({ ...event, tick: event.tick + bar.tick })));
        const onsets = flat.filter((event) => event.kind === 'notes' && !event.tieIn).map((event) => event.tick);
        expect(onsets).toEqual(score.parts.rightHand.map((s) => s.tick).toSorted((a, b) => a - b));
        flat.forEach((event, i) => {
          const next = flat[i + 1];
          expect(next?.tieIn ?? false).toBe(event.tieOut);
          if (event.tieOut) expect(next?.pitches.map((p) => p.midi)).toEqual(event.pitches.map((p) => p.midi));
        });
      }),
    );
  });

  it('is read back to the same pitches by a reader who knows only signature, signs, barlines and ties', () => {
    fc.assert(
      fc.property(anyStrokes, fc.constantFrom('D', 'Bb', 'F#', 'Cb', 'C'), (score, tonic) => {
        const keyed = { ...score, bars: score.bars.map((bar) => ({ ...bar, key: { tonic, mode: 'major' as const } })) };
        const semitones = { '#': 1, b: -1, n: 0, '##': 2, bb: -2 } as const;
        let tied = new Map<string, number>();
        for (const bar of notate(keyed).bars) {
          const inForce = new Map<string, number>();
          for (const event of bar.staves.right.events) {
            const now = new Map<string, number>();
            for (const pitch of event.pitches) {
              const place = pitch.letter + pitch.octave;
              if (event.tieIn) expect(pitch.accidental).toBeNull();
              else if (pitch.accidental) inForce.set(place, semitones[pitch.accidental]);
              const heard = event.tieIn ? tied.get(place) : (inForce.get(place) ?? signatureAlter(pitch.letter, bar.fifths));
              expect(heard).toBe(pitch.alter);
              now.set(place, pitch.alter);
            }
            tied = now;
          }
        }
      }),
    );
  });

  it('changes nothing in the score', () => {
    const before = JSON.stringify(LOOP_SCORE);
    notate(LOOP_SCORE);
    expect(JSON.stringify(LOOP_SCORE)).toBe(before);
  });
});

describe('pitches on a staff', () => {
  it('reads names and finds their places', () => {
    expect(writtenPitch('Eb4', 63)).toEqual({ midi: 63, letter: 'E', alter: -1, octave: 4 });
    expect(staffStep({ letter: 'C', octave: 4 })).toBe(28);
    expect(() => writtenPitch('H4', 0)).toThrow('note name');
  });
  // Handbook knowledge: middle C needs one leger line on the treble and the bass staff; D6 two above the treble staff.
  it('counts leger lines', () => {
    expect([legerLines(28, 'treble'), legerLines(28, 'bass'), legerLines(43, 'treble'), legerLines(30, 'treble')]).toEqual([1, 1, 2, 0]);
    expect(fittingClef([35, 36], ['bass', 'treble'])).toBe('treble');
  });
  // Circle of fifths: sharps enter F C G D A E B, flats the other way round.
  it('knows what a signature does to each letter', () => {
    const altered = (fifths: number): string => [...'ABCDEFG'].filter((letter) => signatureAlter(letter, fifths) !== 0).join('');
    expect([altered(0), altered(2), altered(-3), altered(7), altered(-1)]).toEqual(['', 'CF', 'ABE', 'ABCDEFG', 'B']);
    expect(signatureAlter('B', -1)).toBe(-1);
  });
});
