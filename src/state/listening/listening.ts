import { createStore } from 'zustand/vanilla';
import type { Desk } from '../desk';
import type { Player, Storage } from '../ports';
import { mixOf } from '../settings';
import { createAfterReport } from './after-report';
import { createAside } from './aside';
import { createDeviceDelay } from './device-delay';
import type { Judged } from './judge';
import { ensembleOf, type Listening, type ListeningState, NOT_LISTENING, PARTS_OF, type PassReport, WHOLE_BAND } from './listening-state';
import { createLoudspeaker } from './loudspeaker';
import { createOutputWatch } from './output-trust';
import type { NoteSink, NoteSource, Played, SourceName } from './ports';
import { createSending } from './sending';
import { createSoundingKeys } from './sounding-keys';
import { createTakes, type Recorded, type TakeTerms } from './takes';
import { tallied } from './tally';

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

const TICK_MS = 200;
const MOST_RATINGS = 12;
const COARSE_NOTE = 64;

/** Joins the inputs to the desk. Nothing is asked for and nothing listens until `choose`. */
export function createListening(ports: ListeningPorts): Listening {
  const { desk, sources, sink, player } = ports;
  const store = createStore<ListeningState>(() => NOT_LISTENING);
  const { getState: state, setState: set } = store;

  const hearsLoudspeaker = (): boolean => state().source === 'microphone' && !state().headphones;
  /** Clicks or a replay sound, not the band. */
  const isAside = (): boolean => state().calibrating.kind === 'clicking' || state().replaying !== null;
  /** While the microphone listens the percussion rests: out of a loudspeaker it would be heard as claps. */
  const ensembleNow = () => ({ ...ensembleOf(state().band), percussionRests: hearsLoudspeaker() });

  const takes = createTakes();
  const delay = createDeviceDelay(store, ports.storage, ports.now);
  const loudspeaker = createLoudspeaker(desk, player, () => hearsLoudspeaker() && !isAside());
  const aside = createAside(desk, player, ensembleNow);
  const sending = createSending({ sink, player, playing: desk.playing, clocks: takes.clocks.map });
  const soundKeys = createSoundingKeys(player);
  const hearers = new Set<(played: Played) => void>();
  let watch = createOutputWatch();
  let reports = 0;
  let endings: (() => void)[] = [];

  const terms = (): TakeTerms => {
    const { source, rhythmKeys, plays, calibration, output } = state();
    const told = loudspeaker.delay();
    const known = told?.kind === 'measured' ? told : told?.kind === 'scattered' ? null : calibration;
    return {
      parts: PARTS_OF[plays],
      pitched: plays !== 'clave' && source !== 'microphone' && !(source === 'keys' && rhythmKeys),
      latencyMs: known?.latencyMs ?? 0,
      trust: output !== 'steady' ? 'off' : known ? 'calibrated' : told ? 'coarse' : 'uncalibrated',
      scoreOf: desk.scoreOf,
    };
  };

  const hear = (played: Played): void => {
    takes.hear(played);
    delay.hear(played);
    if (played.kind === 'onset') loudspeaker.clap(played.at);
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
    const report: PassReport = { id: reports, take, ...verdict, pass, wholePass, loudspeaker: loudspeaker.delay(), interrupted };
    set({
      report,
      silent: 0,
      coarse: take.timing === 'coarse' && interrupted === null,
      tally: wholePass && interrupted === null ? tallied(state().tally, take.music.performance, verdict.assessment.clean) : state().tally,
    });
  };

  const finishAside = (): void => {
    set({ replaying: null });
    aside.end();
    if (state().calibrating.kind === 'clicking') delay.finish(takes.clocks.map());
  };

  const tick = (): void => {
    const clock = player()?.clock() ?? null;
    if (clock) {
      const output = watch.read(clock.latencyMs);
      if (output !== state().output) set({ output });
      delay.outputRate(clock.rate);
    }
    if (state().source === 'keys' && ports.hidden()) takes.interrupt('page was away');
    if (state().source === 'microphone' && ['held', 'lost'].includes(state().device.kind)) takes.interrupt('microphone was away');
    const music = player()?.music() ?? null;
    if (isAside()) {
      if (clock) takes.clocks.read(clock.pair);
      if (music) delay.meet(music);
      if (aside.look(music) === 'over') finishAside();
      return;
    }
    loudspeaker.measure(takes.clocks.map());
    for (const recorded of takes.tick(music, clock, terms())) judged(recorded);
  };

  const send = (output: string | null): void => {
    set({ sendTo: output });
    sending.to(output);
  };

  const listenTo = (source: NoteSource): void => {
    const meet = (): void => {
      const before = delay.deviceName();
      set({ device: source.state(), outputs: source.name === 'midi' ? sink.outputs() : [] });
      const { sendTo, outputs } = state();
      if (sendTo !== null && !outputs.some(({ id }) => id === sendTo)) send(null);
      if (delay.deviceName() !== before) delay.find();
    };
    endings = [source.onChange(meet), source.onPlayed(hear), ports.every(TICK_MS, tick), loudspeaker.listenTo(source)];
    meet();
  };

  const close = (): void => {
    send(null);
    for (const end of endings) end();
    endings = [];
    const { source, plays, band, report, tally } = state();
    if (source) sources[source].close();
    soundKeys.silence();
    set({ ...NOT_LISTENING, plays, band, report, tally });
  };

  return {
    store,
    ...createAfterReport(store, desk, aside),
    choose(name) {
      if (state().source !== null) close();
      set({ source: name, soundsNotes: name === 'keys', silent: 0, calibrating: { kind: 'off' } });
      watch = createOutputWatch();
      takes.begin();
      loudspeaker.begin();
      listenTo(sources[name]);
      void desk.warm().then(() => player()?.setEnsemble(ensembleNow()));
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
      player()?.setEnsemble(ensembleOf(WHOLE_BAND));
    },
    set(change) {
      set(change);
      if (change.soundsNotes === false) soundKeys.silence();
      if (change.rhythmKeys !== undefined) ports.keys.setMode(change.rhythmKeys ? 'rhythm' : 'notes');
      if (change.octave !== undefined) ports.keys.setOctave(change.octave);
      if (change.headphones !== undefined) {
        loudspeaker.begin();
        player()?.setEnsemble(ensembleNow());
      }
      if (change.sendTo !== undefined) send(change.sendTo);
      if (change.plays !== undefined) {
        takes.begin();
        set({ tally: null });
      }
    },
    setBand(change) {
      const band = { ...state().band, ...change };
      set({ band });
      void desk.warm().then(() => player()?.setEnsemble(ensembleNow()));
      if (change.click === undefined || change.click === 'as set') return;
      const clicks = change.click === 'every beat' || change.click === '2 and 4' || change.click === '1 only';
      if (clicks) desk.run({ kind: 'set', settings: { pulse: 'quarters' } });
      desk.run({ kind: 'mute', part: 'pulse', muted: !clicks });
      if (!clicks) desk.run({ kind: 'mute', part: 'clave', muted: false });
    },
    tap: (at) => hear({ kind: 'onset', strength: COARSE_NOTE / 127, at, coarse: false }),
    playMusic(performance) {
      void desk.warm().then(() => {
        const { settings, preferences } = desk.desk.getState();
        player()?.setMix(mixOf(settings, preferences));
        player()?.play({ performance, fromTick: performance.fromTick, tempo: settings.tempo, countInBars: 2 });
      });
    },
    calibrate() {
      if (state().device.kind !== 'listening') return;
      desk.run({ kind: 'stop' });
      set({ calibrating: { kind: 'clicking' } });
      void desk.warm().then(() => aside.play(delay.clicks()));
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
