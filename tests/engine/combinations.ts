import type { ArrangeOptions } from '../../src/music/score';
import { seeded } from '../../src/practice/seeded';
import type { Device, Hands, Level, Stretch } from '../../src/vocabulary';
import { REACH } from './checks';
import { chartOf, RECIPES, randomProgression } from './progressions';

const LEVELS: readonly Level[] = [1, 2, 3, 4, 5, 6];
const STYLES = ['salsa', 'son montuno', 'guaracha', 'mambo', 'songo', 'timba', 'rumba', 'latin jazz', 'cha-cha-cha', 'bolero', 'guajira'];
const DEVICES: readonly Device[] = ['octave-up', 'octaves-only', 'one-bar-neutral', 'extra-note', 'double-notes', 'half-step-out'];
const HANDS: readonly Hands[] = ['double', 'wide', 'tenths', 'contrary', 'tumbao', 'right', 'left'];
const STRETCHES: readonly Stretch[] = ['less than an octave', 'octave', 'ninth', 'tenth'];

/** Styles whose bass anticipates, so that E9 in full applies. */
export const ANTICIPATED_BASS = STYLES.slice(0, 8);

/** One of the many ways in which a progression can be played: seeded, so that a fault can be found again. */
export function combination(seed: number): {
  readonly chart: ReturnType<typeof chartOf>;
  readonly options: ArrangeOptions;
  readonly name: string;
} {
  const random = seeded(seed);
  const pick = <Item>(items: readonly Item[]): Item => items[Math.floor(random() * items.length)] as Item;
  const recipe = random() < 0.4 ? pick(RECIPES) : null;
  const text = recipe
    ? `title: ${recipe.name}\nkey: ${recipe.key}\n${recipe.bars}`
    : randomProgression(Math.floor(random() * 1e6), { bars: 4 });
  const options: ArrangeOptions = {
    transpose: Math.floor(random() * 12),
    direction: pick(['2-3', '3-2'] as const),
    kind: pick(['son', 'rumba'] as const),
    level: pick(LEVELS),
    style: pick(STYLES),
    hands: pick(HANDS),
    stretch: pick(STRETCHES),
    colour: pick(['plain', 'jazz'] as const),
    seed: pick([0, 0, 1, 2, 3]),
    devices: random() < 0.5 ? [pick(DEVICES)] : [],
  };
  return { chart: chartOf(text), options, name: `${seed} ${JSON.stringify(options)}` };
}

/** How far a hand may reach in a combination. */
export const reachOf = ({ stretch }: ArrangeOptions): number => REACH[stretch ?? 'octave'];
