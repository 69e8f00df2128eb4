import type { PointerEvent } from 'react';
import { CHART_EDITOR } from '../../words/chart-editor';
import type { TextField } from './use-text-field';

const WORDS = CHART_EDITOR.keys;
/** Signs that are far away on a tablet's own keyboard: what stands on the key, what it writes before and behind the selection, its name. */
const KEYS: readonly (readonly [string, string, string, string])[] = [
  ['|', '| ', '', WORDS.bar],
  ['%', '%', '', WORDS.same],
  [':', ':', '', WORDS.colon],
  ['/', '/', '', WORDS.hold],
  ['♭', '♭', '', WORDS.flat],
  ['♯', '♯', '', WORDS.sharp],
  ['[ ]', '[', ']', WORDS.head],
  ['{ }', '{', '}', WORDS.hits],
];

/** Keeps the focus, and with it the tablet's keyboard, in the text. */
export const keepFocus = (event: PointerEvent): void => event.preventDefault();

/** The row of signs over the chart text. */
export function KeyRow({ field }: { readonly field: TextField }) {
  return (
    <div className="sign-row" role="toolbar" aria-label={CHART_EDITOR.keysName}>
      {KEYS.map(([sign, before, after, name]) => (
        <button
          key={sign}
          type="button"
          className="sign-key"
          aria-label={`${sign} ${name}`}
          onPointerDown={keepFocus}
          onClick={() => field.around(before, after)}
        >
          {sign}
        </button>
      ))}
    </div>
  );
}
