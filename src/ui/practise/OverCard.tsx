import { lazy, Suspense } from 'react';
import type { PercussionCaptionProps } from './PercussionCaption';
import type { WhyNoteProps } from './WhyNote';

const PercussionCaption = lazy(() => import('./PercussionCaption').then((module) => ({ default: module.PercussionCaption })));
const WhyNote = lazy(() => import('./WhyNote').then((module) => ({ default: module.WhyNote })));

/** What stands under the panels and floats over the card. */
export interface OverCardProps {
  readonly percussion: PercussionCaptionProps | null;
  readonly why: WhyNoteProps | null;
}

/** The line about the percussion, the count-in, and the sentence about a stroke. */
export function OverCard({ percussion, why }: OverCardProps) {
  return (
    <>
      {percussion && (
        <Suspense fallback={<p className="percussion-caption" />}>
          <PercussionCaption {...percussion} />
        </Suspense>
      )}
      <output className="count-in" aria-hidden="true" />
      <Suspense fallback={null}>{why && <WhyNote {...why} />}</Suspense>
    </>
  );
}
