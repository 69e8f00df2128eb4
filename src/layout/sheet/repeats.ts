/**
 * Repeated passages written once. A passage is found in the form as it sounds: the form goes back to a written bar that it played before. It is
 * folded only where all its passes are alike, note for note, with their ties, chords and sides (what rings into the very first pass may be missing there, as before every repeat); what differs at the ends of the passes becomes endings;
 * anything else stays written out.
 */
import type { SoundingBar } from '../../music/chart/chart';
import type { EndingMark, NotatedBar, Notation } from '../notation/notation';
import { barContent, standsFor } from './bar-content';

/** A passage to fold, in indexes of the notation's bars: the passes, each from its first bar to the one after its last, and how many bars they share. */
interface Passage {
  readonly passes: readonly (readonly [number, number])[];
  readonly shared: number;
}

/** The shortest body that is worth repeat signs, in bars. */
const SHORTEST = 2;
/** The longest ending, in bars, and the share of a pass that endings may take. */
const LONGEST_ENDING = 4;

/** The notation with its repeats folded. `bars` are the sounding bars it was made from. */
export function foldRepeats(notation: Notation, bars: readonly SoundingBar[]): Notation {
  const contents = notation.bars.map(barContent);
  const writtenBars = new Map(bars.map((bar) => [bar.index, bar.writtenBar]));
  const written = notation.bars.map((bar) => writtenBars.get(bar.index) ?? -1);
  const printed: NotatedBar[] = [];
  for (let at = 0; at < notation.bars.length; ) {
    const passage = passageAt(at, written, contents, notation.bars);
    if (!passage) {
      printed.push(notation.bars[at] as NotatedBar);
      at++;
      continue;
    }
    printed.push(...foldedBars(passage, notation.bars));
    at = passage.passes.at(-1)?.[1] ?? at + 1;
  }
  const folded = printed.length < notation.bars.length;
  return { ...notation, bars: printed, ends: folded && notation.ends === 'repeat' ? 'da capo' : notation.ends };
}

/** The passage that begins at a bar and is played again at once, or null. */
function passageAt(at: number, written: readonly number[], contents: readonly string[], bars: readonly NotatedBar[]): Passage | null {
  const back = written.indexOf(written[at] ?? -1, at + 1);
  const length = back - at;
  if (back < 0 || length < SHORTEST || !rising(written, at, back)) return null;
  const passes: [number, number][] = [[at, back]];
  let shared = length;
  for (let start = back; written[start] === written[at]; ) {
    const again = standsFor(bars[at] as NotatedBar, bars[start] as NotatedBar) ? commonBars(contents, at, start, length) : 0;
    if (again < SHORTEST || length - again > LONGEST_ENDING) break;
    const more = start + length;
    // A last ending runs on as long as the others, or to the end of its section.
    const end = again === length ? more : endOfEnding(start + again, length - again, written, bars);
    passes.push([start, end]);
    shared = Math.min(shared, again);
    if (end - start !== length) break;
    start = end;
  }
  const fits = passes.length > 1 && shared >= SHORTEST && passes.every(([from, to], i) => i === 0 || to - from >= shared);
  return fits ? { passes, shared } : null;
}

/** Written bars go on without a jump in [from, to). */
const rising = (written: readonly number[], from: number, to: number): boolean =>
  written.slice(from + 1, to).every((bar, i) => bar >= (written[from + i] ?? 0));

function commonBars(contents: readonly string[], one: number, other: number, most: number): number {
  let common = 0;
  while (common < most && contents[one + common] === contents[other + common]) common++;
  return common;
}

function endOfEnding(from: number, most: number, written: readonly number[], bars: readonly NotatedBar[]): number {
  let to = from;
  while (
    to < bars.length &&
    to - from < most &&
    (to === from || bars[to]?.sectionStart === null) &&
    (to === from || (written[to] ?? -1) > (written[to - 1] ?? -1))
  )
    to++;
  return to;
}

function foldedBars({ passes, shared }: Passage, bars: readonly NotatedBar[]): NotatedBar[] {
  const [first] = passes[0] ?? [0, 0];
  const endings = passes.map(([from, to]) => [from + shared, to] as const);
  const alike = endings.every(([from, to]) => from === to);
  const body = bars.slice(first, first + shared).map((bar, i) => ({
    ...bar,
    repeat: { start: i === 0, end: alike && i === shared - 1 ? passes.length : null },
  }));
  if (alike) return body;
  // Passes that end alike share an ending.
  const different: { from: number; to: number; passes: number[] }[] = [];
  endings.forEach(([from, to], pass) => {
    const text = (a: number, b: number): string => bars.slice(a, b).map(barContent).join();
    const same = different.find((one) => text(one.from, one.to) === text(from, to) && one.passes.at(-1) === pass);
    if (same) same.passes.push(pass + 1);
    else different.push({ from, to, passes: [pass + 1] });
  });
  return [
    ...body,
    ...different.flatMap(({ from, to, passes: which }, i) => {
      const last = i === different.length - 1;
      return bars.slice(from, to).map((bar, n, all): NotatedBar => {
        const closing = n === all.length - 1;
        const ending: EndingMark = { passes: which, opens: n === 0, closes: closing && !last, last: closing };
        return { ...bar, ending, repeat: { start: false, end: closing && !last ? which.length + 1 : null } };
      });
    }),
  ];
}
