import { afterGap, type GapDrill, startGap } from '../../practice/gap-drill';
import { afterBurst, afterPass, startLadder, type TempoLadder } from '../../practice/tempo-ladder';
import { afterKey, type KeyOrder, startKeys, type TwelveKeys } from '../../practice/twelve-keys';
import { halfNotesPerMinute } from '../../vocabulary';
import type { Band, PlayedPart } from '../listening/listening-state';
import type { Loop, Settings } from '../settings';

/*
 * Drills that are played on the practice board: each is a state, what it sets on the desk before the next pass, what the band leaves
 * out, and what a pass that was clean or not leads to. The machines are in src/practice; here they meet the desk's settings.
 */

/** The drills of the board, in the order in which they are offered. */
export const BOARD_DRILLS = [
  'clap the clave',
  'montuno rhythm',
  'hands apart',
  'tempo ladder',
  'gap',
  'twelve keys',
  'fast changes',
  'solo scaffold',
] as const;
/** One of them. */
export type BoardDrillName = (typeof BOARD_DRILLS)[number];

/** A drill of the board as it stands. */
export type BoardDrill =
  | { readonly name: 'clap the clave'; readonly round: number; readonly clean: number }
  | { readonly name: 'montuno rhythm'; readonly passes: number; readonly clean: number }
  | { readonly name: 'hands apart'; readonly hand: 'left' | 'right' | 'both'; readonly clean: number }
  | { readonly name: 'tempo ladder'; readonly ladder: TempoLadder }
  | { readonly name: 'gap'; readonly gap: GapDrill }
  | { readonly name: 'twelve keys'; readonly keys: TwelveKeys; readonly homePc: number }
  | { readonly name: 'fast changes'; readonly passes: number; readonly clean: number; readonly loop: Loop | null }
  | { readonly name: 'solo scaffold'; readonly passes: number };

/** What a drill wants of the desk and of the band. */
export interface DrillDemands {
  readonly settings: Partial<Settings>;
  readonly band: Band;
  readonly plays: PlayedPart;
}

/** What a drill is begun with. */
export interface DrillStart {
  readonly settings: Settings;
  /** Pitch class of the tonic that the chart is written in. */
  readonly tonicPc: number;
  readonly seed: number;
  readonly order?: KeyOrder;
  /** The cycle with the most changes, or null when the form has no whole one. */
  readonly busiest?: Loop | null;
}

/** Clean passes that a step of a drill without a machine of its own takes: as on the tempo ladder. */
const STEADY = 3;
const CLAVES = [
  { kind: 'son', direction: '2-3' },
  { kind: 'son', direction: '3-2' },
  { kind: 'rumba', direction: '3-2' },
  { kind: 'rumba', direction: '2-3' },
] as const;

/** A drill at its beginning. */
export function beginDrill(name: BoardDrillName, { settings, tonicPc, seed, order = 'fourths', busiest = null }: DrillStart): BoardDrill {
  switch (name) {
    case 'clap the clave':
      return { name, round: 0, clean: 0 };
    case 'hands apart':
      return { name, hand: 'left', clean: 0 };
    case 'tempo ladder':
      return { name, ladder: startLadder({ from: Math.min(settings.tempo, settings.goalTempo), goal: settings.goalTempo }) };
    case 'gap':
      return { name, gap: startGap({ onBars: 4 }) };
    case 'twelve keys':
      return { name, keys: startKeys({ order, fromPc: tonicPc + settings.transpose, seed }), homePc: tonicPc };
    case 'solo scaffold':
      return { name, passes: 0 };
    case 'fast changes':
      return { name, passes: 0, clean: 0, loop: busiest };
    default:
      return { name, passes: 0, clean: 0 };
  }
}

const WITH_ME: Band = { piano: 'with me', claveFades: false, click: 'as set', gap: null };
const MINE: Band = { ...WITH_ME, piano: 'mine' };

/** What the drill wants now; settings that it does not name stay as the player has them. */
export function demandsOf(drill: BoardDrill): DrillDemands {
  switch (drill.name) {
    case 'clap the clave': {
      const clave = CLAVES[Math.min(drill.round, CLAVES.length - 1)] ?? CLAVES[0];
      return { settings: { ...clave }, band: { ...MINE, click: 'every beat' }, plays: 'clave' };
    }
    case 'montuno rhythm':
      return { settings: {}, band: { ...MINE, click: 'every beat' }, plays: 'both hands' };
    case 'hands apart':
      return {
        settings: {},
        band: MINE,
        plays: drill.hand === 'both' ? 'both hands' : drill.hand === 'left' ? 'left hand' : 'right hand',
      };
    case 'tempo ladder': {
      const { ladder } = drill;
      return { settings: { tempo: halfNotesPerMinute(ladder.burst ? ladder.goal : ladder.tempo) }, band: MINE, plays: 'both hands' };
    }
    case 'gap':
      return { settings: {}, band: { ...MINE, gap: { on: drill.gap.onBars, off: drill.gap.offBars } }, plays: 'both hands' };
    case 'twelve keys':
      return drill.keys.now === null
        ? { settings: {}, band: MINE, plays: 'both hands' }
        : { settings: { transpose: (drill.keys.now - drill.homePc + 12) % 12 }, band: MINE, plays: 'both hands' };
    case 'fast changes':
      return { settings: drill.loop ? { loop: drill.loop } : {}, band: MINE, plays: 'both hands' };
    case 'solo scaffold':
      return { settings: { solo: 'scaffold' }, band: WITH_ME, plays: 'right hand' };
  }
}

/** The drill after a pass; `drift` is the largest of the gap drill's pass, null when the place was lost. */
export function afterDrillPass(drill: BoardDrill, clean: boolean, drift: Parameters<typeof afterGap>[1] = undefined): BoardDrill {
  const counted = clean ? 1 : 0;
  switch (drill.name) {
    case 'clap the clave': {
      const now = clean ? drill.clean + 1 : 0;
      return now >= STEADY ? { ...drill, round: drill.round + 1, clean: 0 } : { ...drill, clean: now };
    }
    case 'hands apart': {
      const now = clean ? drill.clean + 1 : 0;
      if (now < STEADY || drill.hand === 'both') return { ...drill, clean: now };
      return { ...drill, hand: drill.hand === 'left' ? 'right' : 'both', clean: 0 };
    }
    case 'tempo ladder':
      return { ...drill, ladder: drill.ladder.burst ? afterBurst(drill.ladder) : afterPass(drill.ladder, clean) };
    case 'gap':
      return { ...drill, gap: afterGap(drill.gap, drift ?? (clean ? { reentryBar: 0, driftMs: 0, ofBeat: 0 } : null)) };
    case 'twelve keys':
      return { ...drill, keys: afterKey(drill.keys, clean) };
    case 'solo scaffold':
      return { ...drill, passes: drill.passes + 1 };
    default:
      return { ...drill, passes: drill.passes + 1, clean: drill.clean + counted };
  }
}

/** Whether there is nothing more to do in the drill. */
export function isDone(drill: BoardDrill): boolean {
  if (drill.name === 'clap the clave') return drill.round >= CLAVES.length;
  if (drill.name === 'hands apart') return drill.hand === 'both' && drill.clean >= STEADY;
  if (drill.name === 'tempo ladder') return drill.ladder.change === 'reached';
  return drill.name === 'twelve keys' && drill.keys.now === null;
}
