import { useEffect, useState } from 'react';
import { STAFF_WORDS } from '../../words/sheet';
import type { DrawnNote, SystemDrawing } from './system-drawing';

/** The engraver and its fonts, loaded on demand. */
export type Engraver =
  | { readonly kind: 'loading' }
  | { readonly kind: 'ready'; readonly engrave: (host: HTMLDivElement, drawing: SystemDrawing) => DrawnNote[] }
  | { readonly kind: 'failed'; readonly reason: string };

let current: Engraver = { kind: 'loading' };
let started: Promise<void> | null = null;

/** Loads VexFlow and the music fonts once; a failure is a state and is tried again by the next view that opens. */
function load(): Promise<void> {
  started ??= Promise.all([import('./engrave'), import('./music-fonts').then((fonts) => fonts.loadMusicFonts())])
    .then(([module]) => {
      current = { kind: 'ready', engrave: module.engraveSystem };
    })
    .catch(() => {
      started = null;
      current = { kind: 'failed', reason: STAFF_WORDS.failed };
    });
  return started;
}

/** The engraver as it stands; asking for it starts the loading. */
export function useEngraver(): Engraver {
  const [engraver, setEngraver] = useState(current);
  useEffect(() => {
    if (current.kind === 'ready') {
      setEngraver(current);
      return;
    }
    let here = true;
    void load().then(() => here && setEngraver(current));
    return () => {
      here = false;
    };
  }, []);
  return engraver;
}
