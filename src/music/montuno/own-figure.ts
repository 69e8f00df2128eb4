import type { Direction, Side } from '../../vocabulary';
import { CELLS, type Cell } from './cells';
import type { Pattern } from './patterns';

/**
 * A rhythm that the player wrote becomes a pattern like any other. `text` is what chart reading gives: two bars with one space
 * between them, in the chart's direction, so the first bar belongs to the chart's first side. The roles of plain strokes (`x`) are
 * filled in as the standard figure has them: octaves on 1 and directly before a half bar, approach notes on 4 before an octave,
 * inner notes elsewhere. A bar that is one of the table's own cells takes its roles.
 */
export function ownPattern(text: string, direction: Direction): Pattern {
  const [first = '', second = ''] = text.split(' ');
  const sides: readonly [Side, Side] = direction === '2-3' ? [2, 3] : [3, 2];
  const cells = [first, second].map(
    (bar, index): Cell => ({
      id: 'own',
      side: sides[index] ?? 2,
      roles: withRoles(bar, sides[index] ?? 2),
      name: 'own figure',
      evidence: 'the player’s own',
    }),
  );
  const of = (side: Side): Cell => {
    const found = cells.find((row) => row.side === side);
    if (!found) throw new Error(`an own figure has a bar for the ${side}-side`);
    return found;
  };
  return { name: 'own figure', two: of(2), three: of(3), claves: ['son', 'rumba', 'bembe'] };
}

const TYPED: Readonly<Record<string, string>> = { o: 'O', i: 'i', c: 'c', s: 's', a: 'a', '.': '.' };

function withRoles(bar: string, side: Side): string {
  const known = CELLS.find(
    (row) => row.side === side && /^[AB]/.test(row.id) && [...row.roles].every((role, step) => (role === '.') === (bar[step] !== 'x')),
  );
  if (known) return known.roles;
  return [...bar]
    .map((letter, step) => {
      if (letter !== 'x') return TYPED[letter] ?? '.';
      if (bar.length === 6) return step === 0 || step % 3 === 2 ? 'O' : 'i';
      if (step === 6) return bar[7] === '.' ? 'O' : 'a';
      return step === 0 || step === 3 || step === 7 ? 'O' : 'i';
    })
    .join('');
}
