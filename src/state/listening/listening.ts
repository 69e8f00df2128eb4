// long because it joins inputs, takes, judgement and sound in one place
import { createStore, type StoreApi } from 'zustand/vanilla';
import { toInput } from '../../performance/clock-map';
import type { Performance } from '../../performance/performance';
import type { LoopBars } from '../../practice/finding';
import type { MarkerDelay } from '../../practice/marker-delay';
import { PRACTICE } from '../../practice/practice-limits';
import { type HalfNotesPerMinute, type InputMillis, inputMillis } from '../../vocabulary';
import type { Desk } from '../desk';
import { barAt } from '../loop';
import type { Player, Storage } from '../ports';
import { type Loop, mixOf } from '../settings';
import { heldTempo } from '../tap-tempo';
import { createCalibrating } from './calibrating';
import { type Calibration, createCalibrations } from './calibrations';
import type { Judged } from './judge';
import {
  type Band,
  ensembleOf,
  type ListeningState,
  PARTS_OF,
  type PassReport,
  type SelfRating,
  type Tally,
  WHOLE_BAND,
} from './listening-state';
import { createMarkers, isAudibleClick } from './markers';
import { createOutputWatch } from './output-trust';
import { type PlayedFigure, playedFigure } from './played-figure';
import type { InputDevice, NoteSink, NoteSource, Played, SoundOnItsWay, SourceName } from './ports';
import { claveMet, type ReplayWith, replayOf } from './replay';
import { createSoundingKeys } from './sounding-keys';
import { createTakes, type Recorded, type TakeTerms } from './takes';

/** What listening asks of the world. */
export interface ListeningPorts {
  readonly desk: Pick<Desk, 'desk' | 'playing' | 'run' | 'scoreOf' | 'warm'>;
  /** The player, once it was fetched. */
  readonly player: () => Player | null;
  readonly sources: Readonly<Record<SourceName, NoteSource>>;
  readonly keys: { setMode(mode: 'notes' | 'rhythm'): void; setOctave(octaves: number): void };
  readonly sink: NoteSink;
  readonly storage: Storage;
  readonly judge: (recorded: Recorded) => Judged;
  /** Milliseconds since 1970. */
  readonly now: () => number;
  /** Calls back every `ms` until the returned function is called, hidden or not. */
  readonly every: (ms: number, action: () => void) => () => void;
  readonly hidden: () => boolean;
}

/** Listening as the screens see it. */
export interface Listening {
  readonly store: StoreApi<ListeningState>;
  /** Asks for a source and listens to it; call it inside a gesture. */
  choose(source: SourceName): void;
  /** Wakes a device that is held; the take goes on. Call it inside a gesture. */
  wake(): void;
  /** Stops listening and lets the device go. */
  close(): void;
  /** Closes, and brings the whole band back. */
  leave(): void;
  set(change: Partial<Pick<ListeningState, 'plays' | 'rhythmKeys' | 'octave' | 'soundsNotes' | 'sendTo' | 'headphones'>>): void;
  /** What the band leaves out. The click's pulse is switched on with it. */
  setBand(change: Partial<Band>): void;
  /** A touch on the tap field. */
  tap(at: InputMillis): void;
  /** Plays sixteen clicks to tap along with. */
  calibrate(): void;
  /** Plays music that is not the chart as it lies on the desk, under the desk's mix; call it inside a gesture. */
  playMusic(performance: Performance): void;
  /** The bars that a finding names, as a loop of the form; null before there is a report. */
  loopOf(bars: LoopBars): Loop | null;
  /** What "again, slower" plays after `tempo`; null where it cannot be slower. */
  slowerThan(tempo: HalfNotesPerMinute): HalfNotesPerMinute | null;
  /** Plays the bars that a finding names as a loop, at `tempo` where one is given. */
  playLoop(bars: LoopBars, tempo?: HalfNotesPerMinute): void;
  replay(withWhat: ReplayWith, shiftBars: 0 | 1): void;
  /** The rhythm of the last pass as a figure of the player's own, for the grid to confirm; null before there is one. */
  readFigure(): PlayedFigure | null;
  rate(rating: SelfRating): void;
  /** Hears of every note the moment it comes, for lights; nothing here waits for a frame. */
  onPlayed(listener: (played: Played) => void): () => void;
  /** Loudness of the microphone now. */
  level(): number;
}

const TICK_MS = 200;
/** Ticks that clicks or a replay may take to start. */
const ASIDE_PATIENCE = 25;
const MOST_RATINGS = 12;
const COARSE_NOTE = 64;

const FIRST: ListeningState = {
  source: null,
  device: { kind: 'off' },
  rhythmKeys: false,
  octave: 0,
  headphones: false,
  plays: 'both hands',
  band: WHOLE_BAND,
  soundsNotes: false,
  sendTo: null,
  outputs: [],
  output: 'steady',
  coarse: false,
  calibration: null,
  calibrating: { kind: 'off' },
  report: null,
  tally: null,
  silent: 0,
  replaying: null,
  ratings: [],
};

/** Joins the inputs to the desk. Nothing is asked for and nothing listens until `choose`. */
export function createListening(ports: ListeningPorts): Listening {
  const { desk, sources, sink } = ports;
  const store = createStore<ListeningState>(() => FIRST);
  const { getState: state, setState: set } = store;
  const takes = createTakes();
  const calibrations = createCalibrations(ports.storage, ports.now);
  const calibrating = createCalibrating();
  const markers = createMarkers();
  const hearers = new Set<(played: Played) => void>();
  let watch = createOutputWatch();
  let rate = 0;
  let reports = 0;
  let asideSounds = false;
  let asideWaited = 0;
  /** What the clicks of this take say, where a microphone listens to a loudspeaker. */
  let loudspeaker: MarkerDelay | null = null;
  let endings: (() => void)[] = [];
  let endSound: (() => void) | null = null;

  const deviceName = (): string | null => {
    const { device, source } = state();
    return device.kind === 'listening' || device.kind === 'held' ? (device.devices[0]?.name ?? source) : null;
  };
  const pitched = (): boolean => {
    const { source, rhythmKeys, plays } = state();
    return plays !== 'clave' && source !== 'microphone' && !(source === 'keys' && rhythmKeys);
  };
  const terms = (): TakeTerms => {
    const { plays, calibration, output } = state();
    const known = loudspeaker?.kind === 'measured' ? loudspeaker : loudspeaker?.kind === 'scattered' ? null : calibration;
    return {
      parts: PARTS_OF[plays],
      pitched: pitched(),
      latencyMs: known?.latencyMs ?? 0,
      trust: output !== 'steady' ? 'off' : known ? 'calibrated' : loudspeaker ? 'coarse' : 'uncalibrated',
      scoreOf: desk.scoreOf,
    };
  };
  const hearsLoudspeaker = (): boolean => state().source === 'microphone' && !state().headphones;
  /** A sound of the band is on its way: a click is something to measure by. */
  const expectMarker = ({ event, at, countIn }: SoundOnItsWay): void => {
    const player = ports.player();
    const music = player?.music();
    if (!music || !hearsLoudspeaker() || state().calibrating.kind === 'clicking' || state().replaying) return;
    if (!isAudibleClick(event, countIn, desk.desk.getState().settings.balance)) return;
    const click = player?.clickSound(event.drum ?? '');
    if (click) markers.expect(click, at, music.songZero);
  };
  /** What the clicks so far say; nothing where nobody listens to a loudspeaker. */
  const measureLoudspeaker = (): void => {
    const map = takes.clocks.map();
    loudspeaker = map && hearsLoudspeaker() ? markers.settle(map) : null;
  };

  /** While the microphone listens the percussion rests: out of a loudspeaker it would be heard as claps. */
  const ensembleNow = () => ({ ...ensembleOf(state().band), percussionRests: state().source === 'microphone' && !state().headphones });

  const soundKeys = createSoundingKeys(ports.player);
  const hear = (played: Played): void => {
    takes.hear(played);
    calibrating.hear(played);
    if (played.kind === 'onset') markers.clap(played.at);
    for (const listener of hearers) listener(played);
    if (state().soundsNotes) soundKeys.hear(played);
  };

  const judged = (recorded: Recorded): void => {
    const { take, stretch, interrupted, heard } = recorded;
    if (heard === 0) {
      if (interrupted === null) set({ silent: state().silent + 1 });
      return;
    }
    const verdict = ports.judge(recorded);
    reports += 1;
    const { pass, wholePass } = stretch;
    const report: PassReport = { id: reports, take, ...verdict, pass, wholePass, loudspeaker, interrupted };
    set({
      report,
      silent: 0,
      coarse: take.timing === 'coarse' && interrupted === null,
      tally: wholePass && interrupted === null ? counted(state().tally, take.music.performance, verdict.assessment.clean) : state().tally,
    });
  };

  const tick = (): void => {
    const player = ports.player();
    const clock = player?.clock() ?? null;
    if (clock) {
      const output = watch.read(clock.latencyMs);
      if (output !== state().output) set({ output });
      if (clock.rate !== rate) {
        rate = clock.rate;
        void findCalibration();
      }
    }
    if (state().source === 'keys' && ports.hidden()) takes.interrupt('page was away');
    if (state().source === 'microphone' && ['held', 'lost'].includes(state().device.kind)) takes.interrupt('microphone was away');
    const music = player?.music() ?? null;
    if (state().calibrating.kind === 'clicking' || state().replaying) {
      if (clock) takes.clocks.read(clock.pair);
      if (music === null) {
        // The sound may need a moment to start.
        asideWaited += 1;
        if (asideSounds || asideWaited > ASIDE_PATIENCE) finishAside();
      } else {
        asideSounds = true;
        calibrating.meet(music);
      }
      return;
    }
    measureLoudspeaker();
    for (const recorded of takes.tick(music, clock, terms())) judged(recorded);
  };

  const findCalibration = async (): Promise<void> => {
    const device = deviceName();
    const found = device === null || rate === 0 ? null : await calibrations.find(device, rate);
    if (deviceName() === device) set({ calibration: found });
  };

  /** The clicks or the replay are over. */
  const finishAside = (): void => {
    set({ replaying: null });
    const { settings, preferences } = desk.desk.getState();
    ports.player()?.setMix(mixOf(settings, preferences));
    ports.player()?.setEnsemble(ensembleNow());
    if (state().calibrating.kind !== 'clicking') return;
    const map = takes.clocks.map();
    const outcome = map ? calibrating.result(map) : ({ ok: false, why: 'too few' } as const);
    if (!outcome.ok) {
      set({ calibrating: { kind: 'failed', why: outcome.why } });
      return;
    }
    const calibration: Calibration = {
      device: deviceName() ?? 'unnamed',
      latencyMs: outcome.latencyMs,
      spreadMs: outcome.spreadMs,
      rate,
      measured: ports.now(),
    };
    set({ calibrating: { kind: 'off' }, calibration });
    void calibrations.keep(calibration);
  };

  /** Hears of the band's sounds, from when the player is there until the returned function is called. */
  const soundsFrom = (listener: (sound: SoundOnItsWay) => void): (() => void) => {
    let end: (() => void) | null = null;
    let wanted = true;
    void desk.warm().then(() => {
      if (wanted) end = ports.player()?.onSound(listener) ?? null;
    });
    return () => {
      wanted = false;
      end?.();
    };
  };

  const listenTo = (source: NoteSource): void => {
    const meet = (): void => {
      const before = deviceName();
      set({ device: source.state(), outputs: source.name === 'midi' ? sink.outputs() : [] });
      const { sendTo, outputs } = state();
      if (sendTo !== null && !outputs.some(({ id }) => id === sendTo)) send(null);
      if (deviceName() !== before) void findCalibration();
    };
    endings = [source.onChange(meet), source.onPlayed(hear), ports.every(TICK_MS, tick)];
    if (source.onHeard) endings.push(source.onHeard(markers.hear), soundsFrom(expectMarker));
    meet();
  };

  const send = (output: InputDevice['id'] | null): void => {
    endSound?.();
    endSound = null;
    sink.silence();
    set({ sendTo: output });
    if (output === null) return;
    const endHearing = ports.player()?.onSound(({ event, at, seconds, countIn }) => {
      const map = takes.clocks.map();
      if (countIn || event.midi === null || !event.part.startsWith('piano') || !map) return;
      const from = toInput(map, at);
      sink.send(output, event.midi, event.velocity, from, inputMillis(from + seconds * 1000));
    });
    const endWatching = desk.playing.subscribe((now) => {
      if (now.transport.kind === 'stopped') sink.silence();
    });
    endSound = () => {
      endHearing?.();
      endWatching();
    };
  };

  /** Sounds something beside the band: the clicks, or the take. */
  const playAside = (performance: Performance): void => {
    const player = ports.player();
    if (!player) return;
    const { settings, preferences } = desk.desk.getState();
    const mix = mixOf(settings, preferences);
    const open = { level: 0.8, muted: false };
    player.setMix({
      ...mix,
      parts: { ...mix.parts, 'piano right': open, pulse: open, percussion: open, clave: { ...mix.parts.clave, muted: false } },
    });
    asideSounds = false;
    asideWaited = 0;
    player.setEnsemble(ensembleOf(WHOLE_BAND));
    player.play({ performance, fromTick: performance.fromTick, tempo: performance.tempo, countInBars: 0 });
  };

  const close = (): void => {
    send(null);
    for (const end of endings) end();
    endings = [];
    const { source } = state();
    if (source) sources[source].close();
    soundKeys.silence();
    set({ ...FIRST, plays: state().plays, band: state().band, report: state().report, tally: state().tally });
  };

  const loopOf = (bars: LoopBars): Loop | null => {
    const { music } = desk.desk.getState();
    const report = state().report;
    if (!music || !report) return null;
    const tickOf = (bar: number): number => report.take.music.performance.bars[bar]?.tick ?? report.take.music.performance.fromTick;
    const form = music.score.form.bars;
    return { fromBar: barAt(form, tickOf(bars.fromBar)), toBar: barAt(form, tickOf(bars.toBar - 1)) + 1 };
  };

  return {
    store,
    choose(name) {
      if (state().source !== null) close();
      set({ source: name, soundsNotes: name === 'keys', silent: 0, calibrating: { kind: 'off' } });
      watch = createOutputWatch();
      takes.begin();
      markers.begin();
      listenTo(sources[name]);
      void desk.warm().then(() => ports.player()?.setEnsemble(ensembleNow()));
      void sources[name].open();
    },
    wake() {
      const { source } = state();
      if (source) void sources[source].open();
    },
    close,
    leave() {
      close();
      set({ band: WHOLE_BAND });
      ports.player()?.setEnsemble(ensembleOf(WHOLE_BAND));
    },
    set(change) {
      set(change);
      if (change.soundsNotes === false) soundKeys.silence();
      if (change.rhythmKeys !== undefined) ports.keys.setMode(change.rhythmKeys ? 'rhythm' : 'notes');
      if (change.octave !== undefined) ports.keys.setOctave(change.octave);
      if (change.headphones !== undefined) markers.begin();
      if (change.headphones !== undefined) ports.player()?.setEnsemble(ensembleNow());
      if (change.sendTo !== undefined) send(change.sendTo);
      if (change.plays !== undefined) {
        takes.begin();
        set({ tally: null });
      }
    },
    setBand(change) {
      const band = { ...state().band, ...change };
      set({ band });
      void desk.warm().then(() => ports.player()?.setEnsemble(ensembleNow()));
      if (change.click === undefined || change.click === 'as set') return;
      const clicks = change.click === 'every beat' || change.click === '2 and 4' || change.click === '1 only';
      if (clicks) desk.run({ kind: 'set', settings: { pulse: 'quarters' } });
      desk.run({ kind: 'mute', part: 'pulse', muted: !clicks });
      if (!clicks) desk.run({ kind: 'mute', part: 'clave', muted: false });
    },
    tap: (at) => hear({ kind: 'onset', strength: COARSE_NOTE / 127, at, coarse: false }),
    playMusic(performance) {
      void desk.warm().then(() => {
        const player = ports.player();
        const { settings, preferences } = desk.desk.getState();
        player?.setMix(mixOf(settings, preferences));
        player?.play({ performance, fromTick: performance.fromTick, tempo: settings.tempo, countInBars: 2 });
      });
    },
    calibrate() {
      if (state().device.kind !== 'listening') return;
      desk.run({ kind: 'stop' });
      set({ calibrating: { kind: 'clicking' } });
      void desk.warm().then(() => playAside(calibrating.start(state().source === 'microphone' ? 'loudspeaker' : 'tapping')));
    },
    loopOf,
    slowerThan(tempo) {
      const slower = heldTempo(tempo * PRACTICE.slowerShare.value);
      return slower < tempo ? slower : null;
    },
    playLoop(bars, tempo) {
      const loop = loopOf(bars);
      if (!loop) return;
      desk.run({ kind: 'loop bars', loop });
      if (tempo !== undefined) desk.run({ kind: 'set', settings: { tempo } });
      desk.run({ kind: 'play' });
    },
    replay(withWhat, shiftBars) {
      const report = state().report;
      if (!report) return;
      const bar = report.take.music.performance.bars[0]?.ticks ?? 1920;
      desk.run({ kind: 'stop' });
      const music = replayOf(report.take, withWhat, shiftBars * bar);
      const claveStrokes = music.events.filter(({ part }) => part === 'clave').length;
      set({ replaying: { side: shiftBars ? 'other' : 'as played', met: claveMet(music), claveStrokes } });
      playAside(music);
    },
    readFigure() {
      const report = state().report;
      return report && playedFigure(report.take, desk.desk.getState().settings.direction);
    },
    rate(rating) {
      set({ ratings: [...state().ratings, rating].slice(-MOST_RATINGS) });
    },
    onPlayed(listener) {
      hearers.add(listener);
      return () => hearers.delete(listener);
    },
    level: () => {
      const { source } = state();
      return source ? sources[source].level() : 0;
    },
  };
}

/** The tally with one more whole pass; another loop begins a new one. */
function counted(before: Tally | null, { fromTick, toTick }: Performance, clean: boolean): Tally {
  const same = before?.fromTick === fromTick && before.toTick === toTick ? before : { passes: 0, clean: 0, cleanInARow: 0 };
  return {
    fromTick,
    toTick,
    passes: same.passes + 1,
    clean: same.clean + (clean ? 1 : 0),
    cleanInARow: clean ? same.cleanInARow + 1 : 0,
  };
}
