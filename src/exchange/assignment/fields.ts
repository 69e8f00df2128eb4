/** What a field must be; words/assignment.ts says it in a sentence. */
export type Expected =
  | { readonly kind: 'text'; readonly least: number; readonly most: number }
  | { readonly kind: 'number'; readonly low: number; readonly high: number; readonly whole: boolean }
  | { readonly kind: 'one of'; readonly values: readonly (string | number)[] }
  | { readonly kind: 'date' }
  | { readonly kind: 'yes or no' }
  | { readonly kind: 'list'; readonly most: number; readonly of: Check }
  | { readonly kind: 'fields'; readonly of: Shape };

/** A check of one field; `orNull` lets null stand. */
export type Check = Expected & { readonly orNull?: true };
/** The fields of an object, each with its check. */
export type Shape = Readonly<Record<string, Check>>;

/** A field that is not as it must be: where it stands (as in `passes[3].tempo`), what was expected, and the start of what stands there; null where nothing does. */
export interface FieldFault {
  readonly path: string;
  readonly expected: Check;
  readonly found: string | null;
}

/** The most faults that are listed of one file. */
const MOST_FAULTS = 20;

/**
 * The fields of `value` that `shape` names, as they are, and nothing else; every fault goes into `faults`. Hostile input: depth and size are the
 * shape's, names that the shape does not hold are never looked at, and nothing is thrown.
 */
export function readFields(value: unknown, shape: Shape, faults: FieldFault[], path = ''): Readonly<Record<string, unknown>> {
  const fields = typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Readonly<Record<string, unknown>>) : {};
  const entries = Object.entries(shape).map(([name, check]) => {
    const field = Object.hasOwn(fields, name) ? fields[name] : undefined;
    return [name, readField(field, check, faults, path === '' ? name : `${path}.${name}`)] as const;
  });
  return Object.fromEntries(entries);
}

function readField(value: unknown, check: Check, faults: FieldFault[], path: string): unknown {
  if (value === null && check.orNull) return null;
  if (!fits(value, check)) {
    if (faults.length < MOST_FAULTS) faults.push({ path, expected: check, found: value === undefined ? null : shown(value) });
    return null;
  }
  if (check.kind === 'fields') return readFields(value, check.of, faults, path);
  if (check.kind === 'list') return (value as readonly unknown[]).map((item, at) => readField(item, check.of, faults, `${path}[${at}]`));
  return value;
}

function fits(value: unknown, check: Check): boolean {
  switch (check.kind) {
    case 'text':
      return typeof value === 'string' && value.length >= check.least && value.length <= check.most;
    case 'number':
      return typeof value === 'number' && value >= check.low && value <= check.high && (!check.whole || Number.isInteger(value));
    case 'one of':
      return check.values.some((one) => one === value);
    case 'date':
      return typeof value === 'string' && isDate(value);
    case 'yes or no':
      return typeof value === 'boolean';
    case 'list':
      return Array.isArray(value) && value.length <= check.most;
    case 'fields':
      return typeof value === 'object' && value !== null && !Array.isArray(value);
  }
}

/** True for a day of the calendar (ISO 8601); `2026-02-30` is none. */
function isDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const moment = Date.parse(`${text}T00:00:00Z`);
  return !Number.isNaN(moment) && new Date(moment).toISOString().startsWith(text);
}

/** The first characters of what was found, never more than a line of it. */
export function shown(value: unknown): string {
  const text =
    typeof value === 'string' ? value : Array.isArray(value) ? '[…]' : typeof value === 'object' && value ? '{…}' : String(value);
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}
