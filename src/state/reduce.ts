import type { Chart, Form } from '../music/chart/chart';
import { styleOf } from '../music/styles/styles';
import { oppositeDirection } from '../vocabulary';
import type { DeskCommand } from './command';
import type { DeskState } from './desk-state';
import { cycleAt, moveEnd, snap, withBarAfter, withBarBefore } from './loop';
import type { Pipeline } from './pipeline';
import { DEFAULT_SETTINGS, DEVICES, LEVELS, type Loop, plainMix, type Settings } from './settings';
import { heldTempo } from './tap-tempo';

/** The state after a command: text is read again, settings are checked against the form, and the music is made anew where it must be. */
export function reduce(state: DeskState, command: DeskCommand, pipeline: Pipeline): DeskState {
  if (command.kind === 'type') return withText(state, command.text, pipeline);
  if (command.kind === 'prefer') return { ...state, preferences: { ...state.preferences, ...command.preferences } };
  const after = withSettings(state, command);
  return after === state ? state : remake(after, pipeline);
}

/** The state with the settings alone as the command leaves them; its music is still that of the settings before. */
export function withSettings(state: DeskState, command: SettingsCommand): DeskState {
  const settings = changedSettings(state, command);
  return settings === state.settings ? state : { ...state, settings };
}

/** The state with another chart text under the same settings. Faulty text keeps the last good music; a new clave or tempo in the text takes effect. */
export function withText(state: DeskState, text: string, pipeline: Pipeline): DeskState {
  const reading = pipeline.read(text);
  if (!reading.ok) return { ...state, text, faults: reading.faults };
  const settings = state.music ? followChart(state.settings, state.music.chart, reading.value) : state.settings;
  return remake({ ...state, text, faults: [], settings }, pipeline);
}

/** Settings for a chart that is opened for the first time: its own clave, its style's colour, its tempo as the goal, and a calmer tempo to begin with. The same each time, part by part, so that nothing is arranged twice. */
export function settingsForChart(chart: Chart, base: Settings): Settings {
  return {
    ...base,
    tempo: heldTempo(chart.tempo * CALM),
    goalTempo: chart.tempo,
    direction: chart.clave.direction,
    kind: chart.clave.kind === 'rumba' ? 'rumba' : 'son',
    colour: styleOf(chart.style).colour,
    loop: null,
    transpose: 0,
    seed: 0,
    style: null,
    cells: null,
    ownFigure: null,
    crossed: false,
    solo: null,
    edits: DEFAULT_SETTINGS.edits,
    undoneEdits: DEFAULT_SETTINGS.undoneEdits,
  };
}

/** A new chart starts at this share of its own tempo. */
export const CALM = 0.7;

/** The state with its music made anew from text and settings; what cannot be made leaves the last good music and says why. */
export function remake(state: DeskState, pipeline: Pipeline): DeskState {
  const reading = pipeline.read(state.text);
  const chart = reading.ok ? reading.value : state.music?.chart;
  if (!chart) return { ...state, faults: reading.ok ? [] : reading.faults };
  const faults = reading.ok ? [] : reading.faults;
  try {
    const music = pipeline.make(chart, state.settings);
    const settings = sameLoop(music.loop, state.settings.loop) ? state.settings : { ...state.settings, loop: music.loop };
    return { ...state, faults, settings, music, trouble: null };
  } catch (error) {
    return { ...state, faults, trouble: error instanceof Error ? error.message : String(error) };
  }
}

type SettingsCommand = Exclude<DeskCommand, { kind: 'type' | 'prefer' }>;

function changedSettings(state: DeskState, command: SettingsCommand): Settings {
  const { settings } = state;
  const form = (): Form | null => state.music?.whole.form ?? null;
  const looped = (find: (form: Form, loop: Loop) => Loop | null): Settings => {
    const found = form() && settings.loop ? find(form() as Form, settings.loop) : null;
    return found ? { ...settings, loop: found } : settings;
  };
  switch (command.kind) {
    case 'set':
      return { ...settings, ...command.settings };
    case 'exchange sides':
      return { ...settings, direction: oppositeDirection(settings.direction) };
    case 'another one':
      return { ...settings, seed: settings.seed + 1 };
    case 'step tempo':
      return command.goal
        ? { ...settings, goalTempo: heldTempo(settings.goalTempo + command.by) }
        : { ...settings, tempo: heldTempo(settings.tempo + command.by) };
    case 'step level':
      return { ...settings, level: LEVELS[LEVELS.indexOf(settings.level) + command.by] ?? settings.level };
    case 'toggle device': {
      const on = settings.devices.includes(command.device);
      return { ...settings, devices: DEVICES.filter((device) => (device === command.device ? !on : settings.devices.includes(device))) };
    }
    case 'edit':
      return { ...settings, edits: [...settings.edits, command.edit], undoneEdits: [] };
    case 'undo edit':
    case 'redo edit':
    case 'reset edits':
      return movedEdits(settings, command.kind);
    case 'loop cycle': {
      const bars = form();
      return { ...settings, loop: bars ? cycleAt(bars, command.bar) : null };
    }
    case 'loop bars': {
      const bars = form();
      return { ...settings, loop: bars ? snap(bars, command.loop) : null };
    }
    case 'loop off':
      return settings.loop === null ? settings : { ...settings, loop: null };
    case 'one bar before':
      return looped(withBarBefore);
    case 'one bar after':
      return looped(withBarAfter);
    case 'move loop end':
      return looped((bars, loop) => moveEnd(bars, loop, command.end, command.by));
    case 'move loop':
      return looped((bars, loop) => {
        const length = loop.toBar - loop.fromBar;
        const fromBar = command.by === 1 ? loop.toBar : loop.fromBar - length;
        return fromBar < 0 || fromBar >= bars.bars.length ? null : snap(bars, { fromBar, toBar: fromBar + length });
      });
    case 'mute':
      return { ...settings, balance: { ...settings.balance, [command.part]: { ...settings.balance[command.part], muted: command.muted } } };
    case 'balance':
      return { ...settings, balance: { ...settings.balance, [command.part]: { level: command.level, muted: false } } };
    case 'plain mix':
      return { ...settings, balance: plainMix(settings.balance, command.mix) };
  }
}

function movedEdits(settings: Settings, how: 'undo edit' | 'redo edit' | 'reset edits'): Settings {
  const { edits, undoneEdits } = settings;
  if (how === 'redo edit') {
    const again = undoneEdits.at(-1);
    return again ? { ...settings, edits: [...edits, again], undoneEdits: undoneEdits.slice(0, -1) } : settings;
  }
  if (edits.length === 0) return settings;
  const left = how === 'undo edit' ? edits.length - 1 : 0;
  return { ...settings, edits: edits.slice(0, left), undoneEdits: [...undoneEdits, ...edits.slice(left).reverse()] };
}

function followChart(settings: Settings, before: Chart, after: Chart): Settings {
  const clave = before.clave.kind !== after.clave.kind || before.clave.direction !== after.clave.direction;
  const goalFollows = before.tempo !== after.tempo && settings.goalTempo === before.tempo;
  if (!clave && !goalFollows) return settings;
  return {
    ...settings,
    ...(clave ? { direction: after.clave.direction, kind: after.clave.kind === 'rumba' ? ('rumba' as const) : ('son' as const) } : {}),
    ...(goalFollows ? { goalTempo: after.tempo } : {}),
  };
}

function sameLoop(a: Loop | null, b: Loop | null): boolean {
  return a === b || (a !== null && b !== null && a.fromBar === b.fromBar && a.toBar === b.toBar);
}
