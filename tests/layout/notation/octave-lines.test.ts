import { describe, expect, it } from 'vitest';
import { notate } from '../../../src/layout/notation/notate';
import { octaveShifts } from '../../../src/layout/notation/octave-lines';
import { systemGeometry } from '../../../src/layout/notation/system-geometry';
import { legerLines, staffStep, writtenPitch } from '../../../src/layout/notation/written-pitch';
import { LOOP_SCORE } from '../loop-score';

const MIDI: Readonly<Record<string, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };
const span = (...names: string[]) => ({
  pitches: names.map((name) => writtenPitch(name, (MIDI[name.charAt(0)] ?? 0) + 12 * (Number(name.slice(-1)) + 1))),
});

describe('octaveShifts', () => {
  it('leaves a montuno in its usual place alone, three leger lines included', () => {
    // Right hand octaves from D5–D6 to E5–E6: E6 has three leger lines over the treble staff.
    const usual = [span('D5', 'D6'), span('F5', 'A5'), span('E5', 'E6'), span('G5', 'B5')];
    expect(octaveShifts([...usual, ...usual, ...usual], 'treble')).toEqual(Array(12).fill(0));
  });
  it('puts a whole passage under 8va when four leger lines and more pile up, never single notes', () => {
    const high = [span('G5', 'G6'), span('B5', 'D6'), span('A5', 'A6'), span('C6', 'E6')];
    const low = [span('C5', 'C6'), span('E5', 'G5')];
    const shifts = octaveShifts([...low, ...low, ...high, ...high, ...high, ...low, ...low, ...low, ...low, ...low], 'treble');
    expect(shifts).toEqual([...Array(4).fill(0), ...Array(12).fill(1), ...Array(10).fill(0)]);
    expect(octaveShifts([...low, ...low, span('G5', 'G6'), ...low, ...low], 'treble'), 'one high note keeps its leger lines').toEqual(
      Array(9).fill(0),
    );
  });
  it('puts notes far below the bass staff over 8vb', () => {
    const deep = [span('C1'), span('D1'), span('E1'), span('C1'), span('D1')];
    expect(octaveShifts(deep, 'bass')).toEqual(Array(5).fill(-1));
  });
  it('takes a second octave where one does not do', () => {
    const top = Array.from({ length: 8 }, () => span('C8'));
    expect(octaveShifts(top, 'treble')).toEqual(Array(8).fill(2));
  });
});

describe('a score with an octave line', () => {
  const high = LOOP_SCORE.parts.rightHand.map((s) => ({
    ...s,
    names: s.names.map((name) => name.replace(/\d/, (digit) => String(Number(digit) + 1))),
    midi: s.midi.map((m) => m + 12),
  }));
  const notation = notate({ ...LOOP_SCORE, parts: { ...LOOP_SCORE.parts, rightHand: high } });
  const events = notation.bars.flatMap((bar) => bar.staves.right.events).filter((event) => event.kind === 'notes');

  it('keeps the sounding pitches and writes them with four leger lines at most', () => {
    expect(events.flatMap((event) => (event.tieIn ? [] : event.pitches.map((pitch) => pitch.midi)))).toEqual(high.flatMap((s) => s.midi));
    const most = Math.max(
      ...events.flatMap((event) => event.pitches.map((pitch) => legerLines(staffStep(pitch) - 7 * event.octaves, 'treble'))),
    );
    expect(most).toBeLessThanOrEqual(4);
  });
  it('never begins or ends inside a tied note', () => {
    events.forEach((event, i) => {
      if (event.tieIn && i > 0) expect(event.octaves).toBe(events[i - 1]?.octaves);
    });
  });
  it('goes on from system to system: open to the right, then open to the left', () => {
    const system = (from: number, to: number) =>
      systemGeometry({ notation, from, to, width: 1100, perSystem: 2, staves: ['right'] }).octaveLines.map((line) => [
        line.opens,
        line.closes,
      ]);
    expect([system(0, 2), system(2, 4)]).toEqual([[[true, false]], [[false, true]]]);
  });
});
