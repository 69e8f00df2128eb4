import type { Backup, BackupChart, BackupEntry, BackupSet } from './backup';

/** What becomes of a chart that stands here and in the file with different texts. */
export type OnDifference = 'keep both' | 'take the file' | 'keep mine';

/** A chart that is another in the file than here. */
export interface Difference {
  readonly mine: BackupChart;
  readonly file: BackupChart;
}

/** What a backup would bring, before anything happens. */
export interface MergePlan {
  readonly newCharts: readonly BackupChart[];
  /** Charts whose text stands here already, under whatever id. */
  readonly sameCharts: readonly BackupChart[];
  readonly differentCharts: readonly Difference[];
  readonly newSets: readonly BackupSet[];
  /** Set lists that were changed later in the file than here. */
  readonly newerSets: readonly BackupSet[];
  readonly newEntries: readonly BackupEntry[];
  /** Keys of settings and preferences that are others in the file than here. */
  readonly otherRecords: readonly string[];
}

/** Compares what is here with what a backup holds. Nothing is ever taken away by a merge. */
export function planMerge(mine: Backup, file: Backup): MergePlan {
  const mineById = new Map(mine.charts.map((chart) => [chart.id, chart]));
  const texts = new Set(mine.charts.map(({ text }) => text));
  const sets = new Map(mine.sets.map((set) => [set.id, set]));
  const entries = new Set(mine.journal.map(({ id }) => id));
  return {
    newCharts: file.charts.filter(({ id, text }) => !mineById.has(id) && !texts.has(text)),
    sameCharts: file.charts.filter(({ text }) => texts.has(text)),
    differentCharts: file.charts.flatMap((chart) => {
      const here = mineById.get(chart.id);
      return here && !texts.has(chart.text) ? [{ mine: here, file: chart }] : [];
    }),
    newSets: file.sets.filter(({ id }) => !sets.has(id)),
    newerSets: file.sets.filter((set) => set.changed > (sets.get(set.id)?.changed ?? Number.POSITIVE_INFINITY)),
    newEntries: file.journal.filter(({ id }) => !entries.has(id)),
    otherRecords: Object.keys(file.records).filter((key) => mine.records[key] !== file.records[key]),
  };
}

/** What a merge writes. */
export interface MergeWrites {
  readonly charts: readonly BackupChart[];
  readonly sets: readonly BackupSet[];
  readonly entries: readonly BackupEntry[];
  readonly records: Readonly<Record<string, string>>;
}

/**
 * The writes that carry out a plan. A chart that is kept beside the player's own gets a new id and keeps its text, so that reading the same
 * file a second time finds it there.
 */
export function mergeWrites(
  plan: MergePlan,
  file: Backup,
  choice: { readonly onDifference: OnDifference; readonly withSettings: boolean },
  newId: () => string,
): MergeWrites {
  const files = plan.differentCharts.map((difference) => difference.file);
  const different: Readonly<Record<OnDifference, () => readonly BackupChart[]>> = {
    'keep both': () => files.map((chart) => ({ ...chart, id: newId() })),
    'take the file': () => files,
    'keep mine': () => [],
  };
  const keys = choice.withSettings ? plan.otherRecords : [];
  return {
    charts: [...plan.newCharts, ...different[choice.onDifference]()],
    sets: [...plan.newSets, ...plan.newerSets],
    entries: plan.newEntries,
    records: Object.fromEntries(keys.map((key) => [key, file.records[key] ?? ''])),
  };
}
