import { writeMidi } from '../exchange/midi/write-midi';
import { writeMusicXml } from '../exchange/musicxml/write-musicxml';
import { writeMxl } from '../exchange/musicxml/write-mxl';
import type { ArrangeOptions, Score } from '../music/score';
import { feelNamed } from '../performance/feel';
import { withScore } from './chart-commands';
import type { CommandLine, OptionRow } from './command-line';
import { exportWav, readWavChoice, WAV_ROWS } from './export-wav';
import { OptionReader } from './option-reader';
import { done, later, type Outcome, refused, type World } from './outcome';

const FORMATS = ['midi', 'musicxml', 'wav', 'sheet'] as const;
const FEELS = ['straight', 'measured'] as const;

/** The options of `export` beside those of `arrange`. */
export const EXPORT_ROWS: readonly OptionRow[] = [
  ...['format', 'out', 'feel'].map((name) => ({ name, takes: 'value' as const })),
  ...WAV_ROWS,
];

/**
 * `export CHART --format … --out FILE`: writes a file to take along. A MusicXML file whose name ends in `.mxl` is compressed; `--feel measured`
 * moves the notes of a MIDI file off the grid as a measured band did.
 */
export function exportCommand(line: CommandLine, world: World): Outcome {
  const reader = new OptionReader(line.values);
  const format = reader.oneOf('format', FORMATS);
  const feel = reader.oneOf('feel', FEELS);
  const out = reader.all('out').at(-1);
  if (!reader.has('format')) reader.faults.push('export needs --format midi, musicxml, wav or sheet');
  if (out === undefined || out === '' || out === '-') reader.faults.push('export needs --out FILE');
  if (feel !== undefined && format !== undefined && format !== 'midi') reader.faults.push(`--feel is for --format midi, not ${format}`);
  const wav = readWavChoice(reader);
  const foreign = format === undefined || format === 'wav' ? undefined : WAV_ROWS.find(({ name }) => reader.has(name));
  if (foreign) reader.faults.push(`--${foreign.name} is for --format wav, not ${format}`);
  return withScore(line, world, reader.faults, false, (score, text, options) => {
    if (format === 'sheet') return exportSheet(text, options, out ?? '', world);
    if (format === 'wav') return exportWav(score, wav, out ?? '', world);
    const bytes = format === 'musicxml' ? musicXml(score, out ?? '', world) : writeMidi(score, { feel: feelNamed(feel ?? 'straight') });
    const written = world.writeBytes(out ?? '', bytes);
    return written.ok ? done('') : refused(written.faults);
  });
}

function musicXml(score: Score, out: string, world: World): Uint8Array {
  const xml = writeMusicXml(score, { encodingDate: world.today() });
  return /\.mxl$/i.test(out) ? writeMxl(xml) : new TextEncoder().encode(xml);
}

function exportSheet(text: string, options: ArrangeOptions, out: string, world: World): Outcome {
  return later(async () => {
    const printer = await world.sheetPrinter();
    if (!printer.ok) return refused(printer.faults);
    try {
      const written = world.writeBytes(out, await printer.value.print(text, options));
      return written.ok ? done('') : refused(written.faults);
    } finally {
      await printer.value.close();
    }
  });
}
