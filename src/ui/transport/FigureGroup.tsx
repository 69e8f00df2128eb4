import { COLOURS, DEVICES, HANDS, LEVELS } from '../../state/settings';
import { COLOUR_WORDS, DEVICE_HINTS, DEVICE_WORDS, HANDS_WORDS, LEVEL_WORDS, SCREEN } from '../../words/screen';
import { SETTINGS_SCREEN } from '../../words/settings-screen';
import { useDesk, useRun } from '../app/desk-context';
import { Choice } from './Choice';

/** The figure: level, colour, devices, what the hands do, and another one like it. */
export function FigureGroup() {
  const run = useRun();
  const { level, colour, devices, hands } = useDesk((state) => state.settings);
  return (
    <section className="group group-wide" aria-label={SETTINGS_SCREEN.figure}>
      <h3>{SETTINGS_SCREEN.figure}</h3>
      <Choice
        name={SCREEN.level}
        loose
        value={level}
        options={LEVELS.map((value) => ({ value, label: `${value} · ${LEVEL_WORDS[value]}` }))}
        onChoose={(value) => run({ kind: 'set', settings: { level: value } })}
      />
      <div className="group-row">
        <Choice
          name={SETTINGS_SCREEN.colour}
          value={colour}
          options={COLOURS.map((value) => ({ value, label: COLOUR_WORDS[value] }))}
          onChoose={(value) => run({ kind: 'set', settings: { colour: value } })}
        />
        <button type="button" className="key key-another" title={SETTINGS_SCREEN.anotherHint} onClick={() => run({ kind: 'another one' })}>
          {SETTINGS_SCREEN.another}
        </button>
      </div>
      <fieldset className="choice choice-loose">
        <legend>{SETTINGS_SCREEN.devices}</legend>
        <div className="choice-row">
          {DEVICES.map((device) => (
            <button
              key={device}
              type="button"
              className="key"
              title={DEVICE_HINTS[device]}
              aria-pressed={devices.includes(device)}
              onClick={() => run({ kind: 'toggle device', device })}
            >
              {DEVICE_WORDS[device]}
            </button>
          ))}
        </div>
      </fieldset>
      <label className="picker">
        <span>{SETTINGS_SCREEN.hands}</span>
        <select
          value={hands}
          onChange={(event) => {
            const chosen = HANDS.find((value) => value === event.target.value);
            if (chosen) run({ kind: 'set', settings: { hands: chosen } });
          }}
        >
          {HANDS.map((value) => (
            <option key={value} value={value}>
              {HANDS_WORDS[value]}
            </option>
          ))}
        </select>
      </label>
    </section>
  );
}
