import { afterAll, describe, expect, it } from 'vitest';
import { searchWords, wordsIn } from '../../src/ui/glossary/find-words';
import { GLOSSARY_WORDS, type WordId } from '../../src/words/glossary';
import { speak } from '../../src/words/speak';
import { WORD_LINKS } from '../../src/words/word-links';

const IDS = Object.keys(GLOSSARY_WORDS.words) as WordId[];
const rhythm = (id: WordId) => (WORD_LINKS[id].rhythm ?? []).map(({ strokes, side }) => `${side ?? '-'} ${strokes}`);

afterAll(() => speak('en'));

describe('The glossary', () => {
  it.each([
    // Santos, "Patrones de songo y salsa", 2009; Toussaint, "What makes a good rhythm good", 2011.
    ['son clave', ['3 x..x..x.', '2 ..x.x...']],
    // Santos 2009; Dreier, "Latin Jazz Guide".
    ['rumba clave', ['3 x..x...x', '2 ..x.x...']],
    // Timbales pattern sheet.
    ['cascara', ['2 x.x.xx.x', '3 x.xx.x.x']],
    ['mamboBell', ['2 x.x.xxxx', '3 .xxxx.xx']],
    // Keyboard Magazine, 2017, for the principle; the grid is common practice, no source.
    ['montuno', ['2 x.xx.x.x', '3 .x.x.x.x']],
    // Manuel, 1985: the bass takes the next root on 4; Wikipedia, "Tumbao", for the & of 2.
    ['tumbao', ['- ...x..x.']],
    // Common practice, no source.
    ['campana', ['- x.xxx.xx']],
  ] as const)('draws %s as published', (id, bars) => {
    expect(rhythm(id)).toEqual(bars);
  });

  it('gives a rhythm eight places a bar, and links that lead to other words, each reached from somewhere', () => {
    for (const id of IDS) {
      for (const { strokes } of WORD_LINKS[id].rhythm ?? []) expect(strokes).toMatch(/^[x.]{8}$/);
      expect(WORD_LINKS[id].see.length).toBeGreaterThan(0);
      expect(WORD_LINKS[id].see).not.toContain(id);
      expect(new Set(WORD_LINKS[id].see).size).toBe(WORD_LINKS[id].see.length);
    }
    expect(Object.keys(WORD_LINKS).sort()).toEqual([...IDS].sort());
  });

  it.each(['en', 'es'] as const)('has words of its own and at most three sentences for each in %s', async (language) => {
    await speak(language);
    const names = IDS.flatMap((id) => [GLOSSARY_WORDS.words[id].name, ...GLOSSARY_WORDS.words[id].also]);
    expect(names.filter((name, at) => names.indexOf(name) !== at)).toEqual([]);
    for (const id of IDS) {
      const { says } = GLOSSARY_WORDS.words[id];
      expect(says, id).toMatch(/\.$/);
      expect(says.split(/[.:] /).length, id).toBeLessThanOrEqual(3);
    }
  });

  it('is searched without accents, names first, then what speaks of the word', async () => {
    await speak('en');
    expect(searchWords('CASC', 'en')[0]).toBe('cascara');
    expect(searchWords('cruz', 'en')).toEqual(['crossed']);
    expect(searchWords('', 'en')).toHaveLength(IDS.length);
    expect(searchWords('gourd', 'en')).toEqual(['guiro']);
    expect(searchWords('zzz', 'en')).toEqual([]);
    await speak('es');
    expect(searchWords('tumbadora', 'es')).toEqual(['conga']);
    expect(searchWords('lado', 'es').slice(0, 2)).toEqual(['two-side', 'three-side']);
  });
});

describe('Trade words in running text', () => {
  const marked = (text: string) => wordsIn(text).flatMap(({ text: piece, word }) => (word ? [`${piece} > ${word}`] : []));

  it('are marked once, the longest that fits, whole words alone', async () => {
    await speak('en');
    expect(marked('Son and rumba clave: rumba clave again, on the 2-side, enclave apart.')).toEqual([
      'rumba clave > rumba clave',
      '2-side > two-side',
    ]);
    expect(marked('Struck on the & of 2 of the 3-side, with the second clave stroke (bombo).')).toEqual([
      '3-side > three-side',
      'clave > clave',
      'bombo > bombo',
    ]);
  });

  it('are not everyday words that happen to be written the same', async () => {
    await speak('en');
    expect(marked('Stop when it hurts, and take a pass through the section.')).toEqual([]);
    await speak('es');
    expect(marked('Las notas son las de la sección; toma la vuelta y golpe a golpe.')).toEqual([]);
    expect(marked('Golpe en el «y» del 2 del lado de 3, cruzado.')).toEqual(['lado de 3 > three-side', 'cruzado > crossed']);
  });

  it('leave the text as it is', async () => {
    await speak('en');
    for (const text of ['', 'clave', 'No word of the trade.', '6/8 bell, cáscara and 2-3 (montuno)'])
      expect(
        wordsIn(text)
          .map(({ text: piece }) => piece)
          .join(''),
      ).toBe(text);
  });
});
