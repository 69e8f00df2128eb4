import type { Score } from '../../music/score';
import type { Level } from '../../vocabulary';
import { notate } from '../notation/notate';
import type { Notation } from '../notation/notation';
import { foldRepeats } from './repeats';
import type { Extent, SheetChoice } from './sheet-choice';
import { blankHands, type CrossedTask, crossedTask, missingTicks, withGaps } from './worksheet';

/** The scores that a sheet may need. `loop` is what is looped, or null. */
export interface SheetScores {
  readonly whole: Score;
  readonly loop: Score | null;
  readonly other: Score | null;
  readonly variation: Score | null;
  readonly levels: readonly Score[];
}

/** The music of a sheet, each as it is to be printed (repeats folded, cut to its extent). What is null is left out. */
export interface SheetMusic {
  readonly main: Notation;
  readonly other: Notation | null;
  readonly variation: Notation | null;
  readonly levels: readonly { readonly level: Level; readonly notation: Notation }[];
  /** The worksheet's music with its gaps, and the crossed bars where that is the task. */
  readonly task: Notation | null;
  readonly crossed: CrossedTask | null;
}

/** The score that an extent asks for: the loop where there is one, else the whole form. */
const scoreIn = ({ whole, loop }: Pick<SheetScores, 'whole' | 'loop'>, extent: Extent): Score => (extent === 'loop' && loop ? loop : whole);

/** A score as it is printed: written in the chosen habit, cut to its extent, repeats folded. */
function printedNotation(score: Score, choice: Pick<SheetChoice, 'habit' | 'fingering'>, extent: Extent): Notation {
  const notation = notate(score, { habit: choice.habit, fingering: choice.fingering });
  const section = score.form.visits.find((visit) => visit.toBar > (score.bars[0]?.index ?? 0));
  if (extent !== 'first section' || !section || section.toBar > (score.bars.at(-1)?.index ?? 0)) return foldRepeats(notation, score.bars);
  const bars = notation.bars.filter((bar) => bar.index < section.toBar);
  return foldRepeats({ ...notation, bars, ends: 'final' }, score.bars);
}

/** All the music of a sheet of one kind, and only that: what its kind or the reader leaves out is not notated. */
export function sheetMusic(scores: SheetScores, choice: SheetChoice): SheetMusic {
  const kind = choice.kind === 'list' ? 'lesson' : choice.kind;
  const extent = choice.extents[kind];
  const score = scoreIn(scores, extent);
  const main = printedNotation(score, choice, extent);
  const also = (other: Score | null, wanted: boolean): Notation | null =>
    kind === 'lesson' && wanted && other ? printedNotation(other, choice, 'whole') : null;
  const written =
    kind === 'worksheet' && choice.task !== 'crossed' ? printedNotation(score, { ...choice, fingering: 'none' }, extent) : null;
  return {
    main,
    other: also(scores.other, choice.parts.other),
    variation: also(scores.variation, choice.parts.variation),
    levels: kind === 'levels' ? scores.levels.map((one) => ({ level: one.level, notation: printedNotation(one, choice, extent) })) : [],
    task: written && (choice.task === 'blank' ? blankHands(written) : withGaps(written, missingTicks(score))),
    crossed: kind === 'worksheet' && choice.task === 'crossed' ? crossedTask(score, notate(score), 0) : null,
  };
}
