import { readFigure } from '../music/chart/read-values';
import { pairsFor } from '../music/montuno/patterns';
import type { SoloKind } from '../music/montuno/solo';
import { PATTERN_IDS } from '../music/percussion/patterns';
import type { PercussionChoice } from '../music/percussion/percussion';
import type { ArrangeOptions } from '../music/score';
import type { ClaveKind, Compass, Direction, Stretch } from '../vocabulary';
import type { OptionRow } from './command-line';
import { type OptionReader, orList, quoted } from './option-reader';

/** The options of `arrange` that shape figure, hands and percussion. */
export const FIGURE_ROWS: readonly OptionRow[] = [
  ...['stretch', 'keys', 'cells', 'figure', 'solo', 'percussion'].map((name) => ({ name, takes: 'value' as const })),
  { name: 'crossed', takes: 'nothing' },
];
/** How they are written, for the list of commands. */
export const FIGURE_FORM =
  '[--stretch NAME] [--keys 49|61|76|88] [--cells A4+B2] [--figure "x.xx.x.x .x.xx.x."] [--crossed] [--solo example|scaffold] [--percussion by-style|none|NAME,NAME]';

const STRETCHES: readonly Stretch[] = ['less than an octave', 'octave', 'ninth', 'tenth'];
const COMPASSES: readonly Compass[] = [49, 61, 76, 88];
const SOLOS: readonly SoloKind[] = ['example', 'scaffold'];
/** Names without spaces, so that they need no quotes. */
const dashed = (name: string): string => name.replaceAll(' ', '-');

/** What these options ask for. A figure's direction is the one asked for with `--clave`; without it the chart's must take its place. */
export function readFigureOptions(reader: OptionReader, direction: Direction | undefined): Partial<ArrangeOptions> {
  const stretch = named(reader, 'stretch', STRETCHES);
  const keys = reader.oneOf('keys', COMPASSES.map(String));
  const compass = COMPASSES.find((known) => String(known) === keys);
  const cells = cellsOf(reader);
  const figure = figureOf(reader);
  const solo = reader.oneOf('solo', SOLOS);
  const percussion = percussionOf(reader);
  return {
    ...(stretch && { stretch }),
    ...(compass && { compass }),
    ...(cells && { cells }),
    ...(figure !== undefined && { ownFigure: { text: figure, direction: direction ?? '2-3' } }),
    ...(reader.has('crossed') && { crossed: true }),
    ...(solo && { solo }),
    ...(percussion && { percussion }),
  };
}

/** Why cells or a figure do not fit the clave or the meter of a chart, as one line, or null. */
export function againstClave({ cells, ownFigure }: ArrangeOptions, meter: '4/4' | '6/8', kind: ClaveKind): string | null {
  if (meter === '6/8' && ownFigure) return '--figure needs a chart in 4/4, this one is in 6/8; a chart may hold its own under figure:';
  if (!cells) return null;
  const asked = `--cells ${cells.two}+${cells.three}`;
  if (meter === '6/8') return `${asked} needs a chart in 4/4, this one is in 6/8`;
  const pairs = pairsFor(kind);
  if (pairs.some(({ two, three }) => two.id === cells.two && three.id === cells.three)) return null;
  return `${asked} does not go with ${kind} clave; with ${cells.two} go ${orList(pairs.filter(({ two }) => two.id === cells.two).map(({ three }) => three.id))}`;
}

/** One of `allowed`, whose spaces may be typed as dashes. */
function named<Value extends string>(reader: OptionReader, name: string, allowed: readonly Value[]): Value | undefined {
  const text = reader.all(name).at(-1);
  if (text === undefined) return undefined;
  const found = allowed.find((value) => dashed(value) === dashed(text));
  if (found === undefined) reader.faults.push(`--${name} must be ${orList(allowed.map(dashed))}, got ${quoted(text)}`);
  return found;
}

function cellsOf(reader: OptionReader): ArrangeOptions['cells'] {
  const text = reader.all('cells').at(-1);
  if (text === undefined) return undefined;
  const pairs = pairsFor('son');
  const found = pairs.find(({ two, three }) => `${two.id}+${three.id}`.toLowerCase() === text.toLowerCase());
  if (found) return { two: found.two.id, three: found.three.id } as ArrangeOptions['cells'];
  const ids = (side: 'two' | 'three') => orList([...new Set(pairs.map((pair) => pair[side].id))].sort());
  const [two, three] = text.toUpperCase().split('+');
  const known = pairs.some((pair) => pair.two.id === two) && pairs.some((pair) => pair.three.id === three);
  reader.faults.push(
    known
      ? `--cells ${quoted(text)}: with ${two} go ${orList(pairs.filter((pair) => pair.two.id === two).map((pair) => pair.three.id))}`
      : `--cells must be a cell for the 2-side (${ids('two')}), a plus and a cell for the 3-side (${ids('three')}), got ${quoted(text)}`,
  );
  return undefined;
}

function figureOf(reader: OptionReader): string | undefined {
  const text = reader.all('figure').at(-1);
  if (text === undefined) return undefined;
  const read = readFigure('4/4')(text);
  if (read.ok) return read.value;
  reader.faults.push(...read.faults.map(({ expected }) => `--figure must be ${expected}, got ${quoted(text)}`));
  return undefined;
}

function percussionOf(reader: OptionReader): PercussionChoice | undefined {
  const text = reader.all('percussion').at(-1);
  if (text === undefined) return undefined;
  if (dashed(text) === 'by-style') return 'by style';
  if (text === 'none') return 'none';
  const words = text.split(',').map((word) => word.trim());
  const unknown = words.filter((word) => !PATTERN_IDS.some((id) => dashed(id) === dashed(word)));
  reader.faults.push(
    ...unknown.map(
      (word) => `--percussion must be by-style, none, or of ${PATTERN_IDS.map(dashed).join(', ')} with commas between, got ${quoted(word)}`,
    ),
  );
  return PATTERN_IDS.filter((id) => words.some((word) => dashed(word) === dashed(id)));
}
