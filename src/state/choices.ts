import { readFigure } from '../music/chart/read-values';
import { pairsFor } from '../music/montuno/patterns';
import { PATTERN_IDS, type PatternId, percussionPattern } from '../music/percussion/patterns';
import { STYLES } from '../music/styles/styles';
import { type Direction, failed, ok, type Result, stepsInCycle } from '../vocabulary';
import type { OwnFigure, Settings } from './settings';

/** A style that can be chosen, with what is known about it. */
export interface StyleChoice {
  readonly name: string;
  /** Usual tempo in half notes a minute. */
  readonly from: number;
  readonly to: number;
  /** Where one starts. */
  readonly usual: number;
  readonly onClave: boolean;
  readonly evidence: string;
}

/** The styles on offer, in the order of the table. */
export const STYLE_CHOICES: readonly StyleChoice[] = STYLES.map(({ name, tempo, onClave, evidence }) => ({
  name,
  from: tempo.from,
  to: tempo.to,
  usual: tempo.usual,
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

/** The id of a percussion pattern. */
export type PercussionName = PatternId;

/** A percussion pattern that can be chosen. */
export interface PercussionOffer {
  readonly id: PercussionName;
  readonly name: string;
  readonly evidence: string;
}

/** The percussion patterns of a meter, in the order of a score; fills are left to the sections. */
export const percussionChoices = (meter: '4/4' | '6/8'): readonly PercussionOffer[] =>
  PATTERN_IDS.map(percussionPattern)
    .filter(({ cycle, fill }) => cycle === stepsInCycle(meter) && fill === null)
    .map(({ id, name, evidence }) => ({ id, name, evidence }));

/** A typed rhythm of two bars as a figure, or what was expected in its place. Example: `ownFigureOf('x.xx.x.x .x.xx.x.', '2-3')`. */
export function ownFigureOf(text: string, direction: Direction): Result<OwnFigure, string> {
  const read = readFigure('4/4')(text);
  return read.ok ? ok({ text: read.value, direction }) : failed(...read.faults.map(({ expected }) => expected));
}
