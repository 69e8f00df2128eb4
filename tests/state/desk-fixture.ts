// long because it stands in for every port of the desk and its rooms in one place
import { DEMO_BOOK } from '../../src/music/chart/demo-book';
import { readQuickLine } from '../../src/music/chart/quick-line';
import { readChart } from '../../src/music/chart/read';
import { arrange, type Score } from '../../src/music/score';
import { perform } from '../../src/performance/perform';
import type { Performance } from '../../src/performance/performance';
import { createAssignmentRoom } from '../../src/state/assignment/assignment-room';
import { createDesk, type Desk, type DeskPorts } from '../../src/state/desk';
import { createJournal, type Journal } from '../../src/state/journal/journal';
import { createLibrary, type Library } from '../../src/state/library/library';
import { createLinkRoom } from '../../src/state/link/link-room';
import type {
  Archive,
  FileSaver,
  Heard,
  JournalEntry,
  JournalStore,
  Mix,
  Player,
  PlayRequest,
  SoundingVamp,
  SoundState,
  Storage,
  StorageWrite,
  TransportState,
} from '../../src/state/ports';
import { createSafety, type Safety } from '../../src/state/safety/safety';

/** A player that makes no sound and writes down what was asked of it; `tick` is set by hand. */
export class SilentPlayer implements Player {
  readonly calls: string[] = [];
  readonly requests: PlayRequest[] = [];
  performance: Performance | null = null;
  mix: Mix | null = null;
  tick = 0;
  countIn: number | null = null;
  /** The tick at which the next change lands. */
  landing: number | null = 3840;
  #listeners = new Set<() => void>();

  play(request: PlayRequest): void {
    this.calls.push('play');
    this.requests.push(request);
    this.performance = request.performance;
    this.tick = request.fromTick;
    this.#say();
  }
  stop(): void {
    this.calls.push('stop');
    this.performance = null;
    this.#say();
  }
  change(performance: Performance): number | null {
    this.calls.push('change');
    this.performance = performance;
    return this.landing;
  }
  /** The vamp that is heard, set by hand. */
  sounding: SoundingVamp | null = null;
  cue(): 'leaving' | 'one more round' | null {
    this.calls.push('cue');
    if (this.sounding === null) return null;
    this.sounding = { ...this.sounding, state: this.sounding.state === 'holding' ? 'leaving' : this.sounding.state };
    return this.sounding.state === 'one more round' ? 'one more round' : 'leaving';
  }
  vamp(): SoundingVamp | null {
    return this.performance && this.sounding;
  }
  setTempo(tempo: number): void {
    this.calls.push(`tempo ${tempo}`);
  }
  setMix(mix: Mix): void {
    this.mix = mix;
  }
  sound(midi: readonly number[]): void {
    this.calls.push(`sound ${midi.join(' ')}`);
  }
  hold(midi: number): void {
    this.calls.push(`hold ${midi}`);
  }
  letGo(midi: number): void {
    this.calls.push(`let go ${midi}`);
  }
  heard(): Heard | null {
    return this.performance && { tick: this.tick, pass: 0, countIn: this.countIn, performance: this.performance };
  }
  setEnsemble(): void {}
  clock(): null {
    return null;
  }
  onSound(): () => void {
    return () => undefined;
  }
  clickSound = (): null => null;
  music(): null {
    return null;
  }
  soundState(): SoundState {
    return { kind: 'running', samples: 'ready' };
  }
  transportState(): TransportState {
    return { kind: this.performance ? 'playing' : 'stopped' };
  }
  onChange(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }
  #say(): void {
    for (const listener of this.#listeners) listener();
  }
}

/** The storage of one device, shared by its tabs: each `tab()` is a Storage that hears what the others write. */
export class DeviceStorage {
  readonly records = new Map<string, string>();
  /** When set, writes (of keys it says yes to) are refused with `reason`. */
  refuses: ((key: string) => boolean) | null = null;
  reason = 'the storage of this device is full';
  #tabs = new Set<(key: string) => void>();
  #cleared = new Set<() => void>();
  /** What tabs of this version are told when a newer one comes. */
  #newer = new Set<() => void>();
  /** A newer version of the page changes what is kept here: from now on every tab is refused. */
  becomeNewer(): void {
    this.refuses = () => true;
    this.refusesReads = true;
    this.reason = 'a newer version of this page has written here';
    for (const tell of this.#newer) tell();
  }
  refusesReads = false;

  /** While set, what it says yes to waits for `answer()`; what was asked first is answered first. */
  hangs: ((act: 'read' | 'write', key: string) => boolean) | null = null;
  #stuck: (() => void)[] = [];
  /** Everything that hangs goes on, in the order it was asked for. */
  answer(): void {
    this.hangs = null;
    for (const go of this.#stuck.splice(0)) go();
  }
  async #hang(act: 'read' | 'write', key: string): Promise<void> {
    if (this.hangs?.(act, key)) await new Promise<void>((resolve) => this.#stuck.push(resolve));
  }

  /** Held before every write of the journal, where a test wants to come between. */
  journalGate: (() => Promise<void>) | null = null;
  /** The journal of the device. */
  readonly entries = new Map<string, JournalEntry>();
  lasting = { lasting: false, usage: 1_000, quota: 1_000_000 };
  reloads = 0;

  journalStore(): JournalStore {
    return {
      add: async (entries) => {
        await this.journalGate?.();
        await this.#hang('write', 'journal');
        if (this.refuses?.('journal')) return { kind: 'refused', reason: this.reason };
        for (const entry of entries) if (!this.entries.has(entry.id)) this.entries.set(entry.id, entry);
        return { kind: 'kept' };
      },
      between: async (from, to) => {
        await this.#hang('read', 'journal');
        return [...this.entries.values()].filter(({ at }) => at >= from && at < to).sort((a, b) => a.at - b.at);
      },
      remove: async (ids) => {
        await this.#hang('write', 'journal');
        for (const id of ids) this.entries.delete(id);
      },
      clear: async () => this.entries.clear(),
    };
  }

  /** The whole device, as the archive gives it. */
  archive(): Archive {
    return {
      all: async () => {
        if (this.hangs) await this.#hang('read', 'everything');
        if (this.refusesReads) throw new Error(this.reason);
        return new Map(this.records);
      },
      remove: async (keys) => {
        for (const key of keys) this.records.delete(key);
      },
      clear: async () => this.records.clear(),
    };
  }

  tab(): Storage {
    const own = new Set<(key: string) => void>();
    const ownCleared = new Set<() => void>();
    let sealed = false;
    return {
      read: async (key) => {
        if (this.hangs) await this.#hang('read', key);
        if (this.refusesReads) return { kind: 'refused', reason: this.reason };
        const text = this.records.get(key);
        return text === undefined ? { kind: 'nothing' } : { kind: 'found', text };
      },
      write: async (key, text): Promise<StorageWrite> => {
        if (sealed) return { kind: 'refused', reason: 'everything was deleted in another tab' };
        if (this.hangs) await this.#hang('write', key);
        if (this.refuses?.(key)) return { kind: 'refused', reason: this.reason };
        this.records.set(key, text);
        for (const tell of this.#tabs) if (!own.has(tell)) tell(key);
        return { kind: 'kept' };
      },
      onOtherTab: (listener) => {
        own.add(listener);
        this.#tabs.add(listener);
        return () => this.#tabs.delete(listener);
      },
      tellCleared: () => {
        for (const tell of this.#cleared) if (!ownCleared.has(tell)) tell();
      },
      onNewer: (listener) => {
        this.#newer.add(listener);
        if (this.refusesReads) listener();
        return () => this.#newer.delete(listener);
      },
      onCleared: (listener) => {
        const heard = (): void => {
          sealed = true;
          listener();
        };
        ownCleared.add(heard);
        this.#cleared.add(heard);
        return () => this.#cleared.delete(heard);
      },
    };
  }
}

/** A timer turned by hand. */
export class HandTimer {
  #waiting = new Set<{ left: number; readonly action: () => void }>();
  after = (ms: number, action: () => void): (() => void) => {
    const entry = { left: ms, action };
    this.#waiting.add(entry);
    return () => this.#waiting.delete(entry);
  };
  pass(ms: number): void {
    for (const entry of [...this.#waiting]) {
      entry.left -= ms;
      if (entry.left > 0) continue;
      this.#waiting.delete(entry);
      entry.action();
    }
  }
}

export interface DeskBench {
  readonly desk: Desk;
  readonly player: SilentPlayer;
  readonly timer: HandTimer;
  readonly device: DeviceStorage;
  readonly saved: { readonly name: string; readonly type: string; readonly bytes: Uint8Array }[];
  /** Draws one frame. */
  readonly frame: () => void;
  /** Lets the autosave run and everything it started settle. */
  readonly settle: () => Promise<void>;
}

/** A desk over the real stages, a silent player and the storage of a device. */
export function deskBench(
  parts: { device?: DeviceStorage; ports?: Partial<DeskPorts>; ids?: string; clock?: () => number } = {},
): DeskBench {
  const device = parts.device ?? new DeviceStorage();
  const player = new SilentPlayer();
  const timer = new HandTimer();
  const saved: DeskBench['saved'] = [];
  const frames = new Set<() => void>();
  const saver: FileSaver = { save: (name, type, bytes) => saved.push({ name, type, bytes }) };
  let ids = 0;
  let clock = 1_000;
  const storage = device.tab();
  const now = (): number => {
    clock += 1;
    return clock;
  };
  const newId = (): string => {
    ids += 1;
    return `${parts.ids ?? 'own'}-${ids}`;
  };
  let library: Promise<Library> | null = null;
  let journal: Promise<Journal> | null = null;
  let safety: Promise<Safety> | null = null;
  const room = (): Promise<Library> => {
    library ??= createLibrary({
      desk,
      storage,
      archive: device.archive(),
      saver,
      readSheet: async () => ({ ok: false, faults: [] }),
      considerBackup: async (name, text) => (await desk.rooms.safety()).considerRestore(name, text),
      considerAssignments: async (files) => (await (await desk.rooms.journal()).assignments()).give(files),
      now,
      newId,
    });
    return library;
  };
  const desk: Desk = createDesk({
    stages: { readChart, arrange, perform },
    readQuickLine: async (line) => readQuickLine(line),
    demos: DEMO_BOOK,
    storage,
    saver,
    midi: async (score: Score) => new TextEncoder().encode(score.title),
    loadPlayer: async () => player,
    afterFrame: (act) => {
      act();
      return () => undefined;
    },
    everyFrame: (onFrame) => {
      frames.add(onFrame);
      return () => frames.delete(onFrame);
    },
    timer,
    now,
    newId,
    rooms: {
      takeAlong: () => Promise.reject(new Error('this bench has no take-along')),
      link: async () => createLinkRoom(desk, async (text) => (await room()).add(text)),
      journal: () => {
        journal ??= createJournal({
          desk,
          journal: device.journalStore(),
          storage,
          saver,
          stages: { readChart, arrange },
          now: parts.clock ?? now,
          newId,
          zone: () => 0,
          openAssignments: (of) => createAssignmentRoom({ desk, storage, saver, journal: of, now: parts.clock ?? now }),
          every: () => () => undefined,
        });
        return journal;
      },
      offline: () => Promise.reject(new Error('this bench has no service worker')),
      library: room,
      safety: () => {
        safety ??= createSafety({
          desk,
          archive: device.archive(),
          journal: device.journalStore(),
          storage,
          saver,
          persistence: { state: async () => device.lasting, ask: async () => ({ ...device.lasting, lasting: true }) },
          deviceFacts: async () => ({ browser: 'test' }),
          copy: async () => false,
          reload: () => {
            device.reloads += 1;
          },
          refresh: async () => {
            await (await room()).meet();
            await (await room()).meetSets();
          },
          now,
          newId,
        });
        return safety;
      },
    },
    ...parts.ports,
  });
  return {
    desk,
    player,
    timer,
    device,
    saved,
    frame: () => {
      for (const onFrame of [...frames]) onFrame();
    },
    settle: async () => {
      await turns();
      timer.pass(300);
      await turns();
    },
  };
}

/** Lets every promise that is under way go on. */
export async function turns(): Promise<void> {
  for (let turn = 0; turn < 40; turn += 1) await Promise.resolve();
}

/** A chart of `bars` bars, the bridge with the given number. */
export const chartText = (title: string, bridge = '| Gm7 | C7 | F6 | % |'): string =>
  `title: ${title}\nkey: D\nclave: 2-3 son\ntempo: half = 92\n\n[A]\n| Em7 | A7 | D6 | B7 |\n[B]\n${bridge}\n`;
