import type { Meter } from '../../vocabulary';
import type { Chord } from '../chord/chord';
import { isNoChord, readChord } from '../chord/read';
import type { WrittenChord } from './chart';
import type { FaultList, Place } from './faults';
import { MAX_SYMBOL_LENGTH } from './limits';
import { nearest } from './nearest';

/** Words that are no chords, by where they may stand: alone in a bar, among chords, and in a bar with slashes. */
const KEYWORDS = { alone: ['%', '%%', 'stop', 'rest', 'N.C.'], among: ['N.C.'], slashed: ['N.C.', '/'] } as const;

/** True for what may stand in a bar of chords as it is typed. A correction is made of such words only. */
const isReadable = (text: string): boolean => text === '/' || isNoChord(text) || readChord(text).ok;

/** Equal shares and slots that a bar allows: how many bare chords, and how long each token is once there is a `/`. */
function division(
  meter: Meter,
  ticks: number,
): { readonly bare: readonly number[]; readonly slots: readonly number[]; readonly each: string } {
  if (meter === '4/4') return { bare: ticks === 1920 ? [1, 2, 4] : [1, 2], slots: [480], each: 'quarter' };
  return { bare: ticks === 1440 ? [1, 2] : [1], slots: [240, 720], each: 'eighth (or for each dotted beat)' };
}

/**
 * Reads the chords of one bar where they are written.
 * 4/4: one, two or four bare chords share the bar evenly; with a `/` every word is one quarter.
 * 6/8: one or two bare chords; with a `/` every word is one eighth (six words) or one dotted beat (two words).
 * A bar of 2/4 or 3/8 holds half as many.
 */
export function readChords(typed: readonly Place[], cell: Place, meter: Meter, ticks: number, faults: FaultList): WrittenChord[] {
  const words = typed.filter((word, index) => {
    if (word.text !== '>') return true;
    const next = typed[index + 1];
    const end = next && next.text !== '/' ? next.column + next.text.length : word.column + 1;
    const place: Place = { ...word, text: cell.text.slice(word.column - cell.column, end - cell.column) };
    faults.add(
      'push without chord',
      place,
      'a chord directly after >, without a space',
      next && place.text !== '>' && isReadable(next.text) ? `>${next.text}` : null,
    );
    return false;
  });
  const { bare, slots, each } = division(meter, ticks);
  const slashed = words.some((word) => word.text === '/');
  const slot = slashed
    ? slots.find((length) => words.length * length === ticks)
    : bare.includes(words.length)
      ? ticks / words.length
      : undefined;
  if (slot === undefined && words.length > 0) {
    const readable = words.every(({ text }) => isReadable(text.replace(/^>/, '')));
    const counts = slots.map((length) => ticks / length);
    if (slashed)
      faults.add(
        'slash count',
        cell,
        `${counts.join(' or ')} words in a bar with slashes, one for each ${each}`,
        readable ? slashesFor(words, counts[0] ?? 4) : null,
      );
    else
      faults.add(
        'chord count',
        cell,
        `${bare.join(', ').replace(/, (\d)$/, ' or $1')} chords in the bar, or a / for every ${each} that holds the chord before it`,
        readable ? barsFor(words, meter, ticks) : null,
      );
  }
  const chords: WrittenChord[] = [];
  words.forEach((word, index) => {
    if (word.text === '/') return;
    const push = word.text.startsWith('>');
    const symbol = push ? word.text.slice(1) : word.text;
    const place: Place = push ? { line: word.line, column: word.column + 1, text: symbol } : word;
    const tick = Math.round(index * (slot ?? ticks / words.length));
    if (isNoChord(symbol)) {
      if (push) faults.add('push without chord', word, 'a chord after >', '>C');
      chords.push({ tick, chord: null, symbol, push: false });
      return;
    }
    const chord = symbolToChord(place, words.length === 1 && !push ? KEYWORDS.alone : slashed ? KEYWORDS.slashed : KEYWORDS.among, faults);
    if (chord) chords.push({ tick, chord, symbol, push });
  });
  return chords;
}

function symbolToChord(place: Place, keywords: readonly string[], faults: FaultList): Chord | null {
  const symbol = place.text;
  if (symbol.length > MAX_SYMBOL_LENGTH) {
    faults.add('symbol too long', place, `a chord symbol of at most ${MAX_SYMBOL_LENGTH} characters`);
    return null;
  }
  if (faults.full) return null;
  const result = readChord(symbol);
  if (result.ok) return result.value;
  const fault = result.faults[0];
  faults.add(
    'unknown chord',
    place,
    fault?.expected ?? 'a chord symbol such as Dm7 or G7(b9)',
    nearest(symbol, keywords, symbol.length > 3 ? 2 : symbol.length > 1 ? 1 : 0) ?? fault?.nearest ?? null,
  );
  return null;
}

/** The words of a slashed bar filled up with slashes, or cut into several bars. */
function slashesFor(words: readonly Place[], count: number): string {
  const bars: string[] = [];
  for (let from = 0; from < Math.min(words.length, 32); from += count) {
    const bar = words.slice(from, from + count).map((word) => word.text);
    bars.push([...bar, ...Array<string>(count - bar.length).fill('/')].join(' '));
  }
  return bars.join(' | ');
}

/** A way to write bare chords that are too many (or three) for one bar. */
function barsFor(words: readonly Place[], meter: Meter, ticks: number): string {
  const names = words.slice(0, 32).map((word) => word.text);
  const inFour = meter === '4/4' && ticks === 1920;
  if (inFour && names.length === 3) return `${names[0]} / ${names[1]} ${names[2]}`;
  const most = inFour ? 4 : ticks === 1440 || ticks === 960 ? 2 : 1;
  const bars: string[][] = [];
  for (let from = 0; from < names.length; from += most) bars.push(names.slice(from, from + most));
  return bars.map((bar) => (inFour && bar.length === 3 ? `${bar[0]} / ${bar[1]} ${bar[2]}` : bar.join(' '))).join(' | ');
}
