import { failed, ok, type Result } from '../../vocabulary';
import type { Chord } from '../chord/chord';
import { isNoChord, readChord } from '../chord/read';
import { type Key, keyName, readKey } from '../pitch/key';
import type { ChartFault } from './chart';
import type { ChartFaultCode } from './fault-codes';
import { likelyKey } from './likely-key';
import { readChart } from './read';
import { degreeSymbol, isMinorTonic, looksLikeDegree } from './read-degrees';
import { writeRow } from './write-row';

/** The most characters a quick line may have. */
const MAX_LINE = 400;
const EXPECTED = 'chords such as Em7 A7 D6 B7b9, or a loop and a key such as 1 4 5 4 in D';

interface Word {
  readonly text: string;
  /** From 1. */
  readonly column: number;
}

/**
 * Reads the line that plays at once and gives chart text for it.
 *
 *     line   = chords | loop
 *     chords = chord { blank or comma, chord }      each chord one bar: `Em7 A7 D6 B7b9`
 *            | bar { "|" bar }                      bars as in a chart: `Gm7 C7 | F`
 *            | chords "in" key                        `Gm7 C7 | F in F`
 *     loop   = degrees "in" key                     `1 4 5 4 in D`, `ii V I in Eb`, `i V7 V7 i in Gm`, `I IV | V IV in A`
 *     degree = [b or #] (1 to 7 | roman numeral [suffix])      blanks, commas, dashes between; each one bar, or bars with "|"
 *
 * Before or after it may stand the direction as a band's chart has it: `montuno 2-3`, `3-2 rumba`, `clave 2-3`.
 * Without bar signs, an odd number of bars is rounded up by holding the last chord, so that the loop closes on the clave.
 * The key of bare chords is the likeliest one; the title is the line itself. Faults have line 1 and columns of the line as typed. Never throws.
 */
export function readQuickLine(text: string): Result<string, ChartFault> {
  if (text.length > MAX_LINE)
    return wrong('text too long', { text: text.slice(0, 20), column: 1 }, `at most ${MAX_LINE} characters: ${EXPECTED}`, null);
  const whole = text.replace(/[\s;]/g, ' ');
  if (whole.trim() === '') return wrong('no bars', { text: '', column: 1 }, EXPECTED, null);
  const said = LAST_WORD.exec(whole) ?? NAMED_FIRST.exec(whole) ?? BARE_FIRST.exec(whole);
  if (!said) return readMusic(whole);
  // Blanks in its place keep the columns.
  const music = whole.slice(0, said.index) + ' '.repeat(said[0].length) + whole.slice(said.index + said[0].length);
  const { direction = '2-3', kind = 'son' } = said.groups ?? {};
  if (music.trim() === '') return wrong('no bars', { text: whole.trim(), column: 1 }, DIRECTION_ALONE, null);
  const read = readMusic(music);
  return read.ok ? ok(read.value.replace('\n\n', `\nclave: ${direction} ${kind.toLowerCase()}\n\n`)) : read;
}

/** The direction at the end of the line, or at its beginning before something else than a loop of degrees. */
const LAST_WORD = /(?:^|[ ,])(?:(?:montuno|clave)[ :]*)?(?<direction>2-3|3-2)(?: +(?<kind>son|rumba))?[ ,]*$/i;
const NAMED_FIRST = /^ *(?:montuno|clave)[ :]*(?<direction>2-3|3-2)(?: +(?<kind>son|rumba))?(?=[ ,]|$)/i;
const BARE_FIRST = /^ *(?<direction>2-3|3-2)(?= +(?:son|rumba|[A-G|]))(?: +(?<kind>son|rumba))?(?=[ ,]|$)/i;
const DIRECTION_ALONE = 'the chords as well, before or after the direction: Gm7 C7 Fmaj7 D7 montuno 2-3';

function readMusic(line: string): Result<string, ChartFault> {
  const loop = /^(.*?)\s+in\s+(\S.*?)\s*$/i.exec(line);
  if (loop) {
    const [, music = '', key = ''] = loop;
    const keyWord = { text: key, column: line.lastIndexOf(key) + 1 };
    const degrees = wordsOf(music, DEGREE_WORD).some(({ text }) => looksLikeDegree(text));
    return degrees || music.trim() === '' ? readLoop(music, keyWord, line) : readChordsIn(music, keyWord, line);
  }
  const words = wordsOf(line.replace(/\s+in\s*$/i, ''), CHORD_WORD);
  if (words.length > 0 && words.every((word) => looksLikeDegree(word.text))) {
    return wrong(
      'unknown key',
      { text: line.trim(), column: words[0]?.column ?? 1 },
      'a key after the loop: in D, in Gm',
      `${line.trim().replace(/\s+in$/i, '')} in ${words.some((word) => isMinorTonic(word.text)) ? 'Cm' : 'C'}`,
    );
  }
  return line.includes('|') ? readBars(line, line) : readWords(words, line);
}

/** Bare chords and the key they are in; words after the chords that name no key are words. */
function readChordsIn(music: string, keyWord: Word, line: string): Result<string, ChartFault> {
  const key = readKey(keyWord.text);
  if (key.ok) return music.includes('|') ? readBars(music, line, key.value) : readWords(wordsOf(music, CHORD_WORD), line, key.value);
  const from = line.slice(0, keyWord.column - 1).search(/\sin\s+$/i) + 1;
  return wrong(
    'unknown chord',
    { text: line.slice(from).trim(), column: from + 1 },
    `nothing after the chords but a key: ${EXPECTED}`,
    null,
  );
}

/** A chord, and a degree of a loop, as they stand between blanks, commas and bar signs. */
const CHORD_WORD = /[^\s,|]+/g;
const DEGREE_WORD = /[^\s,|\-–—→]+/g;

function wrong(code: ChartFaultCode, { text, column }: Word, expected: string, nearest: string | null): Result<never, ChartFault> {
  return failed({ code, line: 1, column, text, expected, nearest });
}

const wordsOf = (line: string, pattern: RegExp): Word[] =>
  [...line.matchAll(pattern)].map((match) => ({ text: match[0], column: match.index + 1 }));

/** Bare chords, one a bar. */
function readWords(words: readonly Word[], line: string, key?: Key): Result<string, ChartFault> {
  const chords: Chord[] = [];
  const faults: ChartFault[] = [];
  for (const word of words) {
    if (isNoChord(word.text) || (word.text === '%' && word !== words[0])) continue;
    const read = readChord(word.text);
    if (read.ok) chords.push(read.value);
    else
      faults.push({
        code: 'unknown chord',
        line: 1,
        column: word.column,
        text: word.text,
        expected: read.faults[0]?.expected ?? EXPECTED,
        nearest: read.faults[0]?.nearest ?? null,
      });
  }
  if (words.length === 0) return wrong('no bars', { text: line.trim(), column: 1 }, EXPECTED, null);
  return faults.length > 0 ? failed(...faults) : ok(chartText(line, key ?? likelyKey(chords), rowOf(words.map((word) => word.text))));
}

/** Bars typed with `|`, read as a row of a chart, in the key that was given or the likeliest one. */
function readBars(bars: string, line: string, key?: Key): Result<string, ChartFault> {
  const row = readRow(bars);
  return row.ok ? ok(chartText(line, key ?? likelyKey(row.value.chords), row.value.text)) : row;
}

/** One row of bars: its chords, and how a chart writes it. */
function readRow(line: string): Result<{ readonly chords: readonly Chord[]; readonly text: string }, ChartFault> {
  const read = readChart(line.replaceAll(',', ' '));
  if (!read.ok) return read;
  const { sections, headers } = read.value;
  const section = sections[0];
  if (sections.length !== 1 || section?.line !== 0 || headers.length > 0)
    return wrong('unknown chord', { text: line.trim(), column: 1 }, EXPECTED, null);
  const chords = section.bars.flatMap(({ content }) =>
    content.kind === 'chords' ? content.chords.flatMap(({ chord }) => chord ?? []) : [],
  );
  return ok({ chords, text: writeRow(section.bars, '4/4') });
}

/** Degrees and a key. */
function readLoop(degrees: string, keyWord: Word, line: string): Result<string, ChartFault> {
  const typedKey = readKey(keyWord.text);
  const words = wordsOf(degrees, DEGREE_WORD);
  if (words.length === 0) return wrong('no bars', { text: line.trim(), column: 1 }, EXPECTED, null);
  const faults: ChartFault[] = [];
  if (!typedKey.ok) {
    const fault = typedKey.faults[0];
    faults.push({
      code: 'unknown key',
      line: 1,
      column: keyWord.column,
      text: keyWord.text,
      expected: fault?.expected ?? 'a key',
      nearest: fault?.nearest ?? null,
    });
  }
  const named = typedKey.ok ? typedKey.value : ({ tonic: 'C', mode: 'major' } satisfies Key);
  const key: Key = words.some((word) => isMinorTonic(word.text)) ? { ...named, mode: 'minor' } : named;
  const symbols = new Map<Word, string>();
  for (const word of words) {
    const symbol = word.text === '%' && word !== words[0] ? '%' : (degreeSymbol(word.text, key) ?? word.text);
    if (symbol !== '%' && (symbol === word.text || !readChord(symbol).ok)) {
      faults.push({
        code: 'unknown chord',
        line: 1,
        column: word.column,
        text: word.text,
        expected: 'a degree: 1 to 7, or a roman numeral such as ii, V7, bVII',
        nearest: null,
      });
    }
    symbols.set(word, symbol);
  }
  if (faults.length > 0) return failed(...faults);
  if (!degrees.includes('|')) return ok(chartText(line, key, rowOf([...symbols.values()])));
  let row = '';
  let from = 0;
  for (const [word, symbol] of symbols) {
    row += `${degrees.slice(from, word.column - 1).replace(/[,\-–—→]/g, ' ')}${symbol}`;
    from = word.column - 1 + word.text.length;
  }
  const read = readRow(`${row}${degrees.slice(from)}`);
  if (read.ok) return ok(chartText(line, key, read.value.text));
  return wrong(read.faults[0]?.code ?? 'chord count', { text: degrees.trim(), column: 1 }, read.faults[0]?.expected ?? EXPECTED, null);
}

/** A row of bars, with the last one held once more if their number is odd. */
const rowOf = (bars: readonly string[]): string => `| ${[...bars, ...(bars.length % 2 === 1 ? ['%'] : [])].join(' | ')} |`;

function chartText(line: string, key: Key, row: string): string {
  const title = line
    .replace(/[\s,]+/g, ' ')
    .replace(/^ ?\|(?!:) ?| ?(?<!:)\| ?$/g, '')
    .trim()
    .slice(0, 60);
  return `title: ${title}\nkey: ${keyName(key)}\n\n${row}\n`;
}
