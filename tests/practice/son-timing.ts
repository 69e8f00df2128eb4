import { readFileSync } from 'node:fs';
import type { PartName, Performance } from '../../src/performance/performance';
import type { TempoMap, TempoSegment } from '../../src/performance/tempo';
import { TICKS_PER_HALF_NOTE } from '../../src/performance/tempo';
import type { Take, TakenNote } from '../../src/practice/take';
import { halfNotesPerMinute, songSeconds } from '../../src/vocabulary';
import { events } from '../performance/hand-made';

/*
 * Onset times of three live son performances with the cycle, step and evenly divided time of every step: IEMP Cuban Son and Salsa
 * corpus (A. Poole, S. Tarsitani, M. Clayton, 2018–19), as carried by onsetsync 0.5.1 (T. Eerola). Not part of the project.
 */

const CYCLE_TICKS = 3840;

export interface SonRow {
  readonly cycle: number;
  readonly step: number;
  readonly evenSeconds: number;
  readonly onsets: Readonly<Record<string, number | null>>;
}

/** The rows of one song: a row a step. */
export function readSong(folder: string, song: 1 | 2 | 3): SonRow[] {
  const [head = '', ...lines] = readFileSync(`${folder}/song-${song}.csv`, 'utf8').trim().split('\n');
  const names = head.trim().split(',').slice(3);
  return lines.map((line) => {
    const [cycle, step, even, ...times] = line.trim().split(',');
    const onsets = names.map((name, index) => [name.replace('_s', ''), times[index] ? Number(times[index]) : null] as const);
    return { cycle: Number(cycle), step: Number(step), evenSeconds: Number(even), onsets: Object.fromEntries(onsets) };
  });
}

/** The runs of cycles that follow one another without a gap, each with all sixteen steps. */
export function runsOf(rows: readonly SonRow[]): SonRow[][] {
  const runs: SonRow[][] = [];
  for (let index = 0; index + 16 <= rows.length; index += 16) {
    const cycle = rows.slice(index, index + 16);
    const last = runs.at(-1);
    if (last && last.at(-1)?.cycle === (cycle[0]?.cycle ?? 0) - 1) last.push(...cycle);
    else runs.push([...cycle]);
  }
  return runs.filter((run) => run.length > 32);
}

/** Steps that sound in at least half of the cycles in which the instrument plays at all. */
export function usualSteps(rows: readonly SonRow[], instrument: string): number[] {
  const playing = new Set(rows.filter((row) => row.onsets[instrument] != null).map(({ cycle }) => cycle));
  return Array.from({ length: 16 }, (_, step) => step).filter(
    (step) => rows.filter((row) => row.step === step && row.onsets[instrument] != null).length >= playing.size / 2,
  );
}

/** A two-bar loop of unpitched strokes. */
export function loopOf(steps: readonly number[], part: PartName, clave: readonly number[]): Performance {
  return {
    events: events(...steps.map((step) => ({ tick: step * 240, part, midi: null, drum: 'clave' }))),
    fromTick: 0,
    toTick: CYCLE_TICKS,
    closed: true,
    cycleStarts: [0],
    bars: [
      { tick: 0, ticks: 1920, cycleStep: 0 },
      { tick: 1920, ticks: 1920, cycleStep: 8 },
    ],
    clave: { steps: clave, cycleSteps: 16 },
    tempo: halfNotesPerMinute(90),
  };
}

/** The instrument's onsets of a run as a take against a loop, at the local tempo: a stretch of tempo a cycle. */
export function takeOfRun(run: readonly SonRow[], instrument: string, music: Performance, parts: readonly PartName[]): Take {
  const starts = run.filter(({ step }) => step === 0).map(({ evenSeconds }) => evenSeconds);
  const last = run.at(-1)?.evenSeconds ?? 0;
  const end = last + (last - (run.at(-2)?.evenSeconds ?? last));
  const segments = starts.map((at, index): TempoSegment => {
    const length = (starts[index + 1] ?? end) - at;
    const tempo = halfNotesPerMinute((60 * CYCLE_TICKS) / (TICKS_PER_HALF_NOTE * length));
    return { fromTick: index * CYCLE_TICKS, atSeconds: songSeconds(at), tempo };
  });
  const notes = run.flatMap((row): TakenNote[] => {
    const at = row.onsets[instrument];
    return at == null ? [] : [{ at: songSeconds(at), until: null, midi: null, velocity: 90 }];
  });
  return {
    music: { performance: music, startTick: 0, fromPlay: 0 },
    score: null,
    tempo: segments as unknown as TempoMap,
    fromPlayTick: 0,
    toPlayTick: starts.length * CYCLE_TICKS,
    parts,
    notes: notes.sort((a, b) => a.at - b.at),
    pitched: false,
    timing: 'calibrated',
  };
}
