import { join } from 'node:path';
import { packEntries, zipPack } from '../exchange/pack/make-pack';
import { PACK_KINDS, type PackOrder } from '../exchange/pack/pack-order';
import { PLAIN_LEVELS, PLAY_ALONGS } from '../exchange/wav/play-along';
import type { Chart } from '../music/chart/chart';
import { transposeChart } from '../music/chart/transpose-chart';
import { type ArrangeOptions, arrange } from '../music/score';
import { type HalfNotesPerMinute, halfNotesPerMinute, TEMPO_RANGE } from '../vocabulary';
import { ARRANGE_ROWS } from './arrange-options';
import { withChart } from './chart-commands';
import type { CommandLine, OptionRow } from './command-line';
import { OptionReader, orList, quoted } from './option-reader';
import { done, later, type Outcome, refused, type World } from './outcome';

/** The options of `pack`: those of `arrange` (but `--keys`, which here names the keys of the pack), and its own. */
export const PACK_ROWS: readonly OptionRow[] = [
  ...ARRANGE_ROWS.filter(({ name }) => name !== 'keys'),
  ...['keys', 'tempi', 'holds', 'parts', 'form', 'rate', 'out'].map((name) => ({ name, takes: 'value' as const })),
];
/** How they are written, for the list of commands. */
export const PACK_FORM =
  'CHART --out DIR|FILE.zip [--keys all|D,F,Bb] [--tempi 70,92] [--holds sheet,midi,musicxml,wav] [--parts full,without-piano,piano-only] [--form loop|once] [--rate 44100|48000], with the options of arrange';

/** Semitones from the chart's key to each of the twelve, the nearest way. */
const STEPS = [0, 1, 2, 3, 4, 5, 6, -5, -4, -3, -2, -1];

/**
 * `pack CHART --keys all --out DIR`: sheet, notes and play-alongs in many keys, as a folder, or as one zip where the name ends in `.zip`.
 * The sheets are printed by an installed browser; `--holds` without `sheet` needs none.
 */
export function packCommand(line: CommandLine, world: World): Outcome {
  const reader = new OptionReader(line.values);
  const out = reader.all('out').at(-1) ?? '';
  if (out === '' || out === '-') reader.faults.push('pack needs --out DIR or --out FILE.zip');
  const kinds = listOf(reader, 'holds', PACK_KINDS) ?? PACK_KINDS;
  const playAlongs = listOf(reader, 'parts', PLAY_ALONGS) ?? PLAY_ALONGS;
  const form = reader.oneOf('form', ['loop', 'once']) ?? 'loop';
  const rate = reader.oneOf('rate', ['44100', '48000']) === '48000' ? 48_000 : 44_100;
  const tempi = tempiOf(reader);
  const values = new Map([...line.values].filter(([name]) => name !== 'keys'));
  return withChart({ ...line, values }, world, reader.faults, false, (chart, options, text) => {
    const steps = stepsOf(reader.all('keys').at(-1), chart);
    if (typeof steps === 'string') return refused([steps]);
    const inKey = (semitones: number, closed: boolean) => arrange(chart, optionsIn(options, semitones, closed));
    const order: PackOrder = {
      scores: steps.map((semitones) => inKey(semitones, options.closed ?? true)),
      sounding: kinds.includes('wav') ? steps.map((semitones) => inKey(semitones, form === 'loop')) : [],
      tempi: tempi ?? [chart.tempo],
      kinds,
      playAlongs,
      form,
      levels: PLAIN_LEVELS,
      rate,
      date: world.today(),
    };
    return later(() => packTo(out, order, world, (key) => [text, optionsIn(options, steps[key] ?? 0, options.closed ?? true)]));
  });
}

const optionsIn = (options: ArrangeOptions, semitones: number, closed: boolean): ArrangeOptions => ({
  ...options,
  closed,
  transpose: (options.transpose ?? 0) + semitones,
});

async function packTo(
  out: string,
  order: PackOrder,
  world: World,
  sheetOf: (key: number) => readonly [text: string, options: ArrangeOptions],
): Promise<Outcome> {
  const sounds = order.kinds.includes('wav') ? await world.sounds() : null;
  if (sounds?.ok === false) return refused(sounds.faults);
  const printer = order.kinds.includes('sheet') ? await world.sheetPrinter() : null;
  if (printer?.ok === false) return refused([`${printer.faults[0]}; or leave the sheets out with --holds midi,musicxml,wav`]);
  try {
    const entries = packEntries(order, {
      sounds: () => {
        if (sounds === null) throw new Error('play-alongs need sounds');
        return sounds.value;
      },
      sheet: async (key) => (await printer?.value.print(...sheetOf(key))) ?? new Uint8Array(),
    });
    if (/\.zip$/i.test(out)) {
      const written = await world.writePieces(out, zipPack(entries, new Date(`${order.date}T12:00:00`)));
      return written.ok ? done(`${out}\n`) : refused(written.faults);
    }
    for (const { name, pieces } of entries) {
      const path = join(out, name);
      const folder = world.makeFolder(join(path, '..'));
      if (!folder.ok) return refused(folder.faults);
      const written = await world.writePieces(path, await pieces());
      if (!written.ok) return refused(written.faults);
    }
    return done(entries.map(({ name }) => `${join(out, name)}\n`).join(''));
  } finally {
    await printer?.value.close();
  }
}

function listOf<Value extends string>(reader: OptionReader, name: string, allowed: readonly Value[]): readonly Value[] | null {
  const text = reader.all(name).at(-1);
  if (text === undefined) return null;
  const words = text.split(',').map((word) => word.trim());
  const wrong = words.find((word) => !allowed.some((value) => value === word));
  if (wrong !== undefined) reader.faults.push(`--${name} must list ${orList(allowed)}, got ${quoted(wrong)}`);
  return allowed.filter((value) => words.includes(value));
}

function tempiOf(reader: OptionReader): readonly HalfNotesPerMinute[] | null {
  const text = reader.all('tempi').at(-1);
  if (text === undefined) return null;
  const numbers = text.split(',').map(Number);
  const { from, to } = TEMPO_RANGE;
  const wrong = numbers.findIndex((tempo) => !(tempo >= from && tempo <= to));
  if (wrong < 0) return [...new Set(numbers)].map(halfNotesPerMinute);
  reader.faults.push(`--tempi must list numbers from ${from} to ${to}, got ${quoted(text.split(',')[wrong] ?? '')}`);
  return null;
}

/** The keys asked for, in semitones from the chart's own, or what is wrong with them in one line. */
function stepsOf(text: string | undefined, chart: Chart): readonly number[] | string {
  if (text === undefined) return [0];
  if (text === 'all') return STEPS;
  const keys = STEPS.map((semitones) => transposeChart(chart, semitones).key.tonic);
  const found = text.split(',').map((name) => ({ name, at: keys.findIndex((tonic) => samePitch(tonic, name.trim())) }));
  const wrong = found.find(({ at }) => at < 0);
  return wrong === undefined
    ? found.map(({ at }) => STEPS[at] ?? 0)
    : `--keys must be all, or list ${orList(keys)}, got ${quoted(wrong.name)}`;
}

/** Two names of one key, C# and Db. */
function samePitch(one: string, other: string): boolean {
  const place = (name: string): number => {
    const [, letter = '', sign = ''] = /^([A-G])([#b]?)$/.exec(name) ?? [];
    return letter === '' ? Number.NaN : ((LETTERS[letter] ?? 0) + (sign === '#' ? 1 : sign === 'b' ? 11 : 0)) % 12;
  };
  return place(one) === place(other);
}
const LETTERS: Readonly<Record<string, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };
