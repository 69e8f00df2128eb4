import type { Score } from '../music/score';
import { toAscii } from './ascii';
import { plainName } from './plain-name';

/**
 * The name, without extension, of a file made from `score`: `last-ferry_D_2-3-son_level-2`. ASCII letters, digits, `-` and `_` only,
 * so it is safe on every system and in every mail; a title with nothing to keep becomes `montuno`.
 */
export function fileStem(score: Pick<Score, 'title' | 'key' | 'clave' | 'level'>): string {
  return [
    plainName(score.title) || 'montuno',
    keyWord(score.key),
    `${score.clave.direction}-${score.clave.kind}`,
    `level-${score.level}`,
  ].join('_');
}

function keyWord(key: Score['key']): string {
  const tonic = toAscii(key.tonic)
    .replace('#', '-sharp')
    .replace(/^([A-G])b$/, '$1-flat');
  return key.mode === 'minor' ? `${tonic}-minor` : tonic;
}
