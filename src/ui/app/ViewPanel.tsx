import { SCREEN } from '../../words/screen';
import { SETTINGS_SCREEN } from '../../words/settings-screen';
import { ViewGroup } from '../transport/ViewGroup';
import { usePanel } from './use-panel';
import '../balance/balance.css';

/** What the page looks like and which language it speaks, one step from every place. */
export function ViewPanel(props: {
  readonly onClose: () => void;
  readonly onBalance: () => void;
  readonly onKeys: () => void;
  readonly onStand: () => void;
}) {
  const { onClose } = props;
  const panel = usePanel(onClose);
  return (
    <section ref={panel} className="balance view-panel" aria-label={SCREEN.looks} tabIndex={-1}>
      <button type="button" className="key view-close" onClick={onClose}>
        {SETTINGS_SCREEN.close}
      </button>
      <ViewGroup {...props} />
    </section>
  );
}
