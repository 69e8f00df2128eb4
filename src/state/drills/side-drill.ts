import { createStore, type StoreApi } from 'zustand/vanilla';
import { answer, startWhichSide, type WhichSide } from '../../practice/which-side';
import type { Side } from '../../vocabulary';
import type { Desk } from '../desk';
import type { Settings } from '../settings';
import { loanOf } from './loan';
import { firstBarOf, settingsOfQuestion } from './side-by-ear';

/** The drill, and whether its question was heard. */
export interface SideDrillState {
  readonly drill: WhichSide;
  readonly heard: boolean;
}

/** Which side? by ear, with the chart that lies on the desk. */
export interface SideDrill {
  readonly store: StoreApi<SideDrillState>;
  /** Sounds the question; call it inside a gesture. */
  hear(): void;
  say(side: Side): void;
  /** Stops, and puts the desk back as it was. Returns how it went. */
  leave(): { readonly right: number; readonly of: number };
}

const BORROWED = ['kind', 'direction', 'countInBars', 'loop', 'balance'] as const satisfies readonly (keyof Settings)[];

/** Begins the drill. The same seed asks the same questions while the answers are the same. */
export function createSideDrill({ desk, playing, run }: Pick<Desk, 'desk' | 'playing' | 'run'>, seed: number): SideDrill {
  const { settings } = desk.getState();
  const before = loanOf(settings, BORROWED);
  const store = createStore<SideDrillState>(() => ({
    drill: startWhichSide({ seed, sounds: ['clave', 'montuno with clave', 'montuno', 'band without clave'], kinds: ['son'] }),
    heard: false,
  }));
  const question = () => store.getState().drill.question;
  const startBar = playing.getState().startBar;
  const unfollow = playing.subscribe((now) => {
    if (now.transport.kind === 'playing' && now.bar >= firstBarOf(question()) + question().bars) run({ kind: 'stop' });
  });
  return {
    store,
    hear() {
      run({ kind: 'stop' });
      run({ kind: 'set', settings: settingsOfQuestion(question(), before.balance) });
      run({ kind: 'start at bar', bar: firstBarOf(question()) });
      run({ kind: 'play' });
      store.setState({ heard: true });
    },
    say(side) {
      run({ kind: 'stop' });
      store.setState(({ drill }) => ({ drill: answer(drill, side), heard: false }));
    },
    leave() {
      unfollow();
      run({ kind: 'stop' });
      run({ kind: 'set', settings: before });
      run({ kind: 'start at bar', bar: startBar });
      const { right, asked } = store.getState().drill;
      return { right, of: asked };
    },
  };
}
