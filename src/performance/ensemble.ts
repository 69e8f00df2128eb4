import type { Performance, PerformedEvent } from './performance';

/*
 * A band that takes support away, so that the player carries the time: the clave fades over repeats, the piano drops out, the click
 * marks less and less. Who is left out is a pure question about a sound and the bars played so far; nothing is ever moved.
 */

/** What the click marks. `as set` leaves pulse and clave as they are. */
export const CLICK_MODES = ['as set', 'every beat', '2 and 4', '1 only', 'clave', 'bombo only'] as const;
export type ClickMode = (typeof CLICK_MODES)[number];

/** What is taken away. */
export interface Ensemble {
  readonly click: ClickMode;
  /** Sixteen bars of clave, then sixteen in which only the first bar of every four has it, then none. */
  readonly claveFades: boolean;
  /** The percussion is silent: out of a loudspeaker, a microphone would take its strokes for claps. */
  readonly percussionRests: boolean;
  /** Bars that the piano plays and is silent, in turn; null when it always plays. */
  readonly pianoDrops: { readonly on: number; readonly off: number } | null;
  /** Bars in which everybody plays and is silent, in turn; null when nobody ever stops. */
  readonly gap?: { readonly on: number; readonly off: number } | null;
}

/** A band that takes nothing away. */
export const FULL_BAND: Ensemble = { click: 'as set', claveFades: false, percussionRests: false, pianoDrops: null };

const FULL_BARS = 16;
const THIN_BARS = 16;
const THIN_EVERY = 4;

/** True when `event` is left out in this pass (from 0) of `performance`. Music that has gone round keeps counting its bars. */
export function isLeftOut(ensemble: Ensemble, event: PerformedEvent, pass: number, performance: Performance): boolean {
  if (event.part === 'percussion') return ensemble.percussionRests;
  const { bars } = performance;
  const index = Math.max(
    0,
    bars.findLastIndex(({ tick }) => tick <= event.tick),
  );
  const bar = bars[index];
  if (bar === undefined) return false;
  const barsBefore = pass * bars.length + index;
  const { gap } = ensemble;
  if (gap && barsBefore % (gap.on + gap.off) >= gap.on) return true;
  if (event.part === 'piano right' || event.part === 'piano left') {
    const drops = ensemble.pianoDrops;
    return drops !== null && barsBefore % (drops.on + drops.off) >= drops.on;
  }
  if (event.part === 'clave') {
    if (ensemble.click === 'bombo only') return !isBombo(event, bar, performance);
    return ensemble.claveFades && !claveStays(barsBefore);
  }
  return event.part === 'pulse' && !isClicked(ensemble.click, (event.tick - bar.tick) / beatTicks(performance));
}

function claveStays(barsBefore: number): boolean {
  if (barsBefore < FULL_BARS) return true;
  return barsBefore < FULL_BARS + THIN_BARS && barsBefore % THIN_EVERY === 0;
}

function isClicked(click: ClickMode, beat: number): boolean {
  switch (click) {
    case '2 and 4':
      return beat % 2 === 1;
    case '1 only':
      return beat === 0;
    case 'clave':
    case 'bombo only':
      return false;
    case 'as set':
    case 'every beat':
      return true;
  }
}

/** Beats of the pulse: quarters in 4/4, dotted quarters in 6/8. */
const beatTicks = ({ clave }: Performance): number => (clave.cycleSteps === 12 ? 720 : 480);

/** The second stroke of the 3-side, on the & of 2 in son and rumba clave: the bombo. */
function isBombo({ tick }: PerformedEvent, bar: Performance['bars'][number], { clave }: Performance): boolean {
  const half = clave.cycleSteps / 2;
  const first = clave.steps.filter((step) => step < half);
  const threeSide = first.length >= 3 ? first : clave.steps.filter((step) => step >= half);
  const step = (bar.cycleStep + Math.round((tick - bar.tick) / 240)) % clave.cycleSteps;
  return step === threeSide[1];
}
