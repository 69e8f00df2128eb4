import { type Alignment, alignment } from '../../music/clave/alignment';
import { claveSteps } from '../../music/clave/patterns';
import type { Score } from '../../music/score';
import { type Clave, type Direction, TICKS_PER_STEP } from '../../vocabulary';

/** What a cell of the pad may hold: a rest, a stroke whose role is filled in, or a stroke with its role. */
export const PAD_ROLES = ['.', 'x', 'o', 'i', 'c', 'a'] as const;
export type PadRole = (typeof PAD_ROLES)[number];
/** The sixteen cells of a two-bar rhythm, in the direction it is written in. */
export type Pad = readonly PadRole[];

/** A pad with nothing on it. */
export const EMPTY_PAD: Pad = Array.from({ length: 16 }, () => '.');

/** The pad as figure text: two bars with a space between them. */
export const padText = (pad: Pad): string => `${pad.slice(0, 8).join('')} ${pad.slice(8).join('')}`;

/** Figure text as a pad, or null when it is no sixteen steps of known letters. Spaces and bar lines do not count. */
export function padFrom(text: string): Pad | null {
  const letters = [...text.toLowerCase().replace(/[\s|]+/g, '')];
  const known = letters.flatMap((letter) => PAD_ROLES.find((role) => role === letter) ?? []);
  return letters.length === 16 && known.length === 16 ? known : null;
}

/** Why a text is no pad: the first letter that means nothing with its place from 1, else how many steps were found; null when it is one. */
export function padFault(text: string): { readonly column: number; readonly letter: string } | { readonly steps: number } | null {
  if (padFrom(text)) return null;
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
export function padOfTaps(taps: readonly number[], stepMillis: number): Pad {
  const [first] = taps;
  if (first === undefined) return EMPTY_PAD;
  const struck = new Set(taps.map((at) => Math.round((at - first) / stepMillis) % 16));
  return EMPTY_PAD.map((_, step) => (struck.has(step) ? 'x' : '.'));
}

/** The same rhythm with its two bars exchanged. */
export const exchanged = (pad: Pad): Pad => [...pad.slice(8), ...pad.slice(0, 8)];

/** What a pad states against the clave that is set. */
export const padAlignment = (pad: Pad, clave: Clave): Alignment =>
  alignment(
    pad.map((role) => role !== '.'),
    clave,
  );

/** True for the steps that the clave strikes. */
export function claveMarks(clave: Clave): readonly boolean[] {
  const steps = new Set(claveSteps(clave));
  return EMPTY_PAD.map((_, step) => steps.has(step));
}

const ROLE_LETTERS = { octave: 'o', inner: 'i', chord: 'c', single: 'x', approach: 'a' } as const;

/** The figure that plays now, as a pad in the score's own direction: its first whole cycle of groove bars, or null when there is none. */
export function playingPad(score: Score): { readonly pad: Pad; readonly direction: Direction } | null {
  const first = score.bars.find(
    (bar, index) => bar.cycleStep === 0 && bar.kind === 'groove' && score.bars[index + 1]?.kind === 'groove' && bar.ticks === 1920,
  );
  if (!first) return null;
  const pad = EMPTY_PAD.map((_, step): PadRole => {
    const stroke = score.parts.rightHand.find(({ tick }) => tick === first.tick + step * TICKS_PER_STEP);
    return stroke ? ROLE_LETTERS[stroke.role] : '.';
  });
  return { pad, direction: first.side === 2 ? '2-3' : '3-2' };
}
