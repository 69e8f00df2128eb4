import type { ArrangeOptions } from '../../src/music/arrange-options';
import { arrange, type Score } from '../../src/music/score';
import { perform } from '../../src/performance/perform';
import type { PartName, Performance } from '../../src/performance/performance';
import { secondsAt, steadyTempo } from '../../src/performance/tempo';
import { expectedStrokes } from '../../src/practice/expected-strokes';
import type { ExpectedStroke, Matched } from '../../src/practice/labelled';
import { seeded } from '../../src/practice/seeded';
import type { Take, TakenNote } from '../../src/practice/take';
import { strokeOffMs } from '../../src/practice/timing-limits';
import { halfNotesPerMinute, songSeconds } from '../../src/vocabulary';
import { chartOf } from '../music/chart/chart-of';

/** Normally distributed numbers (Box and Muller). */
export const normal = (random: () => number): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** A take of whole passes of a chart, with nothing played yet. */
export function emptyTake(
  text: string,
  { tempo = 90, passes = 1, parts = ['piano right', 'piano left'], pitched = true, options = {} }: EmptyTake = {},
): Take {
  const { score, performance } = arranged(text, options);
  return {
    music: { performance, startTick: performance.fromTick, fromPlay: 0 },
    score,
    tempo: steadyTempo(halfNotesPerMinute(tempo)),
    fromPlayTick: 0,
    toPlayTick: passes * (performance.toTick - performance.fromTick),
    parts,
    notes: [],
    pitched,
    timing: 'calibrated',
  };
}
const arrangements = new Map<string, { readonly score: Score; readonly performance: Performance }>();
function arranged(text: string, options: ArrangeOptions) {
  const key = text + JSON.stringify(options);
  const known = arrangements.get(key);
  if (known) return known;
  const score = arrange(chartOf(text), { level: 2, ...options });
  const made = { score, performance: perform(score, { sounding: { right: true, left: true }, pulse: 'halves', ending: false }) };
  arrangements.set(key, made);
  return made;
}
interface EmptyTake {
  readonly tempo?: number;
  readonly passes?: number;
  readonly parts?: readonly PartName[];
  readonly pitched?: boolean;
  readonly options?: ArrangeOptions;
}

/** How somebody plays; everything missing is perfect. */
export interface Playing {
  readonly seed: number;
  readonly offsetMs?: number;
  /** Standard deviation as a share of a step. */
  readonly spread?: number;
  readonly missed?: number;
  readonly extra?: number;
  readonly wrong?: number;
  /** Notes of a stroke lie this far apart. */
  readonly chordMs?: number;
  readonly displacedSteps?: number;
  /** Added to every stroke, in milliseconds. */
  readonly push?: (stroke: ExpectedStroke) => number;
  /** Changes the notes of a stroke. */
  readonly notes?: (stroke: ExpectedStroke, notes: readonly TakenNote[]) => readonly TakenNote[];
}

/** What really happened. */
export interface Truth {
  readonly strokes: ReadonlyMap<number, { readonly kind: 'hit' | 'missed' | 'wrong'; readonly deviationMs: number }>;
  readonly extras: readonly number[];
}

/** A take as somebody would play it, with what really happened. */
export function played(take: Take, playing: Playing): { readonly take: Take; readonly truth: Truth } {
  const random = seeded(playing.seed);
  const asked = expectedStrokes(take, take.fromPlayTick, take.toPlayTick, playing.displacedSteps ?? 0);
  const notes: TakenNote[] = [];
  const strokes = new Map<number, { kind: 'hit' | 'missed' | 'wrong'; deviationMs: number }>();
  const deviation = (stepMs: number) => (playing.offsetMs ?? 0) + normal(random) * (playing.spread ?? 0) * stepMs;
  for (const stroke of asked) {
    if (random() < (playing.missed ?? 0)) {
      strokes.set(stroke.playTick, { kind: 'missed', deviationMs: 0 });
      continue;
    }
    const deviationMs = deviation(stroke.stepMs) + (playing.push?.(stroke) ?? 0);
    const wrong = take.pitched && random() < (playing.wrong ?? 0);
    strokes.set(stroke.playTick, { kind: wrong ? 'wrong' : 'hit', deviationMs });
    const struck = struckNotes(take, stroke, stroke.at + deviationMs / 1000, wrong, playing, random);
    notes.push(...(playing.notes?.(stroke, struck) ?? struck));
  }
  const extras = take.fromPlayTick === take.toPlayTick ? [] : extraNotes(take, asked, playing, random, deviation);
  notes.push(...extras);
  return {
    take: { ...take, notes: notes.sort((a, b) => a.at - b.at) },
    truth: { strokes, extras: extras.map(({ at }) => at) },
  };
}

function struckNotes(take: Take, stroke: ExpectedStroke, at: number, wrong: boolean, playing: Playing, random: () => number): TakenNote[] {
  const made = (moment: number, midi: number | null, velocity: number, ticks: number): TakenNote => ({
    at: songSeconds(moment),
    until: midi === null ? null : songSeconds(moment + (ticks / 240) * (stroke.stepMs / 1000)),
    midi,
    velocity,
  });
  if (!take.pitched) return [made(at, null, 90, 0)];
  const top = Math.max(...stroke.notes.map(({ midi }) => midi ?? 0));
  const foreign = (midi: number) =>
    [1, 2, 3, 4, 5].find((up) => !stroke.notes.some((note) => ((note.midi ?? 0) - midi - up) % 12 === 0)) ?? 1;
  return stroke.notes.map(({ midi, velocity, soundingTicks }) => {
    const pitch = midi ?? 0;
    const apart = pitch === top ? 0 : ((random() - 0.5) * (playing.chordMs ?? 0)) / 1000;
    return made(at + apart, wrong && pitch === top ? pitch + foreign(pitch) : pitch, velocity, soundingTicks);
  });
}

function extraNotes(
  take: Take,
  asked: readonly ExpectedStroke[],
  playing: Playing,
  random: () => number,
  deviation: (stepMs: number) => number,
): TakenNote[] {
  const taken = new Set(asked.flatMap(({ playTick, otherEnding }) => [playTick, otherEnding]));
  const silent: number[] = [];
  for (let tick = take.fromPlayTick; tick < take.toPlayTick; tick += 240) if (!taken.has(tick)) silent.push(tick);
  const chance = ((playing.extra ?? 0) * asked.length) / Math.max(1, silent.length);
  return silent.flatMap((tick) => {
    if (random() >= chance) return [];
    const near = asked.find(({ playTick }) => playTick > tick) ?? asked[0];
    const at = songSeconds(secondsAt(take.tempo, tick) + deviation(near?.stepMs ?? 0) / 1000);
    return [{ at, until: null, midi: take.pitched ? (near?.notes[0]?.midi ?? 60) : null, velocity: 80 }];
  });
}

/** How many strokes were labelled as they really were, and of how many; early and late strokes by the true deviation. */
export function agreement({ strokes, offsetMs }: Matched, truth: Truth): { right: number; of: number; moments: number; ofMoments: number } {
  let right = 0;
  let moments = 0;
  let ofMoments = 0;
  const expected = new Map(strokes.flatMap((stroke) => (stroke.expected ? [[stroke.expected.playTick, stroke] as const] : [])));
  for (const [playTick, { kind, deviationMs }] of truth.strokes) {
    const found = expected.get(playTick);
    if (!found) continue;
    const hit = ['right', 'early', 'late'].includes(found.label);
    const same = kind === 'missed' ? found.label === 'missed' : kind === 'wrong' ? found.label === 'wrong note' : hit;
    const itself = kind === 'missed' || Math.abs((found.deviationMs ?? 1e9) + offsetMs - deviationMs) < 0.01;
    if (same && itself) right += 1;
    const limit = strokeOffMs(found.expected?.stepMs ?? 0);
    const off = deviationMs - offsetMs;
    if (kind === 'hit' && hit && Math.abs(Math.abs(off) - limit) > 1) {
      ofMoments += 1;
      const label = Math.abs(off) <= limit ? 'right' : off < 0 ? 'early' : 'late';
      if (label === found.label) moments += 1;
    }
  }
  const extras = new Set(strokes.flatMap(({ label, played: found }) => (label === 'extra' && found ? [found.at as number] : [])));
  right += truth.extras.filter((at) => extras.has(at)).length;
  return { right, of: truth.strokes.size + truth.extras.length, moments, ofMoments };
}

/** Charts of the Quay Street Dance Band (invented) for the takes: a vamp, a moving one, two chords a bar. */
export const CHARTS = {
  vamp: 'title: Mooring Lines\nkey: D\nclave: 2-3 son\ntempo: half = 90\nstyle: salsa\n\n[A]\n| Em7 | A7 | D6 | D6 |\n| Gm6 | A7 | D6 | B7b9 |\n',
  minor:
    'title: Harbour Light\nkey: Dm\nclave: 3-2 son\ntempo: half = 90\nstyle: salsa\n\n[A]\n| Dm | Gm | A7 | Dm |\n| Bb | Gm | Em7b5 A7 | Dm6 |\n| F C7 | F | Em7b5 A7 | Dm |\n| Bb A7 | Dm D7 | Gm A7 | Dm6 |\n',
} as const;
