import { describe, expect, it } from 'vitest';
import { toAscii } from '../../src/exchange/ascii';
import { fileStem } from '../../src/exchange/file-name';
import { LOOP_SCORE } from '../layout/loop-score';

describe('fileStem', () => {
  it('names title, key, clave and level', () => expect(fileStem(LOOP_SCORE)).toBe('last-ferry_D_2-3-son_level-2'));

  it('spells sharps, flats and minor in words', () => {
    expect(fileStem({ ...LOOP_SCORE, key: { tonic: 'Bb', mode: 'minor' } })).toBe('last-ferry_B-flat-minor_2-3-son_level-2');
    expect(fileStem({ ...LOOP_SCORE, key: { tonic: 'F#', mode: 'major' } })).toBe('last-ferry_F-sharp_2-3-son_level-2');
  });

  it.each(['', '///', '日本', '<img src=x onerror=alert(1)>', '../../etc/passwd', 'CON', `${'long '.repeat(60)}`, 'Salón "Última" Barca'])(
    'is safe for the title %j',
    (title) => {
      expect(fileStem({ ...LOOP_SCORE, title })).toMatch(/^[a-z0-9]([a-z0-9-]{0,58}[a-z0-9])?_D_2-3-son_level-2$/);
    },
  );
});

describe('toAscii', () => {
  it('takes accents off, spells music signs and drops the rest', () => expect(toAscii('  Salón\n♭9 – “ñ” 日 ')).toBe('Salon b9 - "n"'));
});
