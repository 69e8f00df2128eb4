import { fullBarTicks, type Meter } from '../../vocabulary';
import type { NotTaken } from '../../words/import-screen';
import type { LeadBar } from './lead-sheet';

/** The chords of a bar on the places where a chart can write them: one place a quarter, in 6/8 one an eighth. */
export interface SlottedBar {
  readonly bar: LeadBar;
  readonly slots: readonly (string | null)[];
}

/** Ticks of a place. */
const slotTicks = (meter: Meter): number => (meter === '6/8' ? 240 : 480);

/**
 * Puts every chord on a place: where it stands, or, from between two beats, on the beat after it (perhaps the first of the next bar), else on the
 * one before it. What was moved or found no place is reported. A later chord on the same beat takes the place of the earlier one.
 */
export function slotChords(
  bars: readonly LeadBar[],
  meter: Meter,
): { readonly slotted: readonly SlottedBar[]; readonly notTaken: readonly NotTaken[] } {
  const unit = slotTicks(meter);
  const notTaken: NotTaken[] = [];
  const slotted = bars.map((bar) => ({ bar, slots: Array.from({ length: bar.ticks / unit }, (): string | null => null) }));
  const place = (bar: number, slot: number): boolean => {
    const slots = slotted[bar]?.slots;
    return slots !== undefined && slot >= 0 && slot < slots.length && slots[slot] === null;
  };
  const put = (bar: number, slot: number, symbol: string): void => {
    const slots = slotted[bar]?.slots;
    if (slots) slots[slot] = symbol;
  };
  bars.forEach((bar, index) => {
    for (const { tick, symbol } of bar.chords) {
      const slot = tick / unit;
      if (!Number.isInteger(slot) || slot >= bar.ticks / unit) continue;
      const before = slotted[index]?.slots[slot];
      if (before != null && before !== symbol) notTaken.push({ code: 'second chord', bar: index + 1, detail: { chord: symbol } });
      put(index, slot, symbol);
    }
  });
  bars.forEach((bar, index) => {
    for (const { tick, symbol } of bar.chords) {
      const exact = tick / unit;
      const length = bar.ticks / unit;
      if (Number.isInteger(exact) && exact < length) continue;
      const after = Math.ceil(exact);
      const next: readonly [number, number] = after < length ? [index, after] : [index + 1, 0];
      const target = [next, [index, Math.min(length - 1, Math.floor(exact))] as const].find(([at, slot]) => place(at, slot));
      if (target) put(target[0], target[1], symbol);
      // An anticipation of a chord that is written again on the beat loses nothing.
      else if (slotted[next[0]]?.slots[next[1]] === symbol) continue;
      notTaken.push({ code: target ? 'chord moved' : 'chord crowded out', bar: index + 1, detail: { chord: symbol } });
    }
  });
  return { slotted, notTaken };
}

/** How the bar is typed: bare chords where they share it evenly, slashes else, `%` where the bar before says all. `before` is null at the start of the text. */
export function barSource(
  { bar, slots }: SlottedBar,
  before: { readonly bar: SlottedBar; readonly source: string } | null,
  meter: Meter,
): string {
  const full = fullBarTicks(meter);
  const held = slots.every((symbol) => symbol === null);
  const whole = bar.ticks === full && before?.bar.bar.ticks === full && !before.bar.bar.pickup;
  if (held && before === null) return 'N.C.';
  if (held && whole && (bar.repeatsBar || !/[ /]/.test(before?.source.replace(/\/[A-G]/g, '') ?? ' '))) return '%';
  const first = slots[0] ?? (before === null ? 'N.C.' : '/');
  const tokens = [first, ...slots.slice(1).map((symbol) => symbol ?? '/')];
  const typed = (at: readonly number[]): string | null =>
    tokens.every((token, index) => (token === '/') !== at.includes(index)) ? at.map((index) => tokens[index]).join(' ') : null;
  const half = tokens.length / 2;
  return (
    typed([0]) ?? (bar.ticks === full || meter === '4/4' ? typed([0, half]) : null) ?? sixEightBeats(tokens, meter) ?? tokens.join(' ')
  );
}

/** In 6/8 two words with a slash among them are the two dotted beats. */
function sixEightBeats(tokens: readonly string[], meter: Meter): string | null {
  if (meter !== '6/8' || tokens.length !== 6) return null;
  const beats = [tokens[0], tokens[3]];
  const others = tokens.filter((_, index) => index % 3 !== 0);
  return others.every((token) => token === '/') && beats.includes('/') ? beats.join(' ') : null;
}
