import { fullBarTicks, type Meter } from '../../vocabulary';
import type { BarContent, Hit, WrittenBar } from './chart';
import type { FaultList, Place } from './faults';
import { MAX_REST_BARS } from './limits';
import { nearest } from './nearest';
import { readChords } from './read-chords';
import { readHits } from './read-hits';
import { type BarToken, splitBar } from './split-bar';

/** The marks of a form, as they stand between `<` and `>`. */
export const MARKS = ['segno', 'coda', 'to coda', 'fine', 'D.S. al coda', 'D.C. al fine', 'D.S. al fine', 'D.C. al coda'] as const;
export type Mark = (typeof MARKS)[number];

/** How a bar of half the length is typed. */
export const halfBar = (meter: Meter): string => (meter === '6/8' ? '(3/8)' : '(2/4)');

/** What stands in a bar, without what its barlines and the bars around it add. */
export type BarBody = Pick<WrittenBar, 'content' | 'source' | 'hits' | 'ticks' | 'pickup' | 'marks'>;

/** Reads what stands between two barlines. A cell that holds marks alone has no `body`. */
export function readBar(cell: Place, meter: Meter, faults: FaultList): { body: BarBody | null; marks: Mark[] } {
  const { word: words, mark: markPlaces, length: lengths, hits: hitPlaces, unclosed } = tokensOf(cell);
  for (const { kind, place } of unclosed)
    faults.add('not closed', place, `a closing bracket: ${place.text.slice(0, 20)}${kind === 'hits' ? '}' : kind === 'mark' ? '>' : ')'}`);
  const marks = markPlaces.flatMap((place) => readMark(place, faults) ?? []);
  const marksAlone = words.length + lengths.length + hitPlaces.length === 0 && unclosed.every(({ kind }) => kind === 'mark');
  if (marksAlone) return { body: null, marks };

  let ticks = fullBarTicks(meter);
  let pickup = false;
  for (const place of lengths) {
    const inside = place.text.slice(1, -1).trim().toLowerCase();
    if (inside === 'pickup') pickup = true;
    else if (`(${inside.replace(/\s/g, '')})` === halfBar(meter)) ticks = fullBarTicks(meter) / 2;
    else
      faults.add(
        'unknown bar length',
        place,
        `${halfBar(meter)} for a bar of half the length, or (pickup); brackets of a chord symbol follow it without a space`,
        nearest(place.text, [halfBar(meter), '(pickup)'], 3),
      );
  }
  const { content, filled } = readContent(words, cell, meter, ticks, faults);
  for (const extra of hitPlaces.slice(1)) faults.add('stands alone', extra, 'all hits of a bar in one pair of braces');
  const hits: Hit[] = hitPlaces[0] ? readHits(hitPlaces[0], meter, ticks, faults) : [];
  if (!filled && hitPlaces.length === 0 && unclosed.length === 0)
    faults.add('empty bar', cell, 'a chord, %, N.C. or stop in every bar', '%');
  if (content.kind === 'rest' && hits.length > 0 && hitPlaces[0])
    faults.add('stands alone', hitPlaces[0], 'hits in a bar of chords or beside stop, not in a rest', null);
  if (content.kind === 'repeat' && content.bars === 2 && hitPlaces[0])
    faults.add('stands alone', hitPlaces[0], 'hits in a bar of their own, not beside %%');
  if (content.kind === 'repeat' && ticks !== fullBarTicks(meter))
    faults.add('stands alone', cell, `% in a whole bar: it takes the length of the bar it repeats`, cell.text.replace(/\([^)]*\)\s*/, ''));
  return { body: { content, source: words.map((word) => word.text).join(' '), hits, ticks, pickup, marks }, marks };
}

type Tokens = Readonly<Record<BarToken['kind'], readonly Place[]>> & { readonly unclosed: readonly BarToken[] };

/** The tokens of a bar by their kind; those whose bracket never closes apart. */
function tokensOf(cell: Place): Tokens {
  const found = { word: [] as Place[], mark: [] as Place[], length: [] as Place[], hits: [] as Place[], unclosed: [] as BarToken[] };
  for (const token of splitBar(cell)) {
    if (token.closed) found[token.kind].push(token.place);
    else found.unclosed.push(token);
  }
  return found;
}

function readContent(
  words: readonly Place[],
  cell: Place,
  meter: Meter,
  ticks: number,
  faults: FaultList,
): { content: BarContent; filled: boolean } {
  const filled = words.length > 0;
  const alone = (word: Place, content: BarContent): { content: BarContent; filled: boolean } => {
    if (words.length > 1)
      faults.add(
        'stands alone',
        cell,
        `${word.text} alone in its bar`,
        words
          .map((one) => one.text)
          .slice(0, 32)
          .join(' | '),
      );
    return { content, filled };
  };
  for (const word of words) {
    if (word.text === '%') return alone(word, { kind: 'repeat', bars: 1 });
    if (word.text === '%%') return alone(word, { kind: 'repeat', bars: 2 });
    if (/^stop$/i.test(word.text)) return alone(word, { kind: 'stop' });
    if (/^rests?\d*$/i.test(word.text)) return { content: { kind: 'rest', bars: restBars(words, cell, faults) }, filled };
  }
  return { content: { kind: 'chords', chords: readChords(words, cell, meter, ticks, faults) }, filled };
}

function restBars(words: readonly Place[], cell: Place, faults: FaultList): number {
  const typed = words.map((word) => word.text).join(' ');
  const match = /^rest(?: (\d{1,9}))?$/i.exec(typed);
  const bars = match ? Number(match[1] ?? 1) : 0;
  if (bars >= 1 && bars <= MAX_REST_BARS) return bars;
  const digits = /\d+/.exec(typed)?.[0];
  faults.add(
    'unknown rest',
    cell,
    `rest and a number of bars from 1 to ${MAX_REST_BARS}: rest 8`,
    digits && Number(digits) >= 1 && Number(digits) <= MAX_REST_BARS ? `rest ${Number(digits)}` : 'rest 8',
  );
  return 1;
}

function readMark(place: Place, faults: FaultList): Mark | null {
  const inside = place.text.slice(1, -1).trim().replace(/\s+/g, ' ');
  const plain = (text: string): string => text.toLowerCase().replace(/[.\s]/g, '');
  const mark = MARKS.find((known) => plain(known) === plain(inside));
  if (mark) return mark;
  const near = nearest(inside, MARKS, 5);
  faults.add('unknown mark', place, MARKS.map((known) => `<${known}>`).join(' '), near === null ? null : `<${near}>`);
  return null;
}
