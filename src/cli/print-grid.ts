import type { SoundingBar } from '../music/chart/chart';
import { keyName } from '../music/pitch/key';
import type { Score } from '../music/score';
import { type BassStroke, type PianoRole, type PianoStroke, TICKS_PER_STEP } from '../vocabulary';
import { alignmentSentence } from '../words/alignment-sentence';
import { NOTICES } from '../words/notice';

/** Width of the names at the left, and least width of a step. */
const LABEL = 9;
const LEAST_STEP = 5;

const ROLE_LETTERS: Readonly<Record<PianoRole, string>> = { octave: 'O', inner: 'i', chord: 'c', single: 's', approach: 'a' };
const LEGEND = "O octave, i inner notes, c both, s single note, a approach; ' takes its chord early; * first time only";

/** The score as text: one block for each clave cycle with counts, chords, clave, both hands and bass, one column a step. */
export function printGrid(score: Score): string {
  const width = stepWidth(score);
  const blocks = cyclesOf(score.bars).map((bars) => cycleBlock(score, bars, width));
  const notices = score.notices.map((notice) => `! ${NOTICES.sentence(notice)}`);
  return `${[heading(score), ...blocks, [...notices, LEGEND].join('\n')].join('\n\n')}\n`;
}

function heading(score: Score): string {
  const { title, key, clave, tempo, style, level, alignment } = score;
  const facts = [title, keyName(key), `${clave.kind} ${clave.direction}`, `half = ${tempo}`, style, `level ${level}`].filter(
    (fact) => fact !== '',
  );
  return `${facts.join(' · ')}\n${alignment.verdict ?? 'states'}: ${alignmentSentence(alignment)}`;
}

/** Bars of one clave cycle together; a restart or a bar that begins a cycle opens the next. */
function cyclesOf(bars: readonly SoundingBar[]): readonly (readonly SoundingBar[])[] {
  const cycles: SoundingBar[][] = [];
  for (const bar of bars) {
    const open = cycles.at(-1);
    if (!open || bar.cycleStep === 0 || bar.restart) cycles.push([bar]);
    else open.push(bar);
  }
  return cycles;
}

function cycleBlock(score: Score, bars: readonly SoundingBar[], width: number): string {
  const from = bars[0]?.tick ?? 0;
  const to = bars.reduce((end, bar) => Math.max(end, bar.tick + bar.ticks), from);
  const within = <Event extends { readonly tick: number }>(events: readonly Event[]): readonly Event[] =>
    events.filter(({ tick }) => tick >= from && tick < to);
  const row = (name: string, texts: ReadonlyMap<number, string>): string => printRow(name, bars, width, texts);
  const { parts } = score;
  const [right, left, bass] = [within(parts.rightHand), within(parts.leftHand), within(parts.bass)];
  return [
    bars.map(barTitle).join(' | '),
    row('count', counts(bars)),
    row(
      'chords',
      new Map(bars.flatMap(({ chords }) => chords.map(({ tick, symbol, push }) => [tick, (push ? '>' : '') + symbol] as const))),
    ),
    row('clave', marks(within(parts.clave))),
    ...Object.entries(parts.percussion).map(([name, part]) => row(name, marks(within(part)))),
    row('right', new Map(right.map((stroke) => [stroke.tick, ROLE_LETTERS[stroke.role] + (stroke.leadTicks > 0 ? "'" : '')]))),
    ...noteRows(right).map((texts) => row('', texts)),
    ...noteRows(left).map((texts, index) => row(index === 0 ? 'left' : '', texts)),
    ...noteRows(bass).map((texts, index) => row(index === 0 ? 'bass' : '', texts)),
  ].join('\n');
}

function barTitle(bar: SoundingBar): string {
  const kind =
    bar.playing === 'nobody' ? ', stop' : bar.playing === 'rhythm' ? ', rhythm alone' : bar.kind === 'groove' ? '' : `, ${bar.kind}`;
  return `${bar.section}: bar ${bar.index + 1}, ${bar.side}-side${bar.restart ? ', clave restarts' : ''}${kind}`;
}

const steps = (bar: SoundingBar): readonly number[] => Array.from({ length: Math.ceil(bar.ticks / TICKS_PER_STEP) }, (_, step) => step);
const isSixEight = (bar: SoundingBar): boolean => bar.ticks % 720 === 0 && bar.ticks % 960 !== 0;

const counts = (bars: readonly SoundingBar[]): ReadonlyMap<number, string> =>
  new Map(
    bars.flatMap((bar) =>
      steps(bar).map((step) => [
        bar.tick + step * TICKS_PER_STEP,
        isSixEight(bar) ? String(step + 1) : step % 2 === 0 ? String(step / 2 + 1) : '&',
      ]),
    ),
  );

const marks = (events: readonly { readonly tick: number }[]): ReadonlyMap<number, string> => new Map(events.map(({ tick }) => [tick, 'x']));

/** Note names stacked, highest first: as many rows as the fullest stroke has notes. */
function noteRows(strokes: readonly (PianoStroke | BassStroke)[]): readonly ReadonlyMap<number, string>[] {
  const most = strokes.reduce((count, { names }) => Math.max(count, names.length), 0);
  return Array.from({ length: most }, (_, row) => {
    const named = strokes.flatMap(({ tick, names, firstPassOnly }) => {
      const name = names[names.length - 1 - row];
      return name === undefined ? [] : [[tick, name + (firstPassOnly ? '*' : '')] as const];
    });
    return new Map(named);
  });
}

function printRow(name: string, bars: readonly SoundingBar[], width: number, texts: ReadonlyMap<number, string>): string {
  const printed = bars.map((bar) => {
    const columns = steps(bar).length * width;
    const line = Array.from({ length: columns }, () => ' ');
    for (const step of steps(bar)) line[step * width] = name === 'clave' ? '.' : ' ';
    for (const [tick, text] of texts) {
      if (tick < bar.tick || tick >= bar.tick + bar.ticks) continue;
      const column = Math.floor(((tick - bar.tick) / TICKS_PER_STEP) * width);
      for (const [index, sign] of [...text].entries()) if (column + index < columns) line[column + index] = sign;
    }
    return line.join('');
  });
  return `${name.padEnd(LABEL)}${printed.join('| ')}`.trimEnd();
}

/** Wide enough that no chord symbol runs into the next one or out of its bar, and that sixteenths stand side by side. */
function stepWidth({ bars, parts }: Score): number {
  const halved = [...parts.rightHand, ...parts.leftHand].some(({ tick }) => tick % TICKS_PER_STEP !== 0);
  const needs = bars.flatMap((bar) =>
    bar.chords.map(({ tick, symbol, push }, index) => {
      const room = ((bar.chords[index + 1]?.tick ?? bar.tick + bar.ticks) - tick) / TICKS_PER_STEP;
      return Math.ceil((symbol.length + (push ? 1 : 0) + 1) / Math.max(1, room));
    }),
  );
  return Math.max(halved ? 2 * LEAST_STEP : LEAST_STEP, ...needs);
}
