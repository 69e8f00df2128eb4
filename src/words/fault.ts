import type { ChartFault } from '../music/chart/chart';
import { MUSIC_TEXTS } from './music-texts';

/**
 * A fault in chart text as one sentence: where, what, what was expected and the nearest valid text.
 * Example: `Line 8, column 3, “H7”. Expected: a root from A to G in capitals. Nearest: “B7”.`
 */
export const faultSentence = (fault: ChartFault): string => FAULT_WORDS.sentence(fault);

/** The sentence about a fault. */
export const FAULT_WORDS = {
  sentence: ({ line, column, text, expected, nearest }: ChartFault): string => {
    const quote = shortened(text.replace(/\p{Cc}/gu, ' ').trim());
    const found = quote === '' ? '' : `, “${quote}”`;
    return `Line ${line}, column ${column}${found}. Expected: ${MUSIC_TEXTS.expected(expected)}.${nearest === null ? '' : ` Nearest: “${nearest}”.`}`;
  },
} as const;

/** Longest piece of typed text that is quoted, in characters. */
const LONGEST_QUOTE = 40;

function shortened(text: string): string {
  const signs = [...text];
  return signs.length <= LONGEST_QUOTE ? text : `${signs.slice(0, LONGEST_QUOTE - 1).join('')}…`;
}
