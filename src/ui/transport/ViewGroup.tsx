import { ROWS } from '../../state/habits/names';
import { HABITS_SCREEN } from '../../words/habits-screen';
import { LANGUAGE_NAMES, LANGUAGES } from '../../words/language';
import { LANGUAGE_SCREEN } from '../../words/language-screen';
import { SCREEN } from '../../words/screen';
import { SETTINGS_SCREEN } from '../../words/settings-screen';
import { spokenLanguage } from '../../words/speak';
import { NOTE_NAMINGS } from '../../words/spoken';
import { useDesk, useRun } from '../app/desk-context';
import { useHabit, useHabitsRoom } from '../app/habits-context';
import { useTheme } from '../app/use-theme';
import { HabitSwitch } from '../staff/HabitSwitch';
import { Choice } from './Choice';

/** What is seen: grid or staff, theme, percussion rows, hand strip; and what a narrow screen's header has no room for. */
export function ViewGroup(props: { readonly onBalance?: () => void; readonly onKeys: () => void; readonly onStand: () => void }) {
  const run = useRun();
  const view = useDesk((state) => state.settings.view);
  const theme = useTheme();
  const noteNames = useDesk((state) => state.preferences.noteNames);
  const room = useHabitsRoom();
  const rows = useHabit(room, (habits) => habits.percussionRows, 'where there is room');
  const strip = useHabit(room, (habits) => habits.strip, true);
  return (
    <section className="group more-view" aria-label={SETTINGS_SCREEN.viewName}>
      <h3>{SETTINGS_SCREEN.viewName}</h3>
      <div className="group-row">
        <Choice
          name={SETTINGS_SCREEN.viewName}
          value={view}
          options={(['grid', 'staff'] as const).map((value) => ({ value, label: SCREEN.view[value] }))}
          onChoose={(value) => run({ kind: 'set', settings: { view: value } })}
        />
        <Choice
          name={SETTINGS_SCREEN.themeName}
          value={theme}
          options={(['paper', 'night'] as const).map((value) => ({ value, label: SCREEN.theme[value] }))}
          onChoose={(value) => run({ kind: 'prefer', preferences: { theme: value } })}
        />
      </div>
      {view === 'staff' && <HabitSwitch />}
      <Choice
        name={LANGUAGE_SCREEN.language}
        value={spokenLanguage()}
        options={LANGUAGES.map((value) => ({ value, label: LANGUAGE_NAMES[value] }))}
        onChoose={(value) => run({ kind: 'prefer', preferences: { language: value } })}
      />
      <Choice
        name={LANGUAGE_SCREEN.noteNames}
        value={noteNames}
        options={NOTE_NAMINGS.map((value) => ({ value, label: LANGUAGE_SCREEN.namings[value] }))}
        onChoose={(value) => run({ kind: 'prefer', preferences: { noteNames: value } })}
      />
      <Choice
        name={HABITS_SCREEN.percussionRows}
        loose
        value={rows}
        options={ROWS.map((value) => ({ value, label: HABITS_SCREEN.rows[value] }))}
        onChoose={(percussionRows) => room?.change({ percussionRows })}
      />
      <Choice
        name={HABITS_SCREEN.strip}
        value={strip ? 'on' : 'off'}
        options={[
          { value: 'on', label: HABITS_SCREEN.stripOn },
          { value: 'off', label: HABITS_SCREEN.stripOff },
        ]}
        onChoose={(value) => room?.change({ strip: value === 'on' })}
      />
      <div className="group-row">
        <button type="button" className="key" onClick={props.onStand}>
          {SCREEN.fullScreen}
        </button>
        {props.onBalance && (
          <button type="button" className="key" onClick={props.onBalance}>
            {SCREEN.balance}
          </button>
        )}
        <button type="button" className="key" onClick={props.onKeys}>
          {SCREEN.shortcutsName}
        </button>
      </div>
    </section>
  );
}
