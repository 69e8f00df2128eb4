import { createStore } from 'zustand/vanilla';
import { createRecorderPlayer } from '../../src/audio/recorder-player';
import type { Command } from '../../src/state/command';
import type { DeskState, PlayingState } from '../../src/state/desk-state';
import { judgeStretch } from '../../src/state/listening/judge';
import { createListening, type ListeningPorts } from '../../src/state/listening/listening';
import type { HeardSound, NoteSource, Played, SourceName, SourceState } from '../../src/state/listening/ports';
import { DEFAULT_PREFERENCES, DEFAULT_SETTINGS } from '../../src/state/settings';
import { inputMillis } from '../../src/vocabulary';
import { BAR } from '../audio/player-bench';
import { memoryStorage } from './memory-storage';

/** An input that does what a test says. */
export class Source implements NoteSource {
  current: SourceState = { kind: 'off' };
  #changes = new Set<() => void>();
  #ears = new Set<(heard: HeardSound) => void>();
  #hearers = new Set<(played: Played) => void>();
  constructor(readonly name: SourceName) {}
  async open(): Promise<void> {
    this.become({ kind: 'listening', devices: [{ id: '1', name: 'Ferry 1' }] });
  }
  close(): void {
    this.become({ kind: 'off' });
  }
  become(state: SourceState): void {
    this.current = state;
    for (const change of this.#changes) change();
  }
  play(played: Played): void {
    for (const hear of this.#hearers) hear(played);
  }
  state = (): SourceState => this.current;
  level = (): number => 0;
  onChange = (listener: () => void): (() => void) => {
    this.#changes.add(listener);
    return () => this.#changes.delete(listener);
  };
  hear(heard: HeardSound): void {
    for (const ear of this.#ears) ear(heard);
  }
  onHeard = (listener: (heard: HeardSound) => void): (() => void) => {
    this.#ears.add(listener);
    return () => this.#ears.delete(listener);
  };
  onPlayed = (listener: (played: Played) => void): (() => void) => {
    this.#hearers.add(listener);
    return () => this.#hearers.delete(listener);
  };
}

/** Listening with everything it asks of the world made up, and a clock that the test turns. */
export function bench(change: Partial<ListeningPorts> = {}) {
  const player = createRecorderPlayer();
  const sources = { midi: new Source('midi'), keys: new Source('keys'), microphone: new Source('microphone') };
  const commands: Command[] = [];
  const { kept, storage } = memoryStorage();
  const ticks = new Set<() => void>();
  const desk = createStore(() => ({ settings: DEFAULT_SETTINGS, preferences: DEFAULT_PREFERENCES, music: null }) as unknown as DeskState);
  const playing = createStore(() => ({ transport: { kind: 'stopped' } }) as PlayingState);
  const run = (command: Command): void => {
    commands.push(command);
    if (command.kind === 'stop') player.stop();
  };
  const listening = createListening({
    desk: { desk, playing, run, scoreOf: () => null, warm: async () => undefined },
    player: () => player,
    sources,
    keys: { setMode: () => undefined, setOctave: () => undefined },
    sink: { outputs: () => [], send: () => undefined, silence: () => undefined },
    storage,
    judge: judgeStretch,
    now: () => 1_000_000,
    every: (_, action) => {
      ticks.add(action);
      return () => ticks.delete(action);
    },
    hidden: () => false,
    ...change,
  });
  let seconds = 0;
  const pass = async (forSeconds: number): Promise<void> => {
    for (const end = seconds + forSeconds; seconds < end - 1e-9; ) {
      player.pass(0.2);
      seconds += 0.2;
      for (const tick of ticks) tick();
    }
    await Promise.resolve();
  };
  /** Plays every step of `passes` passes of a two-bar loop, `late` milliseconds behind, from `from` seconds on. */
  const playAlong = (source: Source, from: number, passes: number, late: number, midi = 60): void => {
    for (let step = 0; step < passes * 16; step += 1) {
      const at = inputMillis((from + (step * BAR) / 8) * 1000 + late);
      source.play({ kind: 'note on', midi, velocity: 90, at, coarse: false });
      source.play({ kind: 'note off', midi, at: inputMillis(at + 40) });
    }
  };
  return { listening, player, sources, commands, desk, kept, pass, playAlong, ticks, store: listening.store, now: () => seconds };
}
