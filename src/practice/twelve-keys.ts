import { seeded, shuffled } from './seeded';

/*
 * One exercise through twelve keys, in fourths, by half steps, or mixed. A key is done when its pass was clean; what was not comes back
 * after the others.
 *
 *   let keys = startKeys({ order: 'fourths', fromPc: 2, seed: 1 });
 *   keys.now            // pitch class of the tonic to play in, or null when all twelve are done
 *   keys = afterKey(keys, clean);
 */

/** The order of the keys. */
export type KeyOrder = 'fourths' | 'half steps' | 'mixed';

/** The exercise as it stands. */
export interface TwelveKeys {
  readonly order: KeyOrder;
  /** Pitch class to play in now (C = 0), or null when everything is done. */
  readonly now: number | null;
  /** What follows, the next first. */
  readonly ahead: readonly number[];
  readonly done: readonly number[];
  /** Passes in each key, by pitch class. */
  readonly passes: Readonly<Record<number, { readonly played: number; readonly clean: number }>>;
}

/** The exercise in its first key. `seed` decides the mixed order alone. */
export function startKeys({
  order,
  fromPc,
  seed,
}: {
  readonly order: KeyOrder;
  readonly fromPc: number;
  readonly seed: number;
}): TwelveKeys {
  const first = ((Math.round(fromPc) % 12) + 12) % 12;
  const by = order === 'fourths' ? 5 : 1;
  const ordered = Array.from({ length: 12 }, (_, index) => (first + index * by) % 12);
  const ahead = order === 'mixed' ? shuffled(ordered.slice(1), seeded(seed)) : ordered.slice(1);
  return { order, now: first, ahead, done: [], passes: {} };
}

/** The exercise after a pass in the key that is on. */
export function afterKey(keys: TwelveKeys, clean: boolean): TwelveKeys {
  const { now, ahead } = keys;
  if (now === null) return keys;
  const before = keys.passes[now] ?? { played: 0, clean: 0 };
  const passes = { ...keys.passes, [now]: { played: before.played + 1, clean: before.clean + (clean ? 1 : 0) } };
  const queue = clean ? ahead : [...ahead, now];
  const done = clean ? [...keys.done, now] : keys.done;
  return { ...keys, now: queue[0] ?? null, ahead: queue.slice(1), done, passes };
}
