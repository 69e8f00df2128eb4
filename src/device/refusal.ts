/** The reason that is given wherever a newer version of the page has changed the database. */
export const NEWER = 'a newer version of this page has written here';
/** Refusals by the name of the browser's error, as they are said on the page; their Spanish stands in `src/words/spanish/reasons.ts`. */
const REASONS: Readonly<Record<string, string>> = {
  QuotaExceededError: 'the storage of this device is full',
  VersionError: NEWER,
};

/** The reason of a refusal: in plain words where they are known, else the browser's own. */
export function reasonOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  return REASONS[error.name] ?? (error.message || error.name);
}

/** True for the refusal of a database that a newer version of the page has changed. */
export const isFromNewer = (error: unknown): boolean => error instanceof Error && error.name === 'VersionError';

/** Closes a connection that keeps a newer version of the page from opening the database: for `blocking` of `openDB`. */
export const giveWay = (_current: number, _newer: number | null, event: IDBVersionChangeEvent): void =>
  (event.target as IDBDatabase).close();
