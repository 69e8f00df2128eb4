import type { SoundingBar } from '../../music/chart/chart';
import { type PianoStroke, TICKS_PER_STEP } from '../../vocabulary';
import type { ChordMark } from './cards';
import { between } from './ringing';

/** A change of chord: where it is written and where it is first played, in ticks. */
export interface ChordChange {
  readonly symbol: string;
  readonly written: number;
  /** At most a beat before `written`; equal to it when nothing takes the chord early. */
  readonly played: number;
}

/** The longest that a stroke looks ahead: a quarter note. */
const LONGEST_LEAD = 480;

/**
 * Every change of chord in some bars, with the place where the piano first plays it: the earliest stroke that is struck before
 * the chord is written and looks ahead far enough to reach it. In a closed form the first chord comes again at the end.
 */
export function chordChanges(bars: readonly SoundingBar[], piano: readonly PianoStroke[], closed: boolean): readonly ChordChange[] {
  const written: { symbol: string; tick: number; push: boolean }[] = [];
  for (const bar of bars) {
    for (const chord of bar.chords) if (written.at(-1)?.symbol !== chord.symbol) written.push(chord);
  }
  const last = bars.at(-1);
  const first = written[0];
  if (closed && last && first && written.at(-1)?.symbol !== first.symbol) written.push({ ...first, tick: last.tick + last.ticks });
  return written.map(({ symbol, tick, push }, at) => {
    const since = Math.max(written[at - 1]?.tick ?? Number.NEGATIVE_INFINITY, tick - LONGEST_LEAD);
    const early = between(piano, (stroke) => stroke.tick, since, tick).find((stroke) => stroke.tick + stroke.leadTicks >= tick);
    return { symbol, written: tick, played: early?.tick ?? (push && tick > 0 ? tick - TICKS_PER_STEP : tick) };
  });
}

/** The chord symbols of one panel: those played in it, echoes of those played before it, or the one still in force. */
export function chordMarks(changes: readonly ChordChange[], bar: SoundingBar): readonly ChordMark[] {
  const end = bar.tick + bar.ticks;
  const step = (tick: number) => (tick - bar.tick) / TICKS_PER_STEP;
  const marks: ChordMark[] = [];
  // A chord is played at most a beat before it is written.
  for (const change of between(changes, (each) => each.written, bar.tick, end + LONGEST_LEAD)) {
    const here = change.played >= bar.tick && change.played < end;
    if (here)
      marks.push({
        symbol: change.symbol,
        kind: 'played',
        step: step(change.played),
        tieTo: change.written > change.played ? step(change.written) : null,
      });
    else if (change.written >= bar.tick && change.written < end)
      marks.push({ symbol: change.symbol, kind: 'echo', step: step(change.written), tieTo: null });
  }
  const inForce = between(changes, (change) => change.written, Number.NEGATIVE_INFINITY, bar.tick + 1).at(-1);
  if (inForce && !marks.some((mark) => mark.step <= 0)) marks.unshift({ symbol: inForce.symbol, kind: 'carried', step: 0, tieTo: null });
  return marks;
}
