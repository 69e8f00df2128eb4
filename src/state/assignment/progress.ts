import type { Assignment, ResultDrill, ResultPass, Results } from '../../exchange/assignment/assignment';
import type { JournalRecord } from '../../practice/journal';
import type { KeptAssignment } from './kept-assignments';

/** How far an assignment has come, out of the journal's own records. */
export interface Progress {
  readonly passes: number;
  readonly clean: number;
  /** Clean passes at the goal or faster: these are wanted. */
  readonly atGoal: number;
  /** Fastest clean pass, half notes a minute; null without one. */
  readonly reached: number | null;
  /** Times that the drill was done. */
  readonly drills: number;
  readonly done: boolean;
}

/** The passes over the bars of an assignment, on its charts, since it was accepted; oldest first. */
export function passesOf(
  { assignment, chart, also = [], taken }: KeptAssignment,
  records: readonly JournalRecord[],
): readonly ResultPass[] {
  const { loop } = assignment;
  return records.flatMap((record): ResultPass[] => {
    if (record.kind !== 'pass' || record.at < taken || (record.chart !== chart && !also.includes(record.chart))) return [];
    // A pass over more than the bars that were set holds them too.
    if (loop && (record.fromBar > loop.fromBar || record.toBar < loop.toBar)) return [];
    const { kind: _kind, chart: _chart, title: _title, ...pass } = record;
    return [pass];
  });
}

/** The drills that an assignment asks for, done since it was accepted. */
export function drillsOf({ assignment, taken }: KeptAssignment, records: readonly JournalRecord[]): readonly ResultDrill[] {
  const { drill } = assignment;
  if (drill === null) return [];
  return records.flatMap((record): ResultDrill[] => {
    if (record.kind !== 'drill' || record.at < taken || record.drill !== drill.name) return [];
    if (drill.seed !== null && record.seed !== drill.seed) return [];
    const { kind: _kind, chart: _chart, title: _title, ...done } = record;
    return [done];
  });
}

/** Sums up what was done on an assignment. */
export function progressOf(kept: KeptAssignment, records: readonly JournalRecord[]): Progress {
  const { assignment } = kept;
  const drills = drillsOf(kept, records).length;
  const counted = tally(passesOf(kept, records), assignment.goalTempo);
  return { ...counted, drills, done: counted.atGoal >= assignment.passes && (assignment.drill === null || drills > 0) };
}

/** What a student hands back, in their own name and words. */
export function resultsOf(kept: KeptAssignment, records: readonly JournalRecord[], said: Pick<Results, 'who' | 'words' | 'made'>): Results {
  const { id, title, goalTempo, passes }: Assignment = kept.assignment;
  const { who, words, made } = said;
  const done = { passes: passesOf(kept, records), drills: drillsOf(kept, records) };
  return { assignment: id, title, goalTempo, wanted: passes, who, words, made, ...done };
}

/** One student's results as a row of the teacher's table. */
export interface ResultsRow extends Omit<Progress, 'done'> {
  /** Share of passes that were clean; null of none. */
  readonly shareClean: number | null;
  /** Mean share of strokes right over the passes that were judged; null of none. */
  readonly shareRight: number | null;
  /** Passes that the student rated. */
  readonly rated: number;
  /** Kinds of findings, the most frequent first, at most three. */
  readonly said: readonly { readonly kind: string; readonly times: number }[];
  readonly results: Results;
}

/** The row for results. */
export function rowOf(results: Results): ResultsRow {
  const { passes, goalTempo, drills } = results;
  const counted = tally(passes, goalTempo);
  const judged = passes.flatMap(({ shareRight }) => (shareRight === null ? [] : [shareRight]));
  const counts = new Map<string, number>();
  for (const kind of passes.flatMap(({ findings }) => findings)) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  const most = [...counts].sort(([a, often], [b, oftener]) => oftener - often || (a < b ? -1 : 1));
  return {
    ...counted,
    drills: drills.length,
    shareClean: counted.passes === 0 ? null : counted.clean / counted.passes,
    shareRight: judged.length === 0 ? null : judged.reduce((sum, share) => sum + share, 0) / judged.length,
    rated: passes.filter(({ source }) => source === 'own rating').length,
    said: most.slice(0, 3).map(([kind, times]) => ({ kind, times })),
    results,
  };
}

function tally(passes: readonly ResultPass[], goal: number): Pick<Progress, 'passes' | 'clean' | 'atGoal' | 'reached'> {
  const clean = passes.filter((pass) => pass.clean);
  return {
    passes: passes.length,
    clean: clean.length,
    atGoal: clean.filter(({ tempo }) => tempo >= goal).length,
    reached: clean.length === 0 ? null : clean.reduce((most, { tempo }) => Math.max(most, tempo), 0),
  };
}
