import { pairChoices } from '../../state/choices';
import { COLOURS, DEVICES, LEVELS } from '../../state/settings';
import { CHANGES } from '../../words/changes';
import { FIGURE_SCREEN } from '../../words/figure-screen';
import { MUSIC_TEXTS } from '../../words/music-texts';
import { SCREEN } from '../../words/screen';
import { SETTINGS_SCREEN } from '../../words/settings-screen';
import { useDesk, useRun } from '../app/desk-context';
import { Word } from '../glossary/Word';
import { Choice } from './Choice';
import { Picker } from './Picker';

const LEVELS_OWN = '';

/** The figure: level, colour, devices, cells. */
export function FigureGroup() {
  const run = useRun();
  const { level, colour, devices, cells, kind } = useDesk((state) => state.settings);
  const pairs = pairChoices(kind);
  return (
    <section className="group group-wide" aria-label={SETTINGS_SCREEN.figure}>
      <h3>
        <Word of="figure">{SETTINGS_SCREEN.figure}</Word>
      </h3>
      <Choice
        name={SCREEN.level}
        word="level"
        loose
        value={level}
        options={LEVELS.map((value) => ({
          value,
          label: value === 'by section' ? SCREEN.levels[value] : `${value} · ${SCREEN.levels[value]}`,
        }))}
        onChoose={(value) => run({ kind: 'set', settings: { level: value } })}
      />
      <div className="group-row">
        <Choice
          name={SETTINGS_SCREEN.colour}
          word="colour"
          value={colour}
          options={COLOURS.map((value) => ({ value, label: CHANGES.colours[value] }))}
          onChoose={(value) => run({ kind: 'set', settings: { colour: value } })}
        />
      </div>
      <fieldset className="choice choice-loose">
        <legend>
          <Word of="device">{SETTINGS_SCREEN.devices}</Word>
        </legend>
        <div className="choice-row">
          {DEVICES.map((device) => (
            <button
              key={device}
              type="button"
              className="key"
              title={CHANGES.deviceHints[device]}
              aria-pressed={devices.includes(device)}
              onClick={() => run({ kind: 'toggle device', device })}
            >
              {CHANGES.devices[device]}
            </button>
          ))}
        </div>
      </fieldset>
      <Picker
        name={FIGURE_SCREEN.cells}
        word="cell"
        value={cells ? `${cells.two} and ${cells.three}` : LEVELS_OWN}
        options={[
          { value: LEVELS_OWN, label: FIGURE_SCREEN.levelCells },
          ...pairs.map(({ name, what, cells: pair }) => ({
            value: name,
            label: `${pair.two} + ${pair.three} · ${MUSIC_TEXTS.cells(what)}`,
          })),
        ]}
        onChoose={(value) => run({ kind: 'set', settings: { cells: pairs.find(({ name }) => name === value)?.cells ?? null } })}
      />
    </section>
  );
}
