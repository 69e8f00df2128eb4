import { describe, expect, it } from 'vitest';
import type { SoundingBar } from '../../src/music/chart/chart';
import { halfNotesPerMinute, type Side, type Stroke } from '../../src/vocabulary';
import { printedChord, printedNote, SPOKEN } from '../../src/words/spoken';
import { whyStroke } from '../../src/words/why';

const bar = (index: number, ticks = 1920): SoundingBar => ({
  index,
  writtenBar: index,
  pass: 0,
  visit: 0,
  section: 'A',
  role: null,
  kind: 'groove',
  playing: 'band',
  tick: index * ticks,
  ticks,
  cycleStep: (index % 2) * 8,
  side: index % 2 === 0 ? 2 : 3,
  restart: false,
  chords: [],
  hits: [],
  key: { tonic: 'D', mode: 'major' },
  style: 'salsa',
  figure: null,
  tempo: halfNotesPerMinute(92),
});
const bars = [bar(0), bar(1), bar(2), bar(3)];

type Changes = Partial<Omit<Stroke, 'reason'>> & { readonly reason?: Partial<Stroke['reason']> };
const stroke = (changes: Changes): Stroke => ({
  tick: 0,
  durationTicks: 240,
  soundingTicks: 180,
  midi: [68, 80],
  names: ['G#4', 'G#5'],
  velocity: 96,
  role: 'octave',
  chord: 'E7',
  degrees: ['3', '3'],
  leadTicks: 0,
  lift: 0,
  line: 'guide',
  device: null,
  firstPassOnly: false,
  ...changes,
  reason: {
    step: 0,
    side: 2 as Side,
    anticipatesBar: null,
    anticipatesWithinBar: false,
    move: null,
    claveStroke: null,
    fallback: null,
    ...changes.reason,
  },
});
const falling = { semitones: -1, fromName: 'A4', fromDegree: 'b7', fromChord: 'Bm7' } as const;

describe('why a stroke is what it is', () => {
  it('names the note, the way it came and the chord it takes early', () => {
    const early = stroke({ tick: 1680, leadTicks: 240, reason: { step: 7, side: 2, anticipatesBar: 1, move: falling } });
    expect(whyStroke(early, bars)).toBe(
      'G♯ is the third of E7. It falls a half step from A, the seventh of Bm7, and it is struck on the & of 4 of the 2-side, an eighth before the chord is written in bar 2.',
    );
  });

  it('says that the bar lies round the loop when the last bar looks ahead to the first', () => {
    const seam = stroke({ tick: 3 * 1920 + 1440, leadTicks: 480, reason: { step: 6, side: 3, anticipatesBar: 0, claveStroke: 'third' } });
    expect(whyStroke(seam, bars)).toBe(
      'G♯ is the third of E7. It is struck on 4 of the 3-side, with the third clave stroke (ponche), a beat before the chord is written in bar 1, round the loop.',
    );
  });

  it('names no bar when the chord is written in the same one', () => {
    const within = stroke({ tick: 720, leadTicks: 240, reason: { step: 3, anticipatesBar: 0, anticipatesWithinBar: true } });
    expect(whyStroke(within, bars)).toContain('struck on the & of 2 of the 2-side, an eighth before the chord is written.');
  });

  it('names inner notes, and what lies inside a chord', () => {
    const inner = stroke({ role: 'inner', names: ['B4', 'D5'], midi: [71, 74], degrees: ['5', 'b7'], reason: { step: 2 } });
    expect(whyStroke(inner, bars)).toBe('B and D are the fifth and seventh of E7, inside the octave. They are struck on 2 of the 2-side.');
    const chord = stroke({ role: 'chord', names: ['G#4', 'B4', 'D5', 'G#5'], midi: [68, 71, 74, 80], degrees: ['3', '5', 'b7', '3'] });
    expect(whyStroke(chord, bars)).toMatch(/^G♯ is the third of E7, with B and D inside, its fifth and seventh\. /);
  });

  it('says whether the line stays, repeats, steps or leaps', () => {
    const moved = (semitones: number, fromChord = 'Bm7'): string =>
      whyStroke(stroke({ reason: { move: { ...falling, semitones, fromChord } } }), bars);
    expect(moved(0)).toContain('It stays on A, the seventh of Bm7, and it is struck');
    expect(moved(0, 'E7')).toContain('It repeats the note before, and it is struck');
    expect(moved(2)).toContain('It rises a whole step from A');
    expect(moved(-7)).toContain('It leaps down a fifth from A');
    expect(moved(14)).toContain('It leaps up 14 half steps from A');
  });

  it('tells the bass note, a written slash bass, and what sounds the first time only', () => {
    const first = stroke({ role: 'root', chord: 'A7', names: ['A1'], midi: [33], degrees: ['1'], line: null, firstPassOnly: true });
    expect(whyStroke(first, bars)).toBe(
      'A is the root of A7. It is struck on 1 of the 2-side. It sounds the first time only; afterwards the note before rings over it.',
    );
    const slash = stroke({ role: 'root', chord: 'G/B', names: ['B1'], midi: [35], degrees: ['3'], line: null });
    expect(whyStroke(slash, bars)).toMatch(/^B is the bass note written in G\/B\./);
    const approach = stroke({ role: 'approach', names: ['G#1'], midi: [32], degrees: ['7'], line: null });
    expect(whyStroke(approach, bars)).toMatch(/^G♯ is an approach note: it leads by step into the next stroke\./);
  });

  it('adds the device, the fallback and the line where there is one', () => {
    expect(whyStroke(stroke({ device: 'octave-up', lift: 12 }), bars)).toMatch(/The hand plays it an octave up\.$/);
    expect(whyStroke(stroke({ device: 'octaves-only', reason: { fallback: 'octaves only' } }), bars)).toMatch(
      /of the 2-side\. Octaves only is switched on, so nothing sounds inside\.$/,
    );
    expect(whyStroke(stroke({ line: 'minor', reason: { fallback: 'power chord' } }), bars)).toMatch(
      /It belongs to the line that moves inside the held minor chord\. The chord names no third, so nothing is put inside\.$/,
    );
  });

  it('counts 6/8 in six, and throws when no bar holds the stroke', () => {
    expect(whyStroke(stroke({ reason: { step: 4 } }), [bar(0, 1440)])).toContain('struck on 5 of the 2-side');
    expect(() => whyStroke(stroke({ tick: 9999 }), bars)).toThrow('no bar holds a stroke at tick 9999');
  });
});

describe('words for notes, chords and counts', () => {
  it('prints accidentals as glyphs and leaves letters alone', () => {
    expect(['Bb3', 'F##4', 'Ebb', 'B'].map(printedNote)).toEqual(['B♭', 'F♯♯', 'E♭♭', 'B']);
    expect(['Bb7b9', 'Ebm7/Bb', 'F#m7b5', 'Bdim7', 'A7alt'].map(printedChord)).toEqual(['B♭7♭9', 'E♭m7/B♭', 'F♯m7♭5', 'Bdim7', 'A7alt']);
  });

  it('counts the steps of a bar and joins lists', () => {
    expect([0, 1, 6, 7].map((step) => SPOKEN.count(step, false))).toEqual(['1', 'the & of 1', '4', 'the & of 4']);
    expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map((words) => SPOKEN.list(words))).toEqual(['', 'a', 'a and b', 'a, b and c']);
    expect(Object.values(SPOKEN.degrees).every((word) => word.length > 0)).toBe(true);
  });
});
