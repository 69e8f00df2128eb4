import { SCREEN } from '../../words/screen';
import { useDesk, useRun } from '../app/desk-context';
import { Word } from '../glossary/Word';
import { Stepper } from './Stepper';

/** How busy the figure is, with the level's own word. */
export function LevelStepper() {
  const run = useRun();
  const level = useDesk((state) => state.settings.level);
  return (
    <fieldset className="control">
      <legend className="visually-hidden">{SCREEN.level}</legend>
      <Stepper
        down={SCREEN.lessBusy}
        up={SCREEN.busier}
        atLowest={level === 'by section'}
        atHighest={level === 6}
        onStep={(by) => run({ kind: 'step level', by })}
      >
        <output className="figure">{level === 'by section' ? '–' : level}</output>
        <span className="caption">
          <Word of="level">{SCREEN.levels[level]}</Word>
        </span>
      </Stepper>
    </fieldset>
  );
}
