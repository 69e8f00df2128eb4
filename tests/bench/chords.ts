import { Chord as OtherReader } from 'tonal';
import { readChord } from '../../src/music/chord/read';
import { PUBLISHED_SYMBOLS } from '../music/chord/published-symbols';
import { mediansMs, overFloor, type Results } from './measure';

const ROOTS = ['C', 'D', 'E', 'F', 'G', 'A', 'B', 'Db', 'Eb', 'Gb', 'Ab', 'Bb', 'C#', 'F#', 'G#', 'A#', 'D#'];
const BASSES = ['', '/D', '/E', '/A', '/F', '/Bb'];

/**
 * Reading chord symbols against plain tonal on the same symbols: the published ones that both read, on 17 roots and over six basses. Ours keeps
 * the last 4,096; going round more than that, none is found again, so `readChordNs` is reading afresh and `readChordAgainNs` is the common case.
 */
export function measureChords(): Results {
  const suffixes = [...new Set(PUBLISHED_SYMBOLS.filter(({ symbol }) => /^C[^/]*$/.test(symbol)).map(({ symbol }) => symbol.slice(1)))];
  const symbols = BASSES.flatMap((bass) => ROOTS.flatMap((root) => suffixes.map((suffix) => root + suffix + bass))).filter(
    (symbol) => readChord(symbol).ok && !OtherReader.get(symbol).empty,
  );
  const [ours, plain] = mediansMs(
    () => symbols.map((symbol) => readChord(symbol)),
    () => symbols.map((symbol) => OtherReader.get(symbol)),
    15,
  );
  const few = symbols.slice(0, 500);
  few.map(readChord);
  const [again] = mediansMs(
    () => few.map(readChord),
    () => 0,
    100,
  );
  const ns = (ms: number, of: readonly string[]): number => (ms * 1e6) / of.length;
  return {
    readChordNs: overFloor(ns(ours, symbols), ns(plain, symbols), 'Chord.get of tonal on the same symbols (a library, no true floor)'),
    readChordAgainNs: ns(again, few),
    readChordOverTonal: ours / plain,
    chordSymbolsCompared: symbols.length,
  };
}
