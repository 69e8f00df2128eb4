import type { Form, SectionVisit, SoundingBar } from '../../src/music/chart/chart';
import type { Score } from '../../src/music/score';
import {
  type BassStroke,
  type Degree,
  type Direction,
  halfNotesPerMinute,
  type PianoRole,
  type PianoStroke,
  type Side,
  type StrokeReason,
} from '../../src/vocabulary';

/**
 * A score typed by hand for the tests of layout and screen: the Quay Street Dance Band's "Last Ferry", a bar to a chord.
 * The figure is the commonest one (2-side `x.xx.x.x`, 3-side `.x.x.x.x`, the & of 4 taking the next chord); its notes come from
 * the table below, not from the program.
 */
export interface TypedBar {
  readonly chord: string;
  readonly section: string;
  readonly kind?: SoundingBar['kind'];
  readonly playing?: SoundingBar['playing'];
  readonly steps?: number;
  readonly hits?: SoundingBar['hits'];
  readonly restart?: boolean;
}

const SHAPES: Record<string, { octave: string; inner: string[]; degree: Degree; root: string; fifth: string }> = {
  Em7: { octave: 'D', inner: ['G5', 'B5'], degree: 'b7', root: 'E2', fifth: 'B2' },
  A7: { octave: 'C#', inner: ['G5', 'B5'], degree: '3', root: 'A2', fifth: 'E2' },
  D6: { octave: 'D', inner: ['F#5', 'B5'], degree: '1', root: 'D2', fifth: 'A2' },
  B7b9: { octave: 'D#', inner: ['F#5', 'A5'], degree: '3', root: 'B1', fifth: 'F#2' },
  Gm6: { octave: 'D', inner: ['G5', 'Bb5'], degree: '5', root: 'G2', fifth: 'D2' },
};
const CLASSES: Record<string, number> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };

/** MIDI number of an ASCII scientific name, worked out here so that the tests lean on nothing in the program. */
export function midiOf(name: string): number {
  const [, letter = 'C', signs = '', octave = '4'] = /^([A-G])([b#]*)(-?\d+)$/.exec(name) ?? [];
  const shift = [...signs].reduce((sum, sign) => sum + (sign === '#' ? 1 : -1), 0);
  return 12 * (Number(octave) + 1) + (CLASSES[letter] ?? 0) + shift;
}

const CELLS: Record<Side, readonly (readonly [number, 'o' | 'i', boolean])[]> = {
  2: [
    [0, 'o', false],
    [2, 'i', false],
    [3, 'o', false],
    [5, 'i', false],
    [7, 'o', true],
  ],
  3: [
    [1, 'i', false],
    [3, 'o', false],
    [5, 'i', false],
    [7, 'o', true],
  ],
};
const CLAVE: Record<Side, readonly number[]> = { 2: [2, 4], 3: [0, 3, 6] };

const reason = (step: number, side: Side, ahead: number | null): StrokeReason => ({
  step,
  side,
  anticipatesBar: ahead,
  anticipatesWithinBar: false,
  move: null,
  claveStroke: null,
  fallback: null,
});

/** The first eight bars and the turn: A (4), a bridge of 3, a break of 1, the coro (4). */
export const FERRY: readonly TypedBar[] = [
  ...['Em7', 'A7', 'D6', 'B7b9'].map((chord) => ({ chord, section: 'A' })),
  ...['Gm6', 'A7', 'D6'].map((chord) => ({ chord, section: 'Bridge' })),
  { chord: 'N.C.', section: 'Break', kind: 'rest', playing: 'nobody' },
  ...['D6', 'Gm6', 'A7', 'D6'].map((chord) => ({ chord, section: 'Coro' })),
];

/** Without the break: the bridge's seventh bar stands alone and the coro comes from the 3-side. */
export const ODD_FERRY: readonly TypedBar[] = FERRY.filter((bar) => bar.section !== 'Break');

/** With a bar of two quarters, after which the clave lies across the bars, band hits and a rest, and a restart. */
export const SHORT_FERRY: readonly TypedBar[] = [
  { chord: 'Em7', section: 'A' },
  { chord: 'A7', section: 'A' },
  { chord: 'D6', section: 'A', steps: 4, kind: 'short' },
  { chord: 'Em7', section: 'B' },
  {
    chord: 'A7',
    section: 'B',
    kind: 'hit',
    hits: [
      { step: 0, held: false },
      { step: 3, held: false },
      { step: 7, held: true },
    ],
  },
  { chord: 'N.C.', section: 'B', kind: 'rest', playing: 'rhythm' },
  { chord: 'D6', section: 'B' },
  { chord: 'Em7', section: 'Coro', restart: true },
  { chord: 'A7', section: 'Coro' },
];

/** Builds a score from bars typed as above. */
export function ferryScore(typed: readonly TypedBar[] = FERRY, direction: Direction = '2-3', closed = true): Score {
  const home: Side = direction === '2-3' ? 2 : 3;
  let tick = 0;
  let cycleStep = 0;
  const visits: SectionVisit[] = [];
  const tempo = halfNotesPerMinute(62);
  const key = { tonic: 'D', mode: 'major' } as const;
  const bars = typed.map((bar, index): SoundingBar => {
    if (bar.restart) cycleStep = 0;
    const side: Side = cycleStep < 8 ? home : home === 2 ? 3 : 2;
    const ticks = (bar.steps ?? 8) * 240;
    const open = visits.at(-1);
    if (open?.section === bar.section) visits[visits.length - 1] = { ...open, toBar: index + 1 };
    else visits.push({ section: bar.section, role: null, fromBar: index, toBar: index + 1, side, onCue: false, otherSide: false });
    const sounding: SoundingBar = {
      index,
      writtenBar: index,
      pass: 0,
      visit: visits.length - 1,
      section: bar.section,
      role: null,
      kind: bar.kind ?? 'groove',
      playing: bar.playing ?? 'band',
      tick,
      ticks,
      cycleStep,
      side,
      restart: bar.restart ?? false,
      chords: [{ tick, chord: null, symbol: bar.chord, push: false }],
      hits: bar.hits ?? [],
      key,
      style: 'salsa',
      figure: null,
      tempo,
    };
    tick += ticks;
    cycleStep = (cycleStep + ticks / 240) % 16;
    return sounding;
  });
  const form: Form = {
    bars,
    visits,
    clave: { kind: 'son', direction },
    meter: '4/4',
    changes: 'on the beat',
    totalTicks: tick,
    notices: [],
  };
  const rightHand: PianoStroke[] = [];
  const leftHand: PianoStroke[] = [];
  const bass: BassStroke[] = [];
  for (const bar of bars) {
    const next = bars[bar.index + 1] ?? (closed ? bars[0] : undefined);
    const symbol = bar.chords[0]?.symbol ?? '';
    if (!SHAPES[symbol]) continue;
    for (const [step, kind, early] of CELLS[bar.side].filter(([at]) => at < bar.ticks / 240)) {
      const wanted = next?.chords[0]?.symbol ?? symbol;
      const ahead = early && SHAPES[wanted] !== undefined && next !== undefined;
      const rings = early && next?.side === 3;
      const shape = SHAPES[ahead ? wanted : symbol];
      if (!shape) continue;
      const names = kind === 'o' ? [`${shape.octave}5`, `${shape.octave}6`] : shape.inner;
      const degrees: Degree[] = kind === 'o' ? [shape.degree, shape.degree] : ['b3', '5'];
      const common = {
        tick: bar.tick + step * 240,
        durationTicks: rings ? 480 : 240,
        soundingTicks: rings ? 480 : early ? 240 : 180,
        velocity: 96,
        chord: ahead ? wanted : symbol,
        leadTicks: ahead ? 240 : 0,
        lift: 0,
        line: 'guide' as const,
        device: null,
        firstPassOnly: false,
        reason: reason(step, bar.side, ahead ? (next?.index ?? null) : null),
      };
      const role: PianoRole = kind === 'o' ? 'octave' : 'inner';
      rightHand.push({ ...common, names, degrees, midi: names.map(midiOf), role });
      const lower = names.slice(0, 1).map((name) => name.replace(/\d/, (octave) => String(Number(octave) - 1)));
      leftHand.push({ ...common, names: lower, degrees: degrees.slice(0, 1), midi: lower.map(midiOf), role: 'single' });
    }
    const shape = SHAPES[symbol];
    const after = SHAPES[next?.chords[0]?.symbol ?? ''];
    if (shape) bass.push(bassStroke(bar.tick + 720, 720, shape.fifth, symbol, 0));
    if (shape && after && next) bass.push(bassStroke(bar.tick + 1440, 1200, after.root, next.chords[0]?.symbol ?? '', 480));
  }
  const first = SHAPES[typed[0]?.chord ?? ''];
  if (first) bass.unshift({ ...bassStroke(0, 720, first.root, typed[0]?.chord ?? '', 0), firstPassOnly: true });
  const clave = bars
    .filter((bar) => bar.playing !== 'nobody')
    .flatMap((bar) => CLAVE[bar.side].map((step) => ({ tick: bar.tick + step * 240, stroke: 'stroke' })));
  return {
    title: 'Last Ferry',
    key,
    meter: '4/4',
    style: 'salsa',
    closed,
    clave: { kind: 'son', direction },
    tempo,
    level: 2,
    levels: [],
    styles: [],
    devices: [],
    hands: 'double',
    colour: 'plain',
    bars,
    form,
    fromTick: 0,
    toTick: tick,
    parts: { rightHand, leftHand, bass, clave, percussion: {} },
    alignment: {
      verdict: 'aligned',
      states: direction,
      score: 10,
      reason: { name: null, twoSideSounds: [0], twoSideSilent: [], threeSideSounds: [], threeSideSilent: [0] },
    },
    notices: [],
  };
}

function bassStroke(tick: number, durationTicks: number, name: string, chord: string, leadTicks: number): BassStroke {
  return {
    tick,
    durationTicks,
    soundingTicks: durationTicks - 60,
    midi: [midiOf(name)],
    names: [name],
    velocity: 90,
    role: leadTicks ? 'root' : 'fifth',
    chord,
    degrees: [leadTicks ? '1' : '5'],
    leadTicks,
    lift: 0,
    line: null,
    device: null,
    firstPassOnly: false,
    reason: reason((tick % 1920) / 240, 2, null),
  };
}
