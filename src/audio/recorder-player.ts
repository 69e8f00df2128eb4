import { FULL_BAND } from '../performance/ensemble';
import type { SoundOnItsWay } from '../state/listening/ports';
import type { Mix, Player, PlayRequest } from '../state/ports';
import { audioSeconds, inputMillis } from '../vocabulary';
import type { LookAhead } from './look-ahead';
import { AHEAD_SECONDS, startLookAhead, TICK_MS } from './look-ahead';

/** A player that sounds nothing and writes down everything, on a clock that its owner turns. */
export interface RecorderPlayer extends Player {
  /** Lets `seconds` pass, in ticks of `TICK_MS`. */
  pass(seconds: number): void;
  /** Everything handed over since it was made, with its time on the recorder's clock. */
  recorded(): readonly SoundOnItsWay[];
  /** Chords sounded by `sound`. */
  touched(): readonly (readonly number[])[];
  mix(): Mix | null;
}

const TICK_SECONDS = TICK_MS / 1000;

/** A fresh recorder, its clock at 0. */
export function createRecorderPlayer(): RecorderPlayer {
  const listeners = new Set<() => void>();
  const hearers = new Set<(sound: SoundOnItsWay) => void>();
  const sounds: SoundOnItsWay[] = [];
  const strokes: (readonly number[])[] = [];
  let now = 0;
  let look: LookAhead | null = null;
  let mix: Mix | null = null;
  let ensemble = FULL_BAND;
  let started = false;
  let announced = '';

  const tick = (): void => {
    if (look === null) return;
    const handed = look.advance(audioSeconds(now + AHEAD_SECONDS));
    sounds.push(...handed);
    for (const sound of handed) for (const hear of hearers) hear(sound);
    const end = look.endsAt();
    if (end !== null && now >= end) look = null;
  };
  const announce = (): void => {
    const state = player.transportState().kind;
    if (state === announced) return;
    announced = state;
    for (const listener of listeners) listener();
  };

  const player: RecorderPlayer = {
    play(request: PlayRequest) {
      look = startLookAhead(request, audioSeconds(now));
      look.setEnsemble(ensemble);
      started = true;
      tick();
      announce();
    },
    stop() {
      look = null;
      announce();
    },
    change: (performance) => look?.change(performance) ?? null,
    cue: () => look?.cueAt(audioSeconds(now)) ?? null,
    vamp: () => look?.vampAt(audioSeconds(now)) ?? null,
    setTempo: (tempo) => look?.setTempo(tempo),
    setEnsemble(next) {
      ensemble = next;
      look?.setEnsemble(next);
    },
    setMix(next) {
      mix = next;
    },
    sound(midi) {
      strokes.push(midi);
    },
    hold(midi) {
      strokes.push([midi]);
    },
    letGo: () => undefined,
    heard: () => look?.heardAt(audioSeconds(now)) ?? null,
    clock: () => ({ pair: { audio: audioSeconds(now), input: inputMillis(now * 1000) }, latencyMs: 0, rate: 48_000 }),
    onSound(listener) {
      hearers.add(listener);
      return () => hearers.delete(listener);
    },
    music: () => look?.music() ?? null,
    clickSound: () => null,
    soundState: () => (started ? { kind: 'running', samples: 'ready' } : { kind: 'off' }),
    transportState() {
      if (look === null) return { kind: 'stopped' };
      return player.heard()?.countIn === null ? { kind: 'playing' } : { kind: 'counting in' };
    },
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    pass(seconds) {
      for (const end = now + seconds; now < end - 1e-9; ) {
        now = Math.min(end, now + TICK_SECONDS);
        tick();
        announce();
      }
    },
    recorded: () => sounds,
    touched: () => strokes,
    mix: () => mix,
  };
  return player;
}
