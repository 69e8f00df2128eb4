import { createStore, type StoreApi } from 'zustand/vanilla';
import { fileStem } from '../exchange/file-name';
import type { Chart, ChartFault } from '../music/chart/chart';
import type { Score } from '../music/score';
import type { Performance } from '../performance/performance';
import type { HalfNotesPerMinute, InputMillis, Result } from '../vocabulary';
import { createChanging, isPressed } from './changing';
import type { Command } from './command';
import type { DemoChart, DeskState, PlayingState } from './desk-state';
import { firstState } from './first-state';
import { createKeeping, type Keeping } from './keeping';
import { keysOf } from './keys-of';
import { cycleAt } from './loop';
import { createOpener } from './open-chart';
import { underChanges } from './patience';
import { createPipeline, type Stages } from './pipeline';
import type { FileSaver, Heard, Player, Storage, Timer } from './ports';
import type { Rooms } from './rooms';
import { DEFAULT_PREFERENCES } from './settings';
import { type AfterFrame, createSounding, type EveryFrame } from './sounding';
import { addTap, tapTempo } from './tap-tempo';

/** Everything the desk asks of the world and of the pure stages. */
export interface DeskPorts {
  readonly stages: Stages;
  /** Chart text for the quick line: four chords, or a loop and a key. */
  readonly readQuickLine: (line: string) => Promise<Result<string, ChartFault>>;
  /** The demo charts that are at hand at once, the first to lie ready. */
  readonly demos: readonly DemoChart[];
  /** The whole demo book, fetched once the page stands or when a chart of it is opened. */
  readonly demoBook?: () => Promise<readonly DemoChart[]>;
  readonly storage: Storage;
  readonly saver: FileSaver;
  /** Bytes of a Standard MIDI File. */
  readonly midi: (score: Score, tempo: HalfNotesPerMinute) => Promise<Uint8Array>;
  readonly loadPlayer: () => Promise<Player>;
  readonly rooms: Rooms;
  readonly everyFrame: EveryFrame;
  readonly afterFrame: AfterFrame;
  readonly timer: Timer;
  /** Milliseconds since 1970. */
  readonly now: () => number;
  /** A fresh id for a chart of the player's own, never given before on any device. */
  readonly newId: () => string;
}

/** The desk as the screens see it: two stores to read and one way to change them. */
export interface Desk {
  readonly desk: StoreApi<DeskState>;
  readonly playing: StoreApi<PlayingState>;
  readonly demos: readonly DemoChart[];
  readonly run: (command: Command) => void;
  readonly heard: () => Heard | null;
  readonly scoreOf: (performance: Performance) => Score | null;
  /** The whole form in the other direction under the settings in force; null without music. */
  readonly otherDirection: () => Score | null;
  /** The chart's key and the eleven above it, each spelled as it is written, ready to print. */
  readonly keysOf: (chart: Chart) => readonly string[];
  /** Brings back what was kept on this device; the first demo lies ready until then, and if there is nothing. */
  readonly restore: () => Promise<void>;
  /** Keeps one more record on this device under `key`, with the desk's own autosave, retries and warnings. */
  readonly keep: Keeping['keep'];
  /** Brings the whole demo book into `demos`, which begins with the first of them. */
  readonly fetchDemos: () => Promise<void>;
  /** What is fetched when it is first needed. */
  readonly rooms: Rooms;
  /** Hands the device what waits to be written; resolves when it has it, or does not answer in time. */
  readonly flush: () => Promise<void>;
  /** Whether the device answers in time; it is said on the page while it does not. */
  readonly inTime: Keeping['inTime'];
  /** What this page knows and the device has yet to confirm, by key. */
  readonly unconfirmed: Keeping['unconfirmed'];
  /** Fetches the player before it is needed. */
  readonly warm: () => Promise<void>;
}

/** Joins the stores, the pipeline, the player and the storage; the screens talk to what it gives back. */
export function createDesk(ports: DeskPorts): Desk {
  const { now, newId } = ports;
  const demos = [...ports.demos];
  const fetchDemos = async (): Promise<void> => {
    const book = (await ports.demoBook?.()) ?? [];
    demos.push(...book.filter(({ id }) => !demos.some((demo) => demo.id === id)));
  };
  const pipeline = createPipeline(ports.stages);
  const store = createStore<DeskState>(() => firstState(demos[0], pipeline));
  const keeping = createKeeping(store, ports.storage, ports.timer);
  const sounding = createSounding(store, ports.loadPlayer, ports.everyFrame);
  const opener = createOpener({ store, keeping, pipeline, demos, fetchDemos, now, newId, stop: sounding.stop });
  const { timer, afterFrame } = ports;
  const { change, type, arrange } = createChanging({ store, pipeline, shelved: opener.shelved, timer, afterFrame });
  let taps: readonly InputMillis[] = [];

  const startAt = (bar: number): void => {
    const { loop } = store.getState().settings;
    if (loop && (bar < loop.fromBar || bar >= loop.toBar)) change({ kind: 'loop off' });
    arrange();
    sounding.startAt(bar);
  };

  const turnPage = (by: 1 | -1): void => {
    const { settings, music } = store.getState();
    if (settings.loop) change({ kind: 'move loop', by });
    else if (music) {
      const { form } = music.score;
      const here = cycleAt(form, sounding.playing.getState().bar);
      const bar = by === 1 ? here?.toBar : cycleAt(form, Math.max(0, (here?.fromBar ?? 0) - 1))?.fromBar;
      if (bar !== undefined && bar < form.bars.length) sounding.startAt(bar);
    }
  };

  const tap = (at: InputMillis): void => {
    taps = addTap(taps, at);
    const tempo = tapTempo(taps, store.getState().preferences.tempoUnit);
    if (tempo !== null) change({ kind: 'set', settings: { tempo } });
  };

  const playQuick = async (line: string): Promise<void> => {
    const reading = await ports.readQuickLine(line);
    store.setState({ quickFaults: reading.ok ? [] : reading.faults });
    if (!reading.ok) return;
    opener.putQuick(reading.value);
    sounding.play();
  };

  const saveMidi = async ({ music, settings }: DeskState): Promise<void> => {
    if (!music) return;
    try {
      ports.saver.save(`${fileStem(music.score)}.mid`, 'audio/midi', await ports.midi(music.score, settings.tempo));
      store.setState({ unsaved: null });
    } catch (error) {
      store.setState({ unsaved: error instanceof Error ? error.message : String(error) });
    }
  };

  const run = (command: Command): void => {
    if (!isPressed(command)) arrange();
    const state = store.getState();
    switch (command.kind) {
      case 'play':
        sounding.play();
        break;
      case 'stop':
        sounding.stop();
        break;
      case 'play or stop':
        if (sounding.playing.getState().transport.kind === 'stopped') sounding.play();
        else sounding.stop();
        break;
      case 'start at bar':
        startAt(command.bar);
        break;
      case 'cue':
        sounding.cue();
        break;
      case 'turn page':
        turnPage(command.by);
        break;
      case 'type':
        type(command.text);
        break;
      case 'tap':
        tap(command.at);
        break;
      case 'sound':
        sounding.sound(command.midi, command.velocity);
        break;
      case 'open':
        void opener.open(command.chartId);
        break;
      case 'play quick':
        void playQuick(command.line);
        break;
      case 'new chart':
        opener.newChart();
        break;
      case 'show the other tab':
        if (state.otherTab) void opener.open(state.otherTab.chartId);
        break;
      case 'keep this one':
        if (state.otherTab?.kind === 'fresh') opener.part(null);
        else store.setState({ otherTab: null });
        break;
      case 'save midi':
        void saveMidi(state);
        break;
      default:
        change(command);
    }
  };

  ports.storage.onOtherTab((key) => {
    const { chartId } = store.getState();
    if (key === 'shelf') void keeping.meetShelf();
    if (key === `chart/${chartId}`)
      void keeping.chartOfOtherTab(chartId).then((record) => record && opener.meetOtherTab(chartId, record.text));
  });

  ports.storage.onCleared(keeping.seal);
  ports.storage.onNewer(keeping.giveWay);

  const restore = async (): Promise<void> => {
    const preferences = keeping.preferences().then((kept) => {
      store.setState({ preferences: underChanges(kept, DEFAULT_PREFERENCES, store.getState().preferences) });
    });
    const lastChart = keeping.lastChart();
    const known = await keeping.inTime(Promise.all([preferences, keeping.meetShelf(), lastChart]));
    await opener.open((known ? await lastChart : null) ?? store.getState().chartId);
    if (!known) void lastChart.then(goOnWith(store.getState()));
  };

  /** Opens the chart of the last visit when it is known at last, unless something was done since. */
  const goOnWith =
    ({ chartId, text, settings }: DeskState) =>
    (lastChart: string | null): void => {
      const now = store.getState();
      const isUntouched = now.chartId === chartId && now.text === text && now.settings === settings;
      if (isUntouched && lastChart !== null && sounding.playing.getState().transport.kind === 'stopped') void opener.open(lastChart);
    };

  const otherDirection = (): Score | null => {
    const { music, settings } = store.getState();
    return music && pipeline.otherDirection(music.chart, settings);
  };

  const { playing, heard, warm } = sounding;
  return {
    desk: store,
    playing,
    demos,
    run,
    heard,
    scoreOf: pipeline.scoreOf,
    keysOf,
    otherDirection,
    restore,
    fetchDemos,
    rooms: ports.rooms,
    keep: keeping.keep,
    flush: keeping.flush,
    inTime: keeping.inTime,
    unconfirmed: keeping.unconfirmed,
    warm: async () => {
      await Promise.all([warm(), fetchDemos()]);
    },
  };
}
