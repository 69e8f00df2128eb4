import type { Direction, Level, Result } from '../vocabulary';
import { failed, ok } from '../vocabulary';
import type { CheckResult } from './due-dates';

/*
 * What the journal keeps: one record for each pass that was judged or rated, each check of the next day, each drill. Records are kept
 * as text (`writeRecord`) in the entries of the journal's store and read back one by one (`readRecord`), so that one that cannot be
 * read, or that a newer page has written, never costs the others. `journalCsv` (journal-csv.ts) makes the file for a teacher.
 */

interface About {
  /** Milliseconds since 1970. */
  readonly at: number;
  /** Id of the chart, and its title as it was. */
  readonly chart: string;
  readonly title: string;
}

/** One pass, judged by ear of the page or rated by the player. */
export interface PassRecord extends About {
  readonly kind: 'pass';
  /** Bars looped, from 0, exclusive. */
  readonly fromBar: number;
  readonly toBar: number;
  /** Half notes a minute. */
  readonly tempo: number;
  readonly level: Level;
  readonly direction: Direction;
  readonly clean: boolean;
  /** Share of strokes right, or null when the player rated the pass. */
  readonly shareRight: number | null;
  readonly offsetMs: number | null;
  readonly spreadMs: number | null;
  /** Mean place of every step of the clave cycle in milliseconds; null where nothing was played; empty when not judged. */
  readonly stepsMs: readonly (number | null)[];
  /** What was said, as kinds of findings. */
  readonly findings: readonly string[];
  readonly source: 'midi' | 'keys' | 'microphone' | 'own rating';
}

/** The first try of a day on something practised before. */
export interface CheckRecord extends About {
  readonly kind: 'check';
  /** Id of the due item. */
  readonly item: string;
  readonly result: CheckResult;
  readonly daysSince: number;
}

/** A drill that was done. */
export interface DrillRecord extends About {
  readonly kind: 'drill';
  readonly drill: string;
  /** Null where nothing is left to chance. */
  readonly seed: number | null;
  readonly right: number;
  readonly of: number;
}

/** Something the player or the teacher wrote down. */
export interface NoteRecord extends About {
  readonly kind: 'note';
  readonly text: string;
}

/** Any record. */
export type JournalRecord = PassRecord | CheckRecord | DrillRecord | NoteRecord;

/** Version of the records written here. */
export const JOURNAL_VERSION = 1;

/** Why a record could not be read: it is kept as it is. */
export interface JournalFault {
  readonly code: 'not a record' | 'newer version';
  readonly expected: string;
}

/** A record as text. */
export const writeRecord = (record: JournalRecord): string => JSON.stringify({ version: JOURNAL_VERSION, ...record });

/** Reads a record. Fields that are missing or of the wrong kind make it no record; fields that are not known are left out. */
export function readRecord(text: string): Result<JournalRecord, JournalFault> {
  const data = parsed(text);
  if (data === null) return failed({ code: 'not a record', expected: 'a journal record' });
  if (typeof data.version === 'number' && data.version > JOURNAL_VERSION)
    return failed({ code: 'newer version', expected: `version ${JOURNAL_VERSION} or older, got ${data.version}` });
  const shape = typeof data.kind === 'string' && Object.hasOwn(SHAPES, data.kind) ? SHAPES[data.kind as JournalRecord['kind']] : undefined;
  if (!shape) return failed({ code: 'not a record', expected: `a kind of record: ${Object.keys(SHAPES).join(', ')}` });
  const fields = { ...ABOUT, ...shape };
  const wrong = Object.entries(fields).find(([name, fits]) => !fits(data[name]));
  if (wrong) return failed({ code: 'not a record', expected: `${wrong[0]} of a ${data.kind as string}` });
  const record = Object.fromEntries(Object.keys(fields).map((name) => [name, data[name]]));
  return ok({ kind: data.kind, ...record } as unknown as JournalRecord);
}

function parsed(text: string): Readonly<Record<string, unknown>> | null {
  try {
    const data: unknown = JSON.parse(text);
    return typeof data === 'object' && data !== null && !Array.isArray(data) ? (data as Record<string, unknown>) : null;
  } catch {
    return null;
  }
}

type Check = (value: unknown) => boolean;
type Shape<Record> = { readonly [Name in Exclude<keyof Record, keyof About | 'kind'>]: Check };

const number: Check = (value) => typeof value === 'number' && Number.isFinite(value);
const text: Check = (value) => typeof value === 'string';
const truth: Check = (value) => typeof value === 'boolean';
const orNull =
  (fits: Check): Check =>
  (value) =>
    value === null || fits(value);
const listOf =
  (fits: Check): Check =>
  (value) =>
    Array.isArray(value) && value.every(fits);
const oneOf =
  (...allowed: readonly unknown[]): Check =>
  (value) =>
    allowed.includes(value);

/** A moment that a date can hold (ECMA-262, section "Time Values and Time Range"). */
const moment: Check = (value) => number(value) && Math.abs(value as number) <= 8.64e15;

const ABOUT: { readonly [Name in keyof About]: Check } = { at: moment, chart: text, title: text };
const SHAPES: { readonly [Kind in JournalRecord['kind']]: Shape<Extract<JournalRecord, { kind: Kind }>> } = {
  pass: {
    fromBar: number,
    toBar: number,
    tempo: number,
    level: oneOf(1, 2, 3, 4, 5, 6),
    direction: oneOf('2-3', '3-2'),
    clean: truth,
    shareRight: orNull(number),
    offsetMs: orNull(number),
    spreadMs: orNull(number),
    stepsMs: listOf(orNull(number)),
    findings: listOf(text),
    source: oneOf('midi', 'keys', 'microphone', 'own rating'),
  },
  check: { item: text, result: oneOf('clean', 'shaky', 'lost'), daysSince: number },
  drill: { drill: text, seed: orNull(number), right: number, of: number },
  note: { text },
};

/** What a stretch of the journal comes to. Shares and tempi, never minutes. */
export interface JournalSummary {
  readonly passes: number;
  /** Share of passes that were clean; null of none. */
  readonly shareClean: number | null;
  /** Highest tempo of a clean pass, by chart. */
  readonly tempoReached: Readonly<Record<string, number>>;
  /** Share of next-day checks that were clean; null of none. */
  readonly shareKept: number | null;
}

/** Sums records up. */
export function summaryOf(records: readonly JournalRecord[]): JournalSummary {
  const passes = records.filter((record) => record.kind === 'pass');
  const checks = records.filter((record) => record.kind === 'check');
  const tempoReached: Record<string, number> = {};
  for (const { clean, chart, tempo } of passes) if (clean) tempoReached[chart] = Math.max(tempoReached[chart] ?? 0, tempo);
  const part = (some: number, of: number) => (of === 0 ? null : some / of);
  return {
    passes: passes.length,
    shareClean: part(passes.filter(({ clean }) => clean).length, passes.length),
    tempoReached,
    shareKept: part(checks.filter(({ result }) => result === 'clean').length, checks.length),
  };
}
