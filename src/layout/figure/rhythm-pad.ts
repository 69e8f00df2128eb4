import { type Alignment, alignment } from '../../music/clave/alignment';
import { claveSteps, cycleSteps } from '../../music/clave/patterns';
import type { Score } from '../../music/score';
import { type Clave, type Direction, stepsInCycle, TICKS_PER_STEP } from '../../vocabulary';

/** What a cell of the pad may hold: a rest, a stroke whose role is filled in, or a stroke with its role. */
export const PAD_ROLES = ['.', 'x', 'o', 'i', 'c', 's', 'a'] as const;
export type PadRole = (typeof PAD_ROLES)[number];
/** The cells of a two-bar rhythm, in the direction it is written in: sixteen in 4/4, twelve in 6/8. */
export type Pad = readonly PadRole[];
/** How many steps a pad has. */
export type PadSteps = 16 | 12;

/** A pad with nothing on it. */
export const emptyPad = (steps: PadSteps): Pad => Array.from({ length: steps }, () => '.');

/** The pad as figure text: two bars with a space between them. */
export const padText = (pad: Pad): string => `${pad.slice(0, pad.length / 2).join('')} ${pad.slice(pad.length / 2).join('')}`;

/** Figure text as a pad, or null when it is no two bars of known letters. One bar stands for both; spaces and bar lines do not count. */
export function padFrom(text: string, steps: PadSteps): Pad | null {
  const letters = [...text.toLowerCase().replace(/[\s|]+/g, '')];
  const known = letters.flatMap((letter) => PAD_ROLES.find((role) => role === letter) ?? []);
  if (known.length !== letters.length) return null;
  if (known.length === steps / 2) return [...known, ...known];
  return known.length === steps ? known : null;
}

/** Why a text is no pad: the first letter that means nothing with its place from 1, else how many steps were found; null when it is one. */
export function padFault(
  text: string,
  steps: PadSteps,
): { readonly column: number; readonly letter: string } | { readonly steps: number } | null {
  if (padFrom(text, steps)) return null;
  const letters = [...text];
  const at = letters.findIndex((letter) => !/[\s|]/.test(letter) && !PAD_ROLES.some((role) => role === letter.toLowerCase()));
  const letter = letters[at];
  return letter === undefined ? { steps: text.replace(/[\s|]+/g, '').length } : { column: at + 1, letter };
}

/** A longer silence than this between taps begins a new rhythm, in milliseconds. */
const TAP_GAP_MS = 3000;

/** The taps with one more; a long pause begins anew. */
export function withTap(taps: readonly number[], at: number): readonly number[] {
  const last = taps.at(-1);
  return last !== undefined && at > last && at - last <= TAP_GAP_MS ? [...taps, at] : [at];
}

/** The pad after a touch: the next thing the cell may hold. */
export function touched(pad: Pad, step: number): Pad {
  const next = PAD_ROLES[(PAD_ROLES.indexOf(pad[step] ?? '.') + 1) % PAD_ROLES.length] ?? '.';
  return pad.with(step, next);
}

/** The rhythm that taps make: the first tap is 1 of the first bar, each other one the nearest step, round the two bars. `stepMillis` is the length of an eighth. */
export function padOfTaps(taps: readonly number[], stepMillis: number, steps: PadSteps): Pad {
  const [first] = taps;
  if (first === undefined) return emptyPad(steps);
  const struck = new Set(taps.map((at) => Math.round((at - first) / stepMillis) % steps));
  return emptyPad(steps).map((_, step) => (struck.has(step) ? 'x' : '.'));
}

/** The same rhythm with its two bars exchanged. */
export const exchanged = (pad: Pad): Pad => [...pad.slice(pad.length / 2), ...pad.slice(0, pad.length / 2)];

/** A rhythm written in one direction, as it lies in another: the bars stay with their sides. */
export const padIn = (pad: Pad, written: Direction, direction: Direction): Pad => (written === direction ? pad : exchanged(pad));

/**
 * Where a key leads in the pad: arrows by a step and by a bar, Home and End to the ends of the bar. Null for any other key.
 */
export function stepAfterKey(step: number, key: string, steps: PadSteps): number | null {
  const bar = steps / 2;
  const moves: Readonly<Record<string, number>> = {
    ArrowLeft: step - 1,
    ArrowRight: step + 1,
    ArrowUp: step - bar,
    ArrowDown: step + bar,
    Home: step - (step % bar),
    End: step - (step % bar) + bar - 1,
  };
  const to = moves[key];
  return to === undefined ? null : (to + steps) % steps;
}

/** The role a key stands for: its letter, or a rest for Delete, Backspace and the dot; null for any other key. */
export function roleOfKey(key: string): PadRole | null {
  if (key === 'Delete' || key === 'Backspace') return '.';
  return PAD_ROLES.find((role) => role === key.toLowerCase()) ?? null;
}

/** What a pad states against the clave that is set. */
export const padAlignment = (pad: Pad, clave: Clave): Alignment =>
  alignment(
    pad.map((role) => role !== '.'),
    clave,
  );

/** True for the steps that the clave strikes. */
export function claveMarks(clave: Clave): readonly boolean[] {
  const steps = new Set(claveSteps(clave));
  return emptyPad(cycleSteps(clave.kind)).map((_, step) => steps.has(step));
}

const ROLE_LETTERS = { octave: 'o', inner: 'i', chord: 'c', single: 's', approach: 'a' } as const;

/** The figure that plays now, as a pad in the score's own direction: its first whole cycle of groove bars, or null when there is none. */
export function playingPad(score: Score): { readonly pad: Pad; readonly direction: Direction } | null {
  const steps: PadSteps = stepsInCycle(score.meter);
  const first = score.bars.find(
    (bar, index) =>
      bar.cycleStep === 0 &&
      bar.kind === 'groove' &&
      score.bars[index + 1]?.kind === 'groove' &&
      bar.ticks === (TICKS_PER_STEP * steps) / 2,
  );
  if (!first) return null;
  const pad = emptyPad(steps).map((_, step): PadRole => {
    const stroke = score.parts.rightHand.find(({ tick }) => tick === first.tick + step * TICKS_PER_STEP);
    return stroke ? ROLE_LETTERS[stroke.role] : '.';
  });
  return { pad, direction: first.side === 2 ? '2-3' : '3-2' };
}
