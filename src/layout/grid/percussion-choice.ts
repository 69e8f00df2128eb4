import type { Card } from './cards';

/** The row of the pulse: beats 1 and 3, or the two beats of 6/8. */
export const PULSE = 'pulse';

/** Parts that state the clave come first, then the drums that answer it. */
const FIRST = ['cascara', 'mambo bell', 'bell', 'bongo bell', 'cha-cha bell', 'conga', 'bongo', 'timbales', 'guiro', 'maracas'];
/** Rows that are shown even where room is short. */
export const FEW_ROWS = 2;

/** The instruments of a card: those that have a row, at most `rows` of them, and those that are told in words. */
export function rowsOfCard(
  card: Card,
  rows: number,
  pulse: boolean,
): { readonly shown: readonly string[]; readonly told: readonly string[] } {
  const sounding = new Set(card.panels.flatMap((panel) => panel.percussion.map((row) => row.name)));
  const rank = (name: string) => (FIRST.includes(name) ? FIRST.indexOf(name) : FIRST.length);
  const names = [...sounding].sort((one, other) => rank(one) - rank(other));
  // The pulse stands on top, but gives way where only the few find room.
  const pulses = pulse ? [PULSE] : [];
  const all = rows > FEW_ROWS ? [...pulses, ...names] : [...names, ...pulses];
  return { shown: all.slice(0, rows), told: all.slice(rows) };
}

/** The most rows that any card of some cards would fill. */
export function mostRows(cards: readonly Card[], pulse: boolean): number {
  const count = (card: Card) => new Set(card.panels.flatMap((panel) => panel.percussion.map((row) => row.name))).size;
  return cards.reduce((most, card) => Math.max(most, count(card)), 0) + (pulse ? 1 : 0);
}
