import { timingOf } from '../../state/journal/by-day';
import type { KeptRecord } from '../../state/journal/journal-state';
import { JOURNAL_WORDS } from '../../words/journal';
import { StepPictureView } from '../listening/StepPictureView';
import '../listening/listening.css';

/** One picture of where the strokes of the last judged passes fell. */
export function TimingSteps({ records }: { readonly records: readonly KeptRecord[] }) {
  const timing = timingOf(records);
  return (
    <section aria-labelledby="journal-timing">
      <h2 id="journal-timing">{JOURNAL_WORDS.timing}</h2>
      <p className="caption">{timing ? JOURNAL_WORDS.timingOf(timing.passes) : JOURNAL_WORDS.timingNone}</p>
      {timing && <StepPictureView steps={timing.steps} stepMs={0} />}
    </section>
  );
}
