import type { WordId } from './glossary';

/** One bar of a small drawn rhythm: an x for a stroke, a dot for a rest, and the side of the clave, or null where it fits both. */
export interface RhythmBar {
  readonly strokes: string;
  readonly side: 2 | 3 | null;
}

/** What belongs to a word in every language: the words to read next, and its rhythm in eighths if it has one. */
export interface WordLink {
  readonly see: readonly WordId[];
  readonly rhythm?: readonly RhythmBar[];
  /** An everyday word as well: it is not marked inside running text. */
  readonly everyday?: true;
}

const three = (strokes: string): RhythmBar => ({ strokes, side: 3 });
const two = (strokes: string): RhythmBar => ({ strokes, side: 2 });
const either = (strokes: string): RhythmBar => ({ strokes, side: null });
const see = (...ids: WordId[]): WordLink => ({ see: ids });
const everyday = (...ids: WordId[]): WordLink => ({ see: ids, everyday: true });

/** See-also links and rhythms of the glossary. The rhythms' sources are named beside their checks in the tests. */
export const WORD_LINKS: Readonly<Record<WordId, WordLink>> = {
  clave: { see: ['son clave', 'rumba clave', 'direction', 'two-side', 'three-side'], rhythm: [three('x..x..x.'), two('..x.x...')] },
  'son clave': { see: ['rumba clave', 'direction'], rhythm: [three('x..x..x.'), two('..x.x...')] },
  'rumba clave': { see: ['son clave', 'rumba', 'timba'], rhythm: [three('x..x...x'), two('..x.x...')] },
  direction: { see: ['two-side', 'three-side', 'crossed', 'neutral'], rhythm: [two('..x.x...'), three('x..x..x.')] },
  'two-side': { see: ['three-side', 'direction'], rhythm: [two('..x.x...')] },
  'three-side': { see: ['two-side', 'bombo', 'ponche', 'tresillo'], rhythm: [three('x..x..x.')] },
  crossed: see('direction', 'neutral', 'two-side', 'three-side'),
  neutral: see('crossed', 'direction', 'campana'),
  stroke: everyday('bombo', 'ponche', 'hits'),
  bombo: { see: ['ponche', 'three-side'], rhythm: [three('...x....')] },
  ponche: { see: ['bombo', 'three-side', 'hits'], rhythm: [three('......x.')] },
  tresillo: { see: ['three-side', 'bombo', 'ponche'], rhythm: [either('x..x..x.')] },
  montuno: { see: ['guajeo', 'octave', 'inner', 'anticipation'], rhythm: [two('x.xx.x.x'), three('.x.x.x.x')] },
  guajeo: see('montuno', 'tumbao'),
  tumbao: { see: ['anticipation', 'conga', 'montuno'], rhythm: [either('...x..x.')] },
  anticipation: see('push', 'tumbao', 'montuno'),
  octave: everyday('inner', 'guide', 'line'),
  inner: see('octave', 'voicing'),
  voicing: see('inner', 'guide'),
  guide: see('octave', 'line', 'scaffold'),
  approach: see('octave', 'level'),
  line: see('guide', 'octave'),
  cell: see('figure', 'two-side', 'three-side'),
  figure: everyday('cell', 'montuno', 'level'),
  level: everyday('device', 'figure', 'section'),
  device: everyday('level', 'octave', 'anticipation'),
  colour: everyday('voicing', 'guide'),
  riff: see('mona', 'mambo', 'bloque'),
  bloque: see('hits', 'cierre', 'riff'),
  cascara: { see: ['timbales', 'mamboBell', 'clave'], rhythm: [two('x.x.xx.x'), three('x.xx.x.x')] },
  campana: { see: ['martillo', 'mamboBell', 'cascara'], rhythm: [either('x.xxx.xx')] },
  mamboBell: { see: ['campana', 'timbales', 'cascara'], rhythm: [two('x.x.xxxx'), three('.xxxx.xx')] },
  timbales: see('cascara', 'mamboBell'),
  conga: see('tumbao', 'martillo', 'campana'),
  martillo: see('campana', 'conga'),
  guiro: { see: ['chacha', 'conga'], rhythm: [either('x.xxx.xx')] },
  coro: see('montuno', 'section', 'mambo'),
  mambo: see('mona', 'coro', 'section'),
  mona: see('mambo', 'riff'),
  vamp: see('montuno', 'coro', 'cierre'),
  cierre: everyday('hits', 'bloque', 'stop'),
  hits: everyday('bloque', 'push', 'stop'),
  stop: everyday('hits', 'cierre'),
  push: everyday('anticipation', 'hits'),
  section: everyday('coro', 'mambo', 'cierre', 'vamp'),
  style: everyday('salsa', 'son', 'chacha', 'bolero', 'timba'),
  son: everyday('son clave', 'montuno', 'salsa'),
  salsa: see('son', 'son clave', 'timba'),
  chacha: see('danzon', 'guiro', 'style'),
  bolero: see('guajira', 'style'),
  guajira: see('bolero', 'son'),
  songo: see('timba', 'rumba clave'),
  timba: see('songo', 'tumbao', 'rumba clave'),
  danzon: see('chacha', 'mambo'),
  rumba: see('rumba clave', 'cascara'),
  bembe: see('clave', 'style'),
  cycle: everyday('clave', 'loop', 'pass'),
  countin: everyday('pulse', 'clave'),
  pulse: everyday('tempo', 'countin'),
  tempo: everyday('pulse', 'ladder'),
  feel: everyday('pulse', 'style'),
  loop: everyday('pass', 'cycle'),
  pass: everyday('loop', 'take'),
  take: everyday('pass', 'loop'),
  ladder: see('pass', 'tempo'),
  scaffold: see('guide', 'clave'),
};
