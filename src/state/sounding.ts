import { createStore, type StoreApi } from 'zustand/vanilla';
import type { ChangedThing, DeskState, PlayingState } from './desk-state';
import { barAt } from './loop';
import { MADE_BY } from './pipeline';
import type { Heard, Player } from './ports';
import { mixOf, type Settings } from './settings';

/** Calls back once a drawn frame until the returned function is called. */
export type EveryFrame = (onFrame: () => void) => () => void;
/** Calls back once, when the next frame has been drawn, unless the returned function is called before. */
export type AfterFrame = (act: () => void) => () => void;

/** The desk's music, sounding: starts, stops and changes the player as the desk changes, and says which bar is heard. */
export interface Sounding {
  readonly playing: StoreApi<PlayingState>;
  /** Fetches the player before it is needed, so that the first press on Play can start it within its own gesture. */
  readonly warm: () => Promise<void>;
  readonly play: () => void;
  readonly stop: () => void;
  /** Plays from `bar` without a count-in if the music runs; else waits there. */
  readonly startAt: (bar: number) => void;
  readonly sound: (midi: readonly number[], velocity: number) => void;
  /** Leaves the open vamp that goes round. */
  readonly cue: () => void;
  /** What is heard now, for the playhead; null when stopped. */
  readonly heard: () => Heard | null;
}

const STOPPED = { kind: 'stopped' } as const;

/** Keeps the player in step with the arrangement: starts, stops and hands over changes. */
export function createSounding(desk: StoreApi<DeskState>, loadPlayer: () => Promise<Player>, everyFrame: EveryFrame): Sounding {
  const playing = createStore<PlayingState>(() => ({ transport: STOPPED, sound: { kind: 'off' }, bar: 0, startBar: 0, vamp: null }));
  let player: Player | null = null;
  let loading: Promise<void> | null = null;
  let wanted = false;
  let endFrames: (() => void) | null = null;
  let announced = 0;

  const cursorTo = (bar: number): void => playing.setState({ bar, startBar: bar });

  const showVamp = (): void => {
    const vamp = player?.vamp()?.state ?? null;
    if (vamp !== playing.getState().vamp) playing.setState({ vamp });
  };

  const settle = (): void => {
    if (!player) return;
    const transport = player.transportState();
    const sound = player.soundState();
    const stopped = transport.kind === 'stopped';
    const now = playing.getState();
    playing.setState({
      transport: now.transport.kind === transport.kind ? now.transport : transport,
      sound: sameState(now.sound, sound) ? now.sound : sound,
      bar: stopped && now.transport.kind !== 'stopped' ? now.startBar : now.bar,
    });
    if (stopped) {
      showVamp();
      endFrames?.();
      endFrames = null;
    } else endFrames ??= everyFrame(follow);
  };

  const follow = (): void => {
    const heard = player?.heard();
    const music = desk.getState().music;
    if (!heard || heard.countIn !== null || !music) return;
    const bar = barAt(music.score.form.bars, heard.tick);
    if (bar !== playing.getState().bar) playing.setState({ bar });
    showVamp();
  };

  const warm = (): Promise<void> => {
    loading ??= loadPlayer().then(
      (loaded) => {
        player = loaded;
        player.setMix(mixOf(desk.getState().settings, desk.getState().preferences));
        player.onChange(settle);
        settle();
      },
      (error: unknown) => {
        loading = null;
        playing.setState({
          transport: STOPPED,
          sound: { kind: 'blocked', reason: error instanceof Error ? error.message : String(error) },
        });
      },
    );
    return loading;
  };

  const begin = (countInBars: Settings['countInBars']): void => {
    const { music, settings } = desk.getState();
    if (!player || !music) return;
    const { bars } = music.score.form;
    const { fromTick, toTick } = music.performance;
    const tick = bars[playing.getState().startBar]?.tick ?? fromTick;
    const from = tick >= fromTick && tick < toTick ? tick : fromTick;
    cursorTo(barAt(bars, from));
    player.play({ performance: music.performance, fromTick: from, tempo: settings.tempo, countInBars });
    settle();
  };

  const play = (): void => {
    if (!desk.getState().music) return;
    if (player) {
      begin(desk.getState().settings.countInBars);
      return;
    }
    wanted = true;
    playing.setState({ transport: { kind: 'starting' } });
    void warm().then(() => {
      if (wanted) begin(desk.getState().settings.countInBars);
      wanted = false;
    });
  };

  const stop = (): void => {
    wanted = false;
    player?.stop();
    if (player) settle();
    else playing.setState({ transport: STOPPED });
  };

  /** A setting is on the desk a moment before its music. */
  let madeUnder = desk.getState().settings;
  desk.subscribe((now, before) => {
    const madeBefore = madeUnder;
    if (now.music !== before.music) madeUnder = now.settings;
    const bars = now.music?.score.form.bars.length ?? 0;
    const otherChart = now.chartId !== before.chartId && now.music !== before.music;
    if (otherChart || playing.getState().startBar >= bars || playing.getState().bar >= bars) cursorTo(0);
    if (!player) return;
    if (now.settings.balance !== before.settings.balance || now.preferences !== before.preferences)
      player.setMix(mixOf(now.settings, now.preferences));
    if (now.settings.tempo !== before.settings.tempo) player.setTempo(now.settings.tempo);
    if (!now.music || now.music.performance === before.music?.performance || playing.getState().transport.kind === 'stopped') return;
    const landing = player.change(now.music.performance);
    announced += 1;
    const fromBar = landing === null ? null : barAt(now.music.score.form.bars, landing);
    desk.setState({ announcement: { id: announced, thing: changedThing(now.settings, madeBefore), fromBar } });
  });

  return {
    playing,
    warm,
    play,
    stop,
    startAt: (bar) => {
      const runs = playing.getState().transport.kind !== 'stopped';
      cursorTo(Math.max(0, bar));
      if (!runs || !player) return;
      player.stop();
      begin(0);
    },
    sound: (midi, velocity) => {
      void warm().then(() => player?.sound(midi, velocity));
    },
    heard: () => player?.heard() ?? null,
    cue: () => {
      player?.cue();
      showVamp();
    },
  };
}

function changedThing(now: Settings, before: Settings): ChangedThing {
  return MADE_BY.find((name) => now[name] !== before[name]) ?? 'chart';
}

function sameState(a: PlayingState['sound'], b: PlayingState['sound']): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
