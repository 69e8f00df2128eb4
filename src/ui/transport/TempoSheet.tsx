import { SCREEN } from '../../words/screen';
import { usePanel } from '../app/use-panel';
import { TempoGroup } from './TempoGroup';

/** The tempo in full and its goal, opened from the tempo itself. It takes the focus and gives it back; Escape closes it. */
export function TempoSheet({ id, onClose }: { readonly id: string; readonly onClose: () => void }) {
  const sheet = usePanel(onClose);
  return (
    <section ref={sheet} id={id} className="more tempo-sheet" aria-label={SCREEN.tempoName} tabIndex={-1}>
      <TempoGroup />
    </section>
  );
}
