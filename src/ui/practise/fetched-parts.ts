import { lazy } from 'react';

// Asked for while the first music is still being made, so that they come with the first drawing and not after it.
const formMap = import('./FormMap');
const nextCard = import('./NextCard');
const handStrip = import('./HandStrip');

/** The map of the form. */
export const FormMap = lazy(async () => ({ default: (await formMap).FormMap }));
/** The whole next card. */
export const NextCard = lazy(async () => ({ default: (await nextCard).NextCard }));
/** The hands' shape now and next. */
export const HandStrip = lazy(async () => ({ default: (await handStrip).HandStrip }));
/** The large card as written notes; fetched when it is first asked for. */
export const StaffCard = lazy(async () => ({ default: (await import('./StaffCard')).StaffCard }));
