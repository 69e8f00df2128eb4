import type { SoundingBar } from '../../src/music/chart/chart';
import type { Chord } from '../../src/music/chord/chord';
import type { Score } from '../../src/music/score';
import { type BassStroke, halfNotesPerMinute, type PianoStroke, type Side } from '../../src/vocabulary';

/**
 * A four-bar loop typed by hand, Em7 | A7 | D6 | B7b9 in 2-3 son: octave line D, C sharp, D, D sharp, standard rhythm, anticipated
 * bass. It is the score of tests that must not depend on the engine.
 */
const STEP = 240;
const reason = {
  step: 0,
  side: 2 as Side,
  anticipatesBar: null,
  anticipatesWithinBar: false,
  move: null,
  claveStroke: null,
  fallback: null,
};
const FLATLESS = ['C', 'C#', 'D', 'D#', 'E', 'F', 'F#', 'G', 'G#', 'A', 'A#', 'B'];
const name = (midi: number): string => `${FLATLESS[midi % 12]}${Math.floor(midi / 12) - 1}`;

const stroke = (step: number, steps: number, midi: readonly number[], role: PianoStroke['role'], chord: string): PianoStroke => ({
  tick: step * STEP,
  durationTicks: steps * STEP,
  soundingTicks: steps === 1 ? 180 : steps * STEP,
  midi,
  names: midi.map(name),
  velocity: role === 'octave' ? 96 : 80,
  role,
  chord,
  degrees: midi.map(() => '1' as const),
  leadTicks: step % 8 === 7 ? 240 : 0,
  lift: 0,
  line: 'guide',
  device: null,
  firstPassOnly: false,
  reason,
});
const octave = (step: number, low: number, chord: string, steps = 1): PianoStroke => stroke(step, steps, [low, low + 12], 'octave', chord);
const inner = (step: number, low: number, high: number, chord: string): PianoStroke => stroke(step, 1, [low, high], 'inner', chord);

const rightHand: readonly PianoStroke[] = [
  octave(0, 74, 'Em7'),
  inner(2, 79, 83, 'Em7'),
  octave(3, 74, 'Em7'),
  inner(5, 79, 83, 'Em7'),
  octave(7, 73, 'A7', 2),
  inner(9, 79, 83, 'A7'),
  octave(11, 73, 'A7'),
  inner(13, 79, 81, 'A7'),
  octave(15, 74, 'D6'),
  octave(16, 74, 'D6'),
  inner(18, 78, 83, 'D6'),
  octave(19, 74, 'D6'),
  inner(21, 78, 83, 'D6'),
  octave(23, 75, 'B7b9', 2),
  inner(25, 81, 84, 'B7b9'),
  octave(27, 75, 'B7b9'),
  inner(29, 81, 84, 'B7b9'),
  octave(31, 74, 'Em7', 2),
];
const leftHand = rightHand.map(
  (s): PianoStroke => ({
    ...s,
    midi: [(s.midi[0] ?? 0) - 12],
    names: [name((s.midi[0] ?? 0) - 12)],
    degrees: ['1'],
    velocity: s.velocity - 8,
  }),
);

const bassStroke = (
  step: number,
  steps: number,
  midi: number,
  role: BassStroke['role'],
  chord: string,
  firstPassOnly = false,
): BassStroke => ({
  ...stroke(step, steps, [midi], 'single', chord),
  role,
  soundingTicks: steps * STEP - 20,
  velocity: 90,
  line: null,
  firstPassOnly,
});
const bass: readonly BassStroke[] = [
  bassStroke(0, 3, 40, 'root', 'Em7', true),
  bassStroke(3, 3, 47, 'fifth', 'Em7'),
  bassStroke(6, 5, 45, 'root', 'A7'),
  bassStroke(11, 3, 40, 'fifth', 'A7'),
  bassStroke(14, 5, 50, 'root', 'D6'),
  bassStroke(19, 3, 45, 'fifth', 'D6'),
  bassStroke(22, 5, 47, 'root', 'B7b9'),
  bassStroke(27, 3, 42, 'fifth', 'B7b9'),
  bassStroke(30, 5, 40, 'root', 'Em7'),
];

const chord = (symbol: string, root: string, rootPc: number): Chord => ({
  symbol,
  root,
  rootPc,
  suffix: symbol.slice(root.length),
  bass: null,
  bassPc: rootPc,
  family: 'dominant',
  tones: [],
});
const CHORDS = [chord('Em7', 'E', 4), chord('A7', 'A', 9), chord('D6', 'D', 2), chord('B7b9', 'B', 11)];

const bars: readonly SoundingBar[] = CHORDS.map((c, index) => ({
  index,
  writtenBar: index,
  pass: 0,
  visit: 0,
  section: 'A',
  role: null,
  kind: 'groove',
  playing: 'band',
  tick: index * 1920,
  ticks: 1920,
  cycleStep: (index % 2) * 8,
  side: index % 2 === 0 ? 2 : 3,
  restart: false,
  chords: [{ tick: index * 1920, chord: c, symbol: c.symbol, push: false }],
  hits: [],
  key: { tonic: 'D', mode: 'major' },
  style: 'salsa',
  figure: null,
  tempo: halfNotesPerMinute(92),
}));

const clave = { kind: 'son', direction: '2-3' } as const;

/** The loop, closed. */
export const LOOP_SCORE: Score = {
  title: 'Last Ferry',
  key: { tonic: 'D', mode: 'major' },
  meter: '4/4',
  style: 'salsa',
  closed: true,
  clave,
  tempo: halfNotesPerMinute(92),
  level: 2,
  levels: [],
  styles: [],
  devices: [],
  hands: 'double',
  colour: 'plain',
  bars,
  form: {
    bars,
    visits: [{ section: 'A', role: null, fromBar: 0, toBar: 4, side: 2, onCue: false, otherSide: false }],
    clave,
    meter: '4/4',
    changes: 'on the beat',
    totalTicks: 7680,
    notices: [],
  },
  fromTick: 0,
  toTick: 7680,
  parts: {
    rightHand,
    leftHand,
    bass,
    clave: [2, 4, 8, 11, 14, 18, 20, 24, 27, 30].map((step) => ({ tick: step * STEP, stroke: 'stroke' })),
    percussion: {},
  },
  alignment: {
    verdict: 'aligned',
    states: '2-3',
    score: 12,
    reason: { name: null, twoSideSounds: [], twoSideSilent: [], threeSideSounds: [], threeSideSilent: [] },
  },
  notices: [],
};
