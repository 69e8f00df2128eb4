import { NEW_CHART } from './chart-text';
import type { DemoChart, DeskState } from './desk-state';
import type { Pipeline } from './pipeline';
import { remake, settingsForChart } from './reduce';
import { DEFAULT_PREFERENCES, DEFAULT_SETTINGS } from './settings';

/** The desk before anything kept is known: a demo lies ready, or an empty chart where there is none. */
export function firstState(demo: DemoChart | undefined, pipeline: Pipeline): DeskState {
  const text = demo?.text ?? NEW_CHART;
  const reading = pipeline.read(text);
  const settings = reading.ok ? settingsForChart(reading.value, DEFAULT_SETTINGS) : DEFAULT_SETTINGS;
  const empty: DeskState = {
    chartId: demo?.id ?? 'quick',
    text,
    openedText: demo ? text : null,
    faults: [],
    quickFaults: [],
    music: null,
    trouble: null,
    unsaved: null,
    unwritten: null,
    settings,
    preferences: DEFAULT_PREFERENCES,
    shelf: [],
    keeping: { kind: 'kept' },
    otherTab: null,
    putAside: [],
    announcement: null,
  };
  return remake(empty, pipeline);
}
