import { useMemo } from 'react';
import { soloSpans } from '../../layout/figure/solo-steps';
import { BANNERS } from '../../words/banners';
import { useDesk, usePlaying } from './desk-context';

/** The line over the sounding card while an exercise is on. */
export function ExerciseBanner() {
  const { crossed, solo } = useDesk((state) => state.settings);
  if (crossed) return BANNERS.crossed;
  return solo === 'example' ? <SoloStep /> : solo && BANNERS[solo];
}

/** Which step of the solo sounds, or would sound. Drawn again when the step changes, not as music goes by. */
function SoloStep() {
  const bars = useDesk((state) => state.music?.score.form.bars);
  const spans = useMemo(() => (bars ? soloSpans(bars) : []), [bars]);
  const step = usePlaying((state) => spans.find(({ fromBar, toBar }) => state.bar >= fromBar && state.bar < toBar)?.step ?? 1);
  return BANNERS.soloStep(step);
}
