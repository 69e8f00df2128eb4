import { createStore, type StoreApi } from 'zustand/vanilla';
import { mod12, pcOf } from '../../music/pitch/spell';
import { driftsOf, type GapDrift, isSmallDrift, worstDrift } from '../../practice/gap-drill';
import type { KeyOrder } from '../../practice/twelve-keys';
import type { Desk } from '../desk';
import { type Listening, type PassReport, WHOLE_BAND } from '../listening/listening-state';
import type { Settings } from '../settings';
import { afterDrillPass, type BoardDrill, type BoardDrillName, beginDrill, demandsOf, isDone } from './board-drill';
import { busiestCycle } from './busiest-cycle';
import { loanOf } from './loan';
import { type LostDrill, playSurprises } from './lost-drill';
import { createSideDrill, type SideDrill } from './side-drill';

/** What runs on the board, and how the passes went so far. */
export interface DrillsState {
  readonly running: BoardDrill | null;
  readonly passes: number;
  readonly clean: number;
  /** Whether the last pass was clean; null before the first. */
  readonly last: boolean | null;
  readonly done: boolean;
  /** Of the last pass of the gap drill: milliseconds behind the band each time it came back (below 0: ahead), null where that is too little to count. */
  readonly behindMs: readonly (number | null)[];
}

/** Any drill, by the name under which the words and the journal know it. */
export type DrillName = BoardDrillName | 'which side' | 'lost and found';

/** What the drills ask of the page. */
export interface DrillsPorts {
  readonly desk: Pick<Desk, 'desk' | 'playing' | 'run'>;
  readonly listening: Listening;
  /** Told when a drill ends in which something was asked: what was right, of how much, and the number that set it where there is one. */
  readonly onEnd: (drill: DrillName, right: number, of: number, seed: number | null) => void;
}

/** Drills as the screens see them. */
export interface DrillsRoom {
  readonly store: StoreApi<DrillsState>;
  /** Begins a drill with the chart on the desk; what was set before comes back when it ends. */
  begin(name: BoardDrillName, choices?: { readonly seed?: number; readonly order?: KeyOrder }): void;
  /** A pass that nothing listened to, by the player's own ear. */
  rate(clean: boolean): void;
  /** Ends the drill and puts the desk back as it was. */
  end(): void;
  /** Begins the drill by ear. */
  side(seed: number): SideDrill;
  /** Lays a fresh chart on the desk as a chart of the player's own and plays it, without the band's piano. */
  playAtSight(text: string): void;
  /** Plays the chart with surprises; null when the chart is too short for any. */
  surprise(seed: number): LostDrill | null;
  /** How a round of them went: after how many of the surprises the player was back within three bars. */
  rateSurprises(back: number, of: number, seed: number): void;
  /** Stops that, and brings the whole band back. */
  endSurprise(): void;
}

const NOTHING: DrillsState = { running: null, passes: 0, clean: 0, last: null, done: false, behindMs: [] };
/** What drills change on the desk, and so put back. */
const BORROWED = [
  'tempo',
  'direction',
  'kind',
  'transpose',
  'solo',
  'pulse',
  'loop',
  'balance',
] as const satisfies readonly (keyof Settings)[];

/** Joins the drills to the desk and to what listens. */
export function createDrills({ desk, listening, onEnd }: DrillsPorts): DrillsRoom {
  const store = createStore<DrillsState>(() => NOTHING);
  let before: Pick<Settings, (typeof BORROWED)[number]> | null = null;
  let lost: LostDrill | null = null;

  const ask = (drill: BoardDrill): void => {
    const { settings, band, plays } = demandsOf(drill);
    const now = desk.desk.getState().settings;
    if (Object.entries(settings).some(([name, value]) => now[name as keyof Settings] !== value)) desk.run({ kind: 'set', settings });
    listening.setBand(band);
    if (listening.store.getState().plays !== plays) listening.set({ plays });
  };

  const passed = (clean: boolean, drifts?: readonly GapDrift[]): void => {
    const { running, passes, clean: cleanSoFar, done } = store.getState();
    if (running === null || done) return;
    const next = afterDrillPass(running, clean, drifts && worstDrift(drifts));
    store.setState({
      running: next,
      passes: passes + 1,
      clean: cleanSoFar + (clean ? 1 : 0),
      last: clean,
      done: isDone(next),
      behindMs: (drifts ?? []).map((drift) => (isSmallDrift(drift) ? null : drift.driftMs)),
    });
    ask(next);
  };

  const judge = (report: PassReport): void => {
    const { running } = store.getState();
    if (!report.wholePass || report.interrupted !== null || running === null) return;
    if (running.name !== 'gap') {
      passed(report.assessment.clean);
      return;
    }
    const bar = report.take.music.performance.bars[0];
    const drifts = bar
      ? driftsOf(running.gap, report.matched.strokes, { barTicks: bar.ticks, fromPlayTick: report.take.fromPlayTick })
      : [];
    passed(report.assessment.clean, drifts);
  };

  listening.store.subscribe((now, then) => {
    if (now.report !== then.report && now.report) judge(now.report);
    const rating = now.ratings.at(-1);
    if (now.ratings !== then.ratings && rating !== undefined) passed(rating === 'clean');
  });

  const end = (): void => {
    const { running, passes, clean } = store.getState();
    if (running === null) return;
    store.setState(NOTHING);
    listening.setBand(WHOLE_BAND);
    listening.set({ plays: 'both hands' });
    if (before) desk.run({ kind: 'set', settings: before });
    before = null;
    if (passes > 0) onEnd(running.name, clean, passes, null);
  };

  return {
    store,
    begin(name, { seed = 1, order = 'fourths' } = {}) {
      end();
      const { settings, music } = desk.desk.getState();
      before = loanOf(settings, BORROWED);
      const home = music ? mod12(pcOf(music.score.key.tonic) - settings.transpose) : 0;
      const busiest = music && busiestCycle(music.score.form);
      const drill = beginDrill(name, { settings, tonicPc: home, seed, order, busiest });
      store.setState({ ...NOTHING, running: drill });
      ask(drill);
    },
    rate: (clean) => passed(clean),
    end,
    side(seed) {
      end();
      const drill = createSideDrill(desk, seed);
      return {
        ...drill,
        leave() {
          const result = drill.leave();
          if (result.of > 0) onEnd('which side', result.right, result.of, seed);
          return result;
        },
      };
    },
    surprise(seed) {
      end();
      lost?.leave();
      lost = playSurprises(desk, listening, seed);
      return lost;
    },
    rateSurprises: (back, of, seed) => onEnd('lost and found', back, of, seed),
    endSurprise() {
      lost?.leave();
      lost = null;
      desk.run({ kind: 'stop' });
      listening.setBand(WHOLE_BAND);
    },
    playAtSight(text) {
      end();
      desk.run({ kind: 'new chart' });
      desk.run({ kind: 'type', text });
      listening.setBand({ ...WHOLE_BAND, piano: 'mine' });
      desk.run({ kind: 'play' });
    },
  };
}
