import { assess } from '../../practice/assess';
import type { Finding } from '../../practice/finding';
import { matchTake } from '../../practice/match';
import { EARLY_TICKS, type Recorded } from './takes';

/** A stretch, labelled and judged. */
export interface Judged {
  readonly matched: ReturnType<typeof matchTake>;
  readonly assessment: ReturnType<typeof assess>;
  /** Passes that what is said looks at, the judged one among them. */
  readonly together: number;
}

const MOST_SAID = 3;
/** What a pass that is clean by itself may still be told from the passes before it: time and touch, not notes that were mended since. */
const LASTING: ReadonlySet<Finding['facts']['kind']> = new Set([
  'rushing',
  'dragging',
  'swung',
  'step off',
  'uneven',
  'offset',
  'hands apart',
  'cut short',
  'inner loud',
]);

/**
 * Labels and judges a stretch. Whether it was clean is its own affair; what to work on is told from it and the passes before it, because
 * a loop of two bars is too short to tell the other side of the clave, or a tempo that creeps, from a slip.
 */
export function judgeStretch({ take, wide }: Recorded): Judged {
  const matched = matchTake(take);
  const assessment = assess(take, matched);
  if (wide === take) return { matched, assessment, together: 1 };
  const wideMatched = matchTake(wide);
  const seen = assess(wide, wideMatched);
  const all = assessment.clean ? seen.all.filter(({ facts }) => LASTING.has(facts.kind)) : seen.all;
  const { clean, shareRight } = assessment;
  return {
    matched: { ...wideMatched, strokes: wideMatched.strokes.filter(({ playTick }) => playTick >= take.fromPlayTick - EARLY_TICKS) },
    assessment: { ...seen, clean, shareRight, all, findings: all.slice(0, MOST_SAID) },
    together: Math.round((take.toPlayTick - wide.fromPlayTick) / (take.toPlayTick - take.fromPlayTick)),
  };
}
