import { MAX_SOUNDING_BARS, MAX_TEXT_LENGTH } from '../../music/chart/limits';
import { failed, type Hands, ok, type Result, TEMPO_RANGE } from '../../vocabulary';
import { ASSIGNMENT_VERSION, type Assignment, LONGEST_FILE, MOST_DRILLS, MOST_PASSES, type Results } from './assignment';
import { type Check, type FieldFault, readFields, type Shape, shown } from './fields';

/** Why a file was not taken: it as a whole, or a field in it. */
export type AssignmentFault =
  | { readonly code: 'too long'; readonly found: number }
  | { readonly code: 'no json' | 'another file' | 'newer version'; readonly found: string }
  | ({ readonly code: 'field' } & FieldFault);

/** What such a file holds. */
export type AssignmentFile =
  | { readonly kind: 'assignment'; readonly assignment: Assignment }
  | { readonly kind: 'results'; readonly results: Results };

const text = (most: number, least = 0): Check => ({ kind: 'text', least, most });
const number = (low: number, high: number, whole = true): Check => ({ kind: 'number', low, high, whole });
const oneOf = (...values: readonly (string | number)[]): Check => ({ kind: 'one of', values });
const list = (most: number, of: Check): Check => ({ kind: 'list', most, of });
const fields = (of: Shape): Check => ({ kind: 'fields', of });
const orNull = (check: Check): Check => ({ ...check, orNull: true });

const HANDS = ['double', 'wide', 'tenths', 'contrary', 'tumbao', 'right', 'left'] as const satisfies readonly Hands[];
const BARS: Shape = { fromBar: number(0, MAX_SOUNDING_BARS), toBar: number(1, MAX_SOUNDING_BARS) };
const TEMPO = number(TEMPO_RANGE.from, TEMPO_RANGE.to, false);
/** The latest moment that a date can hold (ECMA-262, "Time Values and Time Range"). */
const MOMENT = number(0, 8.64e15);
const MILLIS = number(-60_000, 60_000, false);

const ASSIGNMENT: { readonly [Name in keyof Assignment]: Check } = {
  id: text(200, 1),
  title: text(200),
  text: text(MAX_TEXT_LENGTH),
  note: text(2_000),
  direction: oneOf('2-3', '3-2'),
  kind: oneOf('son', 'rumba'),
  level: oneOf('by section', 1, 2, 3, 4, 5, 6),
  hands: oneOf(...HANDS),
  transpose: number(0, 11),
  tempo: TEMPO,
  goalTempo: TEMPO,
  loop: orNull(fields(BARS)),
  passes: number(1, 99),
  drill: orNull(fields({ name: text(60), seed: orNull(number(0, 2 ** 32)) })),
  due: orNull({ kind: 'date' }),
};

const PASS: Shape = {
  at: MOMENT,
  ...BARS,
  tempo: TEMPO,
  level: oneOf(1, 2, 3, 4, 5, 6),
  direction: oneOf('2-3', '3-2'),
  clean: { kind: 'yes or no' },
  shareRight: orNull(number(0, 1, false)),
  offsetMs: orNull(MILLIS),
  spreadMs: orNull(MILLIS),
  stepsMs: list(64, orNull(MILLIS)),
  findings: list(40, text(60)),
  source: oneOf('midi', 'keys', 'microphone', 'own rating'),
};
const DRILL: Shape = { at: MOMENT, drill: text(60), seed: orNull(number(0, 2 ** 32)), right: number(0, 1e6), of: number(0, 1e6) };
const RESULTS: { readonly [Name in keyof Results]: Check } = {
  assignment: text(200, 1),
  title: text(200),
  goalTempo: TEMPO,
  wanted: number(1, 99),
  who: text(120),
  words: text(2_000),
  made: MOMENT,
  passes: list(MOST_PASSES, fields(PASS)),
  drills: list(MOST_DRILLS, fields(DRILL)),
};

/** Reads the text of an assignment's or a results file. Every field is checked, what is not known is left out; all faults are named. */
export function readAssignmentFile(file: string): Result<AssignmentFile, AssignmentFault> {
  if (file.length > LONGEST_FILE) return failed({ code: 'too long', found: file.length });
  let parsed: unknown;
  try {
    parsed = JSON.parse(file.replace(/^\uFEFF/, ''));
  } catch {
    return failed({ code: 'no json', found: shown(file) });
  }
  const { contratiempo: kind, version } = (typeof parsed === 'object' && parsed !== null ? parsed : {}) as Readonly<
    Record<string, unknown>
  >;
  if ((kind !== 'assignment' && kind !== 'results') || typeof version !== 'number' || !(version >= 1))
    return failed({ code: 'another file', found: shown(file) });
  if (version > ASSIGNMENT_VERSION) return failed({ code: 'newer version', found: shown(version) });
  if (kind === 'assignment') {
    const read = readAssignment(parsed);
    return read.ok ? ok({ kind, assignment: read.value }) : read;
  }
  const faults: FieldFault[] = [];
  const results = readFields(parsed, RESULTS, faults) as unknown as Results;
  if (faults.length === 0) for (const [at, pass] of results.passes.entries()) barsInOrder(pass, `passes[${at}]`, faults);
  return faults.length === 0 ? ok({ kind, results }) : { ok: false, faults: faults.map(inField) };
}

/** Reads an assignment out of anything that was parsed from JSON. */
export function readAssignment(parsed: unknown): Result<Assignment, AssignmentFault> {
  const faults: FieldFault[] = [];
  const assignment = readFields(parsed, ASSIGNMENT, faults) as unknown as Assignment;
  if (faults.length === 0 && assignment.loop) barsInOrder(assignment.loop, 'loop', faults);
  if (faults.length > 0) return { ok: false, faults: faults.map(inField) };
  return ok({ ...assignment, text: assignment.text.replace(/\r\n?/g, '\n') });
}

const inField = (fault: FieldFault): AssignmentFault => ({ code: 'field', ...fault });

function barsInOrder({ fromBar, toBar }: { readonly fromBar: number; readonly toBar: number }, path: string, faults: FieldFault[]): void {
  if (toBar <= fromBar) faults.push({ path: `${path}.toBar`, expected: number(fromBar + 1, MAX_SOUNDING_BARS), found: shown(toBar) });
}
