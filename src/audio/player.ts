// long because everything that one press of Play sets going is joined here

import { FULL_BAND } from '../performance/ensemble';
import { INSTRUMENTS } from '../performance/sounds/sample-set';
import type { SoundOnItsWay } from '../state/listening/ports';
import type { Mix, Player, PlayRequest, SoundState, TransportState } from '../state/ports';
import { type AudioSeconds, audioSeconds, inputMillis } from '../vocabulary';
import { createAudioDevice } from './audio-device';
import { createBanks } from './banks';
import { heardTime, readClock } from './heard-time';
import type { LookAhead } from './look-ahead';
import { AHEAD_SECONDS, startLookAhead, TICK_MS } from './look-ahead';
import type { Mixer, MixerSound, StartedSound } from './mixer';
import { joinTabs } from './tab-claim';
import { createTicker } from './ticker';

/*
 * The player of the page. Pressing Play wakes the audio context inside the gesture, fetches the mixer (the part with
 * Tone.js in it) and waits a moment for the recordings; then a look-ahead hands every sound to the mixer with its
 * absolute time. Hidden pages are ticked late, so they look further ahead.
 */

const AHEAD_HIDDEN_SECONDS = 1.5;
/** From the first tick of the scheduler to the first sound. */
const RUN_UP_SECONDS = 0.06;
/** How long Play waits for the recordings before it starts with made sounds. */
const RECORDINGS_PATIENCE_MS = 300;
/** A sound that is this late, after the page was held up, is left out: the music goes on in time instead of bunching. */
const TOO_LATE_SECONDS = 0.1;
const TOUCH_SECONDS = 0.7;
/** Longer than any recording rings. */
const LONGEST_HOLD_SECONDS = 30;

interface Session {
  request: PlayRequest;
  readonly pressedAt: number;
  look: LookAhead | null;
}

/** What a page, or a test, may choose. */
export interface PlayerOptions {
  /** Address of the folder with the recordings; `samples/` beside the page when missing. */
  readonly samplesFolder?: string;
  /** Hears of every sound that is handed to the mixer. */
  readonly witness?: (sound: SoundOnItsWay) => void;
}

/** The player for the life of the page: make one, and only one. Starts to load the recordings at once; sounds nothing until asked. */
export function createPlayer({ samplesFolder, witness }: PlayerOptions = {}): Player {
  const folder = samplesFolder ?? new URL('samples/', document.baseURI).href;
  const listeners = new Set<() => void>();
  const hearers = new Set<(sound: SoundOnItsWay) => void>();
  let mixer: Mixer | null = null;
  let mixerLoading: Promise<void> | null = null;
  let mixerFailed = false;
  let mix: Mix | null = null;
  let ensemble = FULL_BAND;
  let session: Session | null = null;
  let announced = '';

  const banks = createBanks(folder, () => {
    if (mixer !== null) for (const instrument of INSTRUMENTS) mixer.takeBank(instrument, banks.bank(instrument));
    begin();
    announce();
  });
  const device = createAudioDevice(
    () => {
      begin();
      announce();
    },
    () => restartAfterReplacement(),
  );
  const ticker = createTicker(() => onTick());
  const tabs = joinTabs(() => player.stop());

  const loadMixer = (context: AudioContext): void => {
    mixerLoading ??= import('./mixer').then(
      ({ createMixer }) => {
        if (context !== device.context()) return;
        mixer = createMixer(context);
        for (const instrument of INSTRUMENTS) mixer.takeBank(instrument, banks.bank(instrument));
        if (mix !== null) mixer.setMix(mix);
        begin();
      },
      () => {
        mixerLoading = null;
        mixerFailed = true;
        session = null;
        announce();
      },
    );
  };
  const wake = (): void => {
    mixerFailed = false;
    const context = device.wake();
    if (context !== null) loadMixer(context);
    banks.load();
  };

  /** Acts on the mixer now, or as soon as it is there if that is at once enough to belong to the touch. */
  const atOnce = (act: (now: number, mixer: Mixer) => void): void => {
    wake();
    const pressedAt = performance.now();
    const strike = (): void => {
      const context = device.context();
      if (mixer === null || context === null || performance.now() - pressedAt > 1000) return;
      act(context.currentTime, mixer);
      ticker.start(TICK_MS);
    };
    if (mixer === null) void mixerLoading?.then(strike);
    else strike();
  };
  /** Keys that are held; null while they wait for their sound. */
  const keys = new Map<number, StartedSound | null>();

  /** Starts what waits, once mixer and device are there and the recordings are too, or have been waited for long enough. */
  const begin = (): void => {
    const context = device.context();
    if (session === null || session.look !== null || mixer === null || context === null || context.state !== 'running') return;
    const waited = performance.now() - session.pressedAt;
    if (banks.state().samples === 'loading' && waited < RECORDINGS_PATIENCE_MS) {
      setTimeout(begin, RECORDINGS_PATIENCE_MS - waited);
      return;
    }
    session.look = startLookAhead(session.request, audioSeconds(context.currentTime + RUN_UP_SECONDS));
    session.look.setEnsemble(ensemble);
    ticker.start(TICK_MS);
    onTick();
  };

  const onTick = (): void => {
    const context = device.context();
    if (mixer === null || context === null) return;
    mixer.tick();
    const look = session?.look ?? null;
    if (look === null) {
      if (mixer.voices() === 0) ticker.pause();
      return;
    }
    // A context that stands still keeps its time, so the music waits with it.
    if (context.state !== 'running') return;
    const now = context.currentTime;
    for (const sound of look.advance(audioSeconds(now + (document.hidden ? AHEAD_HIDDEN_SECONDS : AHEAD_SECONDS)))) {
      if (sound.at < now - TOO_LATE_SECONDS) continue;
      mixer.start(sound.event, sound.at, sound.seconds, sound.countIn ? 'count-in' : undefined);
      witness?.(sound);
      for (const hear of hearers) hear(sound);
    }
    const end = look.endsAt();
    if (end !== null && heardTime(readClock(context)) >= end) session = null;
    announce();
  };

  /** What the look-ahead says about the moment that is heard now, or null when nothing plays. */
  const atHeard = <Answer>(ask: (look: LookAhead, at: AudioSeconds) => Answer): Answer | null => {
    const context = device.context();
    const look = session?.look ?? null;
    return look === null || context === null ? null : ask(look, heardTime(readClock(context)));
  };

  const restartAfterReplacement = (): void => {
    const heard = player.heard();
    const form = atHeard((look, at) => look.formAt(at));
    mixer = null;
    mixerLoading = null;
    if (session !== null) {
      const { request } = session;
      const bar = heard?.performance.bars.findLast(({ tick }) => tick <= heard.tick);
      const from = bar?.tick ?? request.fromTick;
      session = {
        request: { ...request, performance: form ?? request.performance, fromTick: from, countInBars: 0 },
        pressedAt: performance.now(),
        look: null,
      };
    }
    const context = device.context();
    if (context !== null) loadMixer(context);
  };

  const soundState = (): SoundState => {
    const state = device.state();
    if (mixerFailed) return { kind: 'blocked', reason: 'a part of the program could not be fetched' };
    if (state.kind === 'waking') return { kind: 'starting' };
    return state.kind === 'running' ? { kind: 'running', ...banks.state() } : state;
  };
  const transportState = (): TransportState => {
    if (session === null) return { kind: 'stopped' };
    if (session.look === null) return { kind: 'starting' };
    return player.heard()?.countIn === null ? { kind: 'playing' } : { kind: 'counting in' };
  };
  const announce = (): void => {
    const now = JSON.stringify([soundState(), transportState()]);
    if (now === announced) return;
    announced = now;
    for (const listener of listeners) listener();
  };

  const player: Player = {
    play(request) {
      // A request that cannot be played is a mistake of ours: it throws here, not later in a timer.
      startLookAhead(request, audioSeconds(0));
      if (session !== null) mixer?.silence();
      session = { request, pressedAt: performance.now(), look: null };
      tabs.claim();
      wake();
      begin();
      announce();
    },
    stop() {
      if (session === null) return;
      session = null;
      mixer?.silence();
      announce();
    },
    change(music) {
      if (session === null) return null;
      if (session.look !== null) {
        const landing = session.look.change(music);
        if (landing !== null) session.request = { ...session.request, performance: music };
        return landing;
      }
      const { request } = session;
      const fromTick = music.bars.some(({ tick }) => tick === request.fromTick) ? request.fromTick : music.fromTick;
      session.request = { ...request, performance: music, fromTick };
      return fromTick;
    },
    cue: () => atHeard((look, at) => look.cueAt(at)),
    vamp: () => atHeard((look, at) => look.vampAt(at)),
    setTempo(tempo) {
      if (session === null) return;
      session.request = { ...session.request, tempo };
      session.look?.setTempo(tempo);
    },
    setEnsemble(next) {
      ensemble = next;
      session?.look?.setEnsemble(next);
    },
    setMix(next) {
      mix = next;
      mixer?.setMix(next);
    },
    sound(midi, velocity) {
      atOnce((now, mixer) => {
        for (const note of midi) mixer.start(touched(note, velocity), now, TOUCH_SECONDS, 'touch');
      });
    },
    hold(midi, velocity) {
      keys.get(midi)?.end();
      keys.set(midi, null);
      atOnce((now, mixer) => {
        // A key let go before the sound was there is not struck any more.
        if (keys.has(midi)) keys.set(midi, mixer.start(touched(midi, velocity), now, LONGEST_HOLD_SECONDS, 'touch'));
      });
    },
    letGo(midi) {
      keys.get(midi)?.end();
      keys.delete(midi);
    },
    heard: () => atHeard((look, at) => look.heardAt(at)),
    clock() {
      const context = device.context();
      if (context === null || context.state !== 'running') return null;
      const reading = readClock(context);
      const latency = reading.outputLatency ?? reading.baseLatency;
      return {
        pair: { audio: heardTime(reading), input: inputMillis(reading.nowMs) },
        latencyMs: latency === null ? null : latency * 1000,
        rate: context.sampleRate,
      };
    },
    onSound(listener) {
      hearers.add(listener);
      return () => hearers.delete(listener);
    },
    music: () => session?.look?.music() ?? null,
    clickSound: (drum) => mixer?.clickSound(drum) ?? null,
    soundState,
    transportState,
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };

  document.addEventListener('visibilitychange', onTick);
  addEventListener('online', () => banks.load());
  banks.load();
  // The mixer is fetched ahead, so that Play finds it; should that fail, pressing Play asks again and reports.
  // Tone.js greets in the console unless told not to.
  Object.assign(globalThis, { TONE_SILENCE_LOGGING: true });
  import('./mixer').catch(() => undefined);
  return player;
}

function touched(midi: number, velocity: number): MixerSound {
  return { part: 'piano right', midi, drum: null, velocity };
}
