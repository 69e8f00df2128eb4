import { GLOSSARY_WORDS, type WordId } from '../../words/glossary';
import { WORD_LINKS } from '../../words/word-links';

/** A piece of a text: plain, or a trade word of the glossary. */
export interface TextPiece {
  /** Where it begins. */
  readonly at: number;
  readonly text: string;
  readonly word: WordId | null;
}

const IDS = Object.keys(GLOSSARY_WORDS.words) as WordId[];

/** Lower case without accents: what searches compare. The ñ stays a letter of its own. */
export const plain = (text: string): string =>
  text
    .toLowerCase()
    .normalize('NFD')
    .replace(/[\u0300-\u0302\u0304-\u036f]|(?<!n)\u0303/g, '')
    .normalize('NFC');

/** The words of the glossary in the order of the language's alphabet. */
export const wordsInOrder = (language: string): readonly WordId[] =>
  IDS.toSorted((a, b) => GLOSSARY_WORDS.words[a].name.localeCompare(GLOSSARY_WORDS.words[b].name, language));

/** The words that a search finds: first those whose name begins with it, then those it is in, then those that speak of it. Nothing typed finds all. */
export function searchWords(typed: string, language: string): readonly WordId[] {
  const wanted = plain(typed.trim());
  const rank = (id: WordId): number => {
    const { name, also, says } = GLOSSARY_WORDS.words[id];
    const names = [name, ...also].map(plain);
    if (names.some((one) => one.startsWith(wanted))) return 0;
    if (names.some((one) => one.includes(wanted))) return 1;
    return plain(says).includes(wanted) ? 2 : 3;
  };
  return wordsInOrder(language)
    .map((id) => ({ id, rank: rank(id) }))
    .filter(({ rank: found }) => found < 3)
    .toSorted((a, b) => a.rank - b.rank)
    .map(({ id }) => id);
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');

/** A text in pieces: each trade word once, where it first stands; the longest that fits at a place. Words that are everyday words too stay plain. */
export function wordsIn(text: string): readonly TextPiece[] {
  const spellings = new Map(
    IDS.filter((id) => WORD_LINKS[id].everyday === undefined).flatMap((id) => {
      const { name, also } = GLOSSARY_WORDS.words[id];
      return [name, ...also].map((spelling): [string, WordId] => [spelling.toLowerCase(), id]);
    }),
  );
  const longestFirst = [...spellings.keys()].toSorted((a, b) => b.length - a.length).map(escaped);
  const pattern = new RegExp(`(?<![\\p{L}\\p{N}-])(?:${longestFirst.join('|')})(?![\\p{L}\\p{N}-])`, 'giu');
  const pieces: TextPiece[] = [];
  const seen = new Set<WordId>();
  let from = 0;
  for (const match of text.matchAll(pattern)) {
    const word = spellings.get(match[0].toLowerCase());
    if (word === undefined || seen.has(word)) continue;
    seen.add(word);
    if (match.index > from) pieces.push({ at: from, text: text.slice(from, match.index), word: null });
    pieces.push({ at: match.index, text: match[0], word });
    from = match.index + match[0].length;
  }
  if (from < text.length) pieces.push({ at: from, text: text.slice(from), word: null });
  return pieces;
}
