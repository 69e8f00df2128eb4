import type { SoundingBar } from '../music/chart/chart';
import type { Score } from '../music/score';
import type { Stroke } from '../vocabulary';
import { printedChord } from '../words/spoken';
import { whyStroke } from '../words/why';

/** Every stroke of one bar of the score (its place in `score.bars`, from 0) as text: which hand, the notes, why. */
export function explainBar(score: Score, place: number): string {
  const bar = score.bars[place];
  if (!bar) throw new Error(`no bar ${place}, the score has ${score.bars.length}`);
  const { rightHand, leftHand, bass } = score.parts;
  const strokes = [...inBar('right hand', rightHand, bar), ...inBar('left hand', leftHand, bar), ...inBar('bass', bass, bar)];
  const told = strokes
    .sort((a, b) => a.stroke.tick - b.stroke.tick)
    .map(({ part, stroke }) => `${part}, ${stroke.names.join(' ')}: ${whyStroke(stroke, score.bars)}`);
  const chords = bar.chords.map(({ symbol }) => printedChord(symbol)).join(' ');
  const heading = `Bar ${bar.index + 1}, ${bar.section}, ${bar.side}-side: ${chords}`;
  return `${[heading, ...(told.length > 0 ? told : ['Nothing is struck in this bar.'])].join('\n')}\n`;
}

const inBar = (part: string, strokes: readonly Stroke[], { tick, ticks }: SoundingBar) =>
  strokes.filter((stroke) => stroke.tick >= tick && stroke.tick < tick + ticks).map((stroke) => ({ part, stroke }));
