import type { Chord } from '../../src/music/chord/chord';
import { readChord } from '../../src/music/chord/read';
import type { Score } from '../../src/music/score';

/**
 * The harmony of a score read from its bars alone, as a reader of the JSON would: written independently of the engine's own
 * timeline, so that the checks do not compare the engine with itself.
 */
export class HarmonyOfScore {
  private readonly starts: { readonly tick: number; readonly symbol: string }[] = [];
  private readonly barriers: number[] = [];

  constructor(private readonly score: Score) {
    for (const bar of score.bars) {
      const chords = bar.playing === 'band' ? bar.chords : [{ tick: bar.tick, symbol: 'N.C.', push: false, chord: null }];
      for (const { tick, symbol, push } of chords) {
        this.starts.push({ tick, symbol });
        if (push) this.barriers.push(tick - 240);
        if (symbol === 'N.C.') this.barriers.push(tick);
      }
      for (const hit of bar.hits) this.barriers.push(bar.tick + hit.step * 240);
    }
    if (!score.closed) this.barriers.push(score.toTick);
    else if (score.bars[0] && (score.bars[0].playing !== 'band' || score.bars[0].hits.some(({ step }) => step === 0)))
      this.barriers.push(score.toTick);
  }

  private wrapped(tick: number): number {
    const { fromTick, toTick, closed } = this.score;
    return closed && tick >= toTick ? fromTick + ((tick - fromTick) % (toTick - fromTick)) : tick;
  }

  /** Symbol of the chord written at or before a tick. */
  symbolAt(tick: number): string {
    const at = this.wrapped(tick);
    let found = 'N.C.';
    for (const { tick: start, symbol } of this.starts) {
      if (start > at) break;
      found = symbol;
    }
    return found;
  }

  /** True when a chord is written exactly there. */
  writtenAt(tick: number): boolean {
    const at = this.wrapped(tick);
    return this.starts.some(({ tick: start }) => start === at);
  }

  /** True when the chord at a tick differs from the one a step before. */
  changesAt(tick: number): boolean {
    return this.symbolAt(tick) !== this.symbolAt(tick - 240);
  }

  barred(tick: number, lead: number): boolean {
    return this.barriers.some((barrier) => barrier > tick && barrier <= tick + lead);
  }

  /** Runs of one chord, in ticks: [from, to). Chords that go on over the seam count as two. */
  spans(): { readonly from: number; readonly to: number; readonly symbol: string; readonly chord: Chord }[] {
    const runs: { from: number; symbol: string }[] = [];
    for (const { tick, symbol } of this.starts) if (runs.at(-1)?.symbol !== symbol) runs.push({ from: tick, symbol });
    return runs.flatMap((run, index) => {
      const read = run.symbol === 'N.C.' ? null : readChord(run.symbol);
      return read?.ok ? [{ ...run, to: runs[index + 1]?.from ?? this.score.toTick, chord: read.value }] : [];
    });
  }
}

/** Reads a symbol that must be sound. */
export function chordNamed(symbol: string): Chord {
  const read = readChord(symbol);
  if (!read.ok) throw new Error(`${symbol}: ${JSON.stringify(read.faults)}`);
  return read.value;
}
