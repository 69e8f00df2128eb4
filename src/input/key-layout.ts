/*
 * Two rows of natural notes on a computer keyboard, by the place of the key and not by its letter, so that it is the same on every
 * national layout: the lowest row from C3, the row under the digits from C4; the sharps lie between them, one row higher.
 */

const LOWER = ['KeyZ', 'KeyX', 'KeyC', 'KeyV', 'KeyB', 'KeyN', 'KeyM', 'Comma', 'Period', 'Slash'] as const;
const LOWER_SHARPS = ['KeyS', 'KeyD', null, 'KeyG', 'KeyH', 'KeyJ', null, 'KeyL', 'Semicolon', null] as const;
const UPPER = ['KeyQ', 'KeyW', 'KeyE', 'KeyR', 'KeyT', 'KeyY', 'KeyU', 'KeyI', 'KeyO', 'KeyP'] as const;
const UPPER_SHARPS = ['Digit2', 'Digit3', null, 'Digit5', 'Digit6', 'Digit7', null, 'Digit9', 'Digit0', null] as const;
/** Semitones above C of ten natural notes. */
const NATURALS = [0, 2, 4, 5, 7, 9, 11, 12, 14, 16] as const;

const notes = new Map<string, number>();
for (const [row, sharps, from] of [
  [LOWER, LOWER_SHARPS, 48],
  [UPPER, UPPER_SHARPS, 60],
] as const) {
  NATURALS.forEach((semitones, at) => {
    notes.set(row[at] ?? '', from + semitones);
    const sharp = sharps[at];
    if (sharp) notes.set(sharp, from + semitones + 1);
  });
}

/** The MIDI note of a key by its `KeyboardEvent.code` in the middle octave, or null. `noteOfKey('KeyQ')` is 60. */
export const noteOfKey = (code: string): number | null => notes.get(code) ?? null;

/** Keys that tap a rhythm: letters, digits and what lies between them. Space, Enter, Tab, Escape and the arrows keep their own work. */
export const isRhythmKey = (code: string): boolean =>
  /^(Key[A-Z]|Digit\d|Comma|Period|Slash|Semicolon|Quote|Bracket(Left|Right)|Backslash|Minus|Equal|IntlBackslash|Backquote)$/.test(code);
