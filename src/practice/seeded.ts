import { assert } from '../vocabulary';

/** Random numbers in [0, 1) that are the same for the same seed (mulberry32, public domain): a teacher can set the same drill. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** One of several, by a random number. Throws on none. */
export function oneOf<Item>(items: readonly Item[], random: () => number): Item {
  const item = items[Math.floor(random() * items.length)];
  assert(item !== undefined, 'there must be something to choose from');
  return item;
}

/** The items in another order (Fisher and Yates). */
export function shuffled<Item>(items: readonly Item[], random: () => number): Item[] {
  const order = [...items];
  for (let index = order.length - 1; index > 0; index -= 1) {
    const other = Math.floor(random() * (index + 1));
    [order[index], order[other]] = [order[other] as Item, order[index] as Item];
  }
  return order;
}
