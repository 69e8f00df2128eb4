import type { Direction } from '../../vocabulary';
import { CLAVES, exchangeSides, gridOfSteps, gridText, stepsOfGrid } from './patterns';

/** A rhythm that players know by name, and the direction it states; null for one that goes with either. */
export interface NamedRhythm {
  readonly name: string;
  readonly states: Direction | 'neutral';
}

/** Rows as they sound in 2-3 (or in both directions), printed bar by bar. Each is stored once; the other direction is derived. */
interface NamedRow {
  readonly name: string;
  /** 2-3 form; a row of two equal bars is neutral. */
  readonly grid: string;
  readonly source: string;
}

/**
 * Claves and standard parts. The direction score misjudges some of them (rumba clave, cáscara) because it was made for melodic and
 * accompanying rhythms, so they are known by name first.
 */
export const NAMED_ROWS: readonly NamedRow[] = [
  { name: 'son clave', grid: twoThree('son'), source: CLAVES.son.source },
  { name: 'rumba clave', grid: twoThree('rumba'), source: CLAVES.rumba.source },
  { name: '6/8 bell', grid: twoThree('bembe'), source: CLAVES.bembe.source },
  { name: '6/8 rumba clave', grid: '.x.x.. x.x..x', source: 'published: Drum Dojo, "Rumba Clave"; timbales pattern sheet' },
  { name: '6/8 son clave', grid: '.x.x.. x.x.x.', source: 'from memory' },
  { name: 'cáscara', grid: 'x.x.xx.x x.xx.x.x', source: 'published: timbales pattern sheet' },
  { name: 'mambo bell', grid: 'x.x.xxxx .xxxx.xx', source: 'published: timbales pattern sheet' },
  { name: 'bongo bell', grid: 'x.xxx.xx x.xxx.xx', source: 'common practice' },
  { name: 'cha-cha bell', grid: 'x.x.x.x. x.x.x.x.', source: 'published: timbales pattern sheet' },
  { name: 'timbales low drum', grid: '..x...x. ..x...x.', source: 'published: timbales pattern sheet' },
  { name: 'cha-cha timbales', grid: '..xx..xx ..xx..xx', source: 'published: timbales pattern sheet' },
  { name: 'bass tumbao', grid: '...x..x. ...x..x.', source: 'published: P. Manuel, "The Anticipated Bass in Cuban Popular Music", 1985' },
  { name: 'steady eighths', grid: 'xxxxxxxx xxxxxxxx', source: 'common practice: maracas, martillo, one-drum conga' },
];

function twoThree(kind: 'son' | 'rumba' | 'bembe'): string {
  const { cycle, threeTwo } = CLAVES[kind];
  return gridText(gridOfSteps(exchangeSides(threeTwo, cycle), cycle));
}

const BY_GRID: ReadonlyMap<string, NamedRhythm> = new Map(
  NAMED_ROWS.flatMap(({ name, grid }): (readonly [string, NamedRhythm])[] => {
    const [first = '', second = ''] = grid.split(' ');
    if (first === second) return [[grid, { name, states: 'neutral' }]];
    return [
      [grid, { name, states: '2-3' }],
      [`${second} ${first}`, { name, states: '3-2' }],
    ];
  }),
);

/** The name and direction of a rhythm of 16 or 12 steps that players know by name, or null. */
export function namedRhythm(grid: readonly boolean[]): NamedRhythm | null {
  return stepsOfGrid(grid).length === 0 ? null : (BY_GRID.get(gridText(grid)) ?? null);
}
