import { assert } from '../../vocabulary';
import { readChord } from '../chord/read';
import { transposeSymbol } from '../chord/transpose';
import { type Key, transposeKey } from '../pitch/key';
import type { BarContent, Chart, Section, WrittenBar, WrittenChord } from './chart';

/**
 * The chart `semitones` higher (negative: lower): its key, the keys of its sections and every chord respelled for the key they stand in,
 * suffixes as typed. Everything else stays, and the result can be written out and read again. Throws on a fraction.
 */
export function transposeChart(chart: Chart, semitones: number): Chart {
  assert(Number.isInteger(semitones), `charts move by whole semitones, got ${semitones}`);
  if (semitones % 12 === 0) return chart;
  const key = transposeKey(chart.key, semitones);
  return { ...chart, key, sections: chart.sections.map((section) => transposeSection(section, semitones, key)) };
}

function transposeSection(section: Section, semitones: number, chartKey: Key): Section {
  const key = section.key && transposeKey(section.key, semitones);
  return { ...section, key, bars: section.bars.map((bar) => transposeBar(bar, semitones, key ?? chartKey)) };
}

function transposeBar(bar: WrittenBar, semitones: number, key: Key): WrittenBar {
  if (bar.content.kind !== 'chords') return bar;
  const chords = bar.content.chords.map((written) => transposeWritten(written, semitones, key));
  const symbols = chords.map(({ symbol, push }) => (push ? `>${symbol}` : symbol));
  const content: BarContent = { kind: 'chords', chords };
  let next = 0;
  const source = bar.source.replace(/\S+/g, (word) => (word === '/' ? word : (symbols[next++] ?? word)));
  return { ...bar, content, source };
}

function transposeWritten(written: WrittenChord, semitones: number, key: Key): WrittenChord {
  if (!written.chord) return written;
  const symbol = transposeSymbol(written.chord, semitones, key);
  const read = readChord(symbol);
  assert(read.ok, `a transposed symbol can be read, got ${symbol} from ${written.symbol}`);
  return { ...written, symbol, chord: read.value };
}
