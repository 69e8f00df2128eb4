/** Reads single fields out of what was saved: a good value, or null. */

/** The fields of a parsed object; none for anything that is no object. */
export function fieldsOf(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Readonly<Record<string, unknown>>) : {};
}

/** `value` when it is one of `values`, else null. */
export function oneOf<const Value>(values: readonly Value[], value: unknown): Value | null {
  return values.find((candidate) => candidate === value) ?? null;
}

/** A number from `low` to `high`, else null. */
export function between(value: unknown, low: number, high: number): number | null {
  return typeof value === 'number' && value >= low && value <= high ? value : null;
}

/** A whole number from `low` to `high`, else null. */
export function whole(value: unknown, low: number, high: number): number | null {
  const number = between(value, low, high);
  return number !== null && Number.isInteger(number) ? number : null;
}
