import { HABITS_SCREEN } from '../../words/habits-screen';
import { PARTS_WORDS } from '../../words/parts';
import { SCREEN } from '../../words/screen';
import { ReasonedButton } from '../figure/ReasonedButton';
import { Choice } from '../transport/Choice';
import { DirectionSwitch } from '../transport/DirectionSwitch';
import { Picker } from '../transport/Picker';
import { Stepper } from '../transport/Stepper';

const nothing = (): void => undefined;
const LEVELS = [1, 2, 3].map((value) => ({ value, label: `${value}` }));

/** Buttons, controls and notes in every state that they have. */
export function Controls() {
  return (
    <>
      <h2>{PARTS_WORDS.buttons}</h2>
      <div className="parts-row">
        <button type="button" className="play">
          {SCREEN.play}
        </button>
        <button type="button" className="play" disabled>
          {SCREEN.play}
        </button>
        <button type="button" className="key">
          {PARTS_WORDS.plain}
        </button>
        <button type="button" className="key" aria-pressed="true">
          {PARTS_WORDS.on}
        </button>
        <ReasonedButton label={PARTS_WORDS.off} reason={PARTS_WORDS.reason} onPress={nothing} />
        <button type="button" className="plain">
          {PARTS_WORDS.plain}
        </button>
        <button type="button" className="plain" aria-pressed="true">
          {PARTS_WORDS.on}
        </button>
      </div>
      <h2>{PARTS_WORDS.controls}</h2>
      <div className="parts-row">
        <DirectionSwitch direction="2-3" onExchange={nothing} />
        <DirectionSwitch direction="3-2" onExchange={nothing} />
        <Stepper down={SCREEN.slower} up={SCREEN.faster} onStep={nothing}>
          <span className="figure">64</span>
        </Stepper>
        <Stepper down={SCREEN.slower} up={SCREEN.faster} onStep={nothing} atLowest>
          <span className="figure">25</span>
        </Stepper>
        <Choice name={SCREEN.level} value={2} options={LEVELS} onChoose={nothing} />
        <Choice name={SCREEN.level} loose value={2} options={LEVELS} onChoose={nothing} />
        <Picker name={SCREEN.level} value={2} options={LEVELS} onChoose={nothing} />
      </div>
      <h2>{PARTS_WORDS.notes}</h2>
      <div className="notices">
        <p className="notice">
          {PARTS_WORDS.notice}
          <button type="button" className="plain">
            {HABITS_SCREEN.hintSeen}
          </button>
        </p>
      </div>
      <p className="wrong">{SCREEN.tempoRange('half')}</p>
      <div className="empty">
        <p>{SCREEN.noMusic}</p>
        <a href="#/chart">{SCREEN.goToChart}</a>
      </div>
      <div className="shield">
        <p>{SCREEN.failed}</p>
        <button type="button" className="key">
          {SCREEN.reload}
        </button>
      </div>
    </>
  );
}
