import { OWN_FIGURE_SCREEN } from '../../words/own-figure-screen';
import { SCREEN } from '../../words/screen';
import { SETTINGS_SCREEN } from '../../words/settings-screen';
import { TRANSPORT_NOTICES } from '../../words/transport-notices';
import { usePanel } from '../app/use-panel';
import { BandGroup } from './BandGroup';
import { ClaveGroup } from './ClaveGroup';
import { ExerciseGroup } from './ExerciseGroup';
import { FigureGroup } from './FigureGroup';
import { HandSwitches } from './HandSwitches';
import { HandsGroup } from './HandsGroup';
import { KeyGroup } from './KeyGroup';
import { LoopGroup } from './LoopGroup';
import { RhythmPadGroup } from './RhythmPadGroup';
import { StatesGroup } from './StatesGroup';
import { TempoGroup } from './TempoGroup';
import { ViewGroup } from './ViewGroup';

/** Everything that can be set for a chart, opened above the transport. It takes the focus and gives it back; Escape closes it. */
export function MoreSheet(props: {
  readonly id: string;
  readonly onClose: () => void;
  readonly onBalance: () => void;
  readonly onKeys: () => void;
  readonly onStand: () => void;
}) {
  const sheet = usePanel(props.onClose);
  return (
    <section ref={sheet} id={props.id} className="more" aria-label={SETTINGS_SCREEN.moreName} tabIndex={-1}>
      <h2 className="visually-hidden">{SETTINGS_SCREEN.moreName}</h2>
      <div className="more-groups">
        <div>
          <section className="group more-hands" aria-label={SCREEN.handsSound}>
            <h3>{SCREEN.handsSound}</h3>
            <HandSwitches />
          </section>
          <TempoGroup />
          <LoopGroup />
          <ClaveGroup />
          <KeyGroup />
          <ViewGroup onKeys={props.onKeys} onStand={props.onStand} />
        </div>
        <div>
          <FigureGroup />
          <StatesGroup />
        </div>
        <div>
          <HandsGroup />
          <BandGroup onBalance={props.onBalance} />
          <ExerciseGroup />
          <RhythmPadGroup />
        </div>
      </div>
      <p className="caution-line">{OWN_FIGURE_SCREEN.heardFrom}</p>
      <p className="caution-line">{TRANSPORT_NOTICES.caution}</p>
    </section>
  );
}
