import type { Level } from '../../vocabulary';

/** How busy a figure is, as data. Adding a level is adding a row here and its patterns. */
export interface LevelRow {
  readonly level: Level;
  readonly name: string;
  /** True when the octaves or an inner note move along a line over held chords. */
  readonly movingLines: boolean;
  /** How pickups come into their octave: by a step of the key, or by a half step. */
  readonly approach: 'diatonic' | 'chromatic';
  /** True when every chord of a half bar or longer sounds even where the cell leaves it out. */
  readonly everyChord: boolean;
}

/** The levels, from 1; the row of level n stands at n − 1. */
const LEVELS: readonly LevelRow[] = [
  { level: 1, name: 'sparse', movingLines: false, approach: 'diatonic', everyChord: true },
  { level: 2, name: 'standard', movingLines: false, approach: 'diatonic', everyChord: false },
  { level: 3, name: 'moving line', movingLines: true, approach: 'diatonic', everyChord: false },
  { level: 4, name: 'pickups', movingLines: true, approach: 'diatonic', everyChord: false },
  { level: 5, name: 'chromatic', movingLines: true, approach: 'chromatic', everyChord: false },
  { level: 6, name: 'riffs and bloques', movingLines: false, approach: 'chromatic', everyChord: true },
];

/** The row of a level. */
export function levelRow(level: Level): LevelRow {
  const row = LEVELS[level - 1];
  if (!row) throw new Error(`no level ${level}`);
  return row;
}
