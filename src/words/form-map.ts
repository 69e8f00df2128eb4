import type { Level, Side } from '../vocabulary';
import { GRID_WORDS } from './grid';

/** What stands around the sounding card: the map of the form, the next card, the note about a stroke, the line under the percussion. */
export const FORM_WORDS = {
  alsoPlaying: (names: readonly string[]) => `and ${names.join(', ')}`,
  allPlaying: (names: readonly string[]) => names.join(', '),
  shapes: { accent: 'accent', open: 'open', slap: 'slap or muffled', plain: 'plain' },
  loopFrom: 'Loop starts at',
  loopTo: 'Loop ends after',
  close: 'Close',
  why: 'Why this stroke',
  mapName: 'The form',
  card: (bars: string, chords: string) => `${bars}: ${chords}`,
  count: (bars: number) => (bars === 1 ? '1 bar' : `${bars} bars`),
  onCue: 'on cue',
  level: (low: Level, high: Level) => (low === high ? `level ${low}` : `levels ${low} to ${high}`),
  inBars: (bars: number) => (bars < 1 ? 'now' : bars === 1 ? 'in 1 bar' : `in ${bars} bars`),
  turn: (turn: { readonly kind: 'section' | 'restart' | 'across'; readonly section: string; readonly side: Side }) =>
    turn.kind === 'restart'
      ? `clave starts again, from the ${GRID_WORDS.sideName(turn.side)}`
      : turn.kind === 'across'
        ? `half a side turns the count`
        : `${turn.section}, from the ${GRID_WORDS.sideName(turn.side)}`,
  nextName: (bars: string) => `Next card, ${bars}`,
} as const;
