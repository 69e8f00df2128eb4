import { pairsFor } from '../music/montuno/patterns';
import { STYLES } from '../music/styles/styles';
import type { Settings } from './settings';

/** A style that can be chosen, with what is known about it. */
export interface StyleChoice {
  readonly name: string;
  /** Usual tempo in half notes a minute. */
  readonly from: number;
  readonly to: number;
  readonly onClave: boolean;
  readonly evidence: string;
}

/** The styles on offer, in the order of the table. */
export const STYLE_CHOICES: readonly StyleChoice[] = STYLES.map(({ name, tempo, onClave, evidence }) => ({
  name,
  from: tempo.from,
  to: tempo.to,
  onClave,
  evidence,
}));

/** A pair of cells that can be chosen by hand. */
export interface PairChoice {
  /** `A4 and B2`. */
  readonly name: string;
  readonly what: string;
  readonly cells: NonNullable<Settings['cells']>;
}

/** The pairs that go with a clave: each on its own side, none crossed. */
export const pairChoices = (kind: Settings['kind']): readonly PairChoice[] =>
  pairsFor(kind).map(({ name, two, three }) => ({
    name,
    what: `${two.name}, ${three.name}`,
    cells: { two: two.id, three: three.id } as NonNullable<Settings['cells']>,
  }));
