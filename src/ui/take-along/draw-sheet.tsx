import { Suspense } from 'react';
import { createRoot } from 'react-dom/client';
import { createStore } from 'zustand/vanilla';
import type { PageDrawing } from '../../layout/sheet/page-drawing';
import { PAPERS } from '../../layout/sheet/paper';
import type { Score } from '../../music/score';
import type { Desk } from '../../state/desk';
import type { SheetDesk } from '../../state/sheet/sheet-desk';
import type { DrawSheet } from '../../state/take-along/ports';
import { DeskContext } from '../app/desk-context';
import { SheetPlace } from '../sheet/SheetPlace';
import { SheetsContext } from '../sheet/sheets-context';
import { readPage } from './read-page';

/*
 * Draws the sheet of any score as it prints: the Sheet place itself is rendered where nobody sees it, on a desk that holds this score,
 * and read when every system stands. So a file can show nothing that the print does not.
 */

/** How long a sheet may take to stand. */
const PATIENCE_MS = 30_000;
const LOOK_MS = 30;
const PAGES = '[data-sheet-page], .sheet-page';

/** Draws sheets with the settings of `desk` and what is chosen for sheets. */
export function drawSheetsOf(desk: Desk, sheets: () => Promise<SheetDesk>): DrawSheet {
  return async (score, other) => {
    const state = desk.desk.getState();
    if (!state.music) throw new Error('there is no music on the desk');
    const inKey = inKeyOf(await sheets(), score, state.music.whole);
    const shown = createStore(() => ({ ...state, music: state.music && { ...state.music, score, whole: score } }));
    // A form of its own, so that its choice of paper is no part of the one on the screen.
    const ground = document.createElement('form');
    // Laid out in full but out of sight; wider than any paper, so that nothing is scaled down.
    Object.assign(ground.style, { position: 'fixed', left: '-5000px', top: '0', width: '1400px' });
    ground.inert = true;
    ground.setAttribute('aria-hidden', 'true');
    document.body.append(ground);
    const root = createRoot(ground);
    try {
      root.render(
        <DeskContext value={{ ...desk, desk: shown, run: () => undefined, otherDirection: () => other }}>
          <SheetsContext value={inKey}>
            <Suspense fallback={null}>
              <SheetPlace />
            </Suspense>
          </SheetsContext>
        </DeskContext>,
      );
      await standing(ground);
      const paper = PAPERS[state.preferences.paper];
      const pages: PageDrawing[] = [];
      for (const page of ground.querySelectorAll<HTMLElement>(PAGES)) {
        // The edge of the paper is the screen's; in print the page has none.
        page.style.border = '0';
        // The screen stays awake between blocks.
        pages.push(await readPage(page, paper.width, paper.height, () => pause(0)));
      }
      return pages;
    } finally {
      root.unmount();
      ground.remove();
    }
  };
}

const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** The sheet desk for a score in another key: the other direction, variation and levels of its sheet are transposed with it. */
function inKeyOf(sheets: SheetDesk, score: Score, whole: Score): () => Promise<SheetDesk> {
  const up = pitchClass(score.key.tonic) - pitchClass(whole.key.tonic) + OCTAVE;
  const moved: SheetDesk = {
    ...sheets,
    scores: ({ settings, ...desk }, choice) =>
      sheets.scores({ ...desk, settings: { ...settings, transpose: (settings.transpose + up) % OCTAVE } }, choice),
  };
  return () => Promise.resolve(moved);
}

const OCTAVE = 12;
const LETTERS: Readonly<Record<string, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };
const pitchClass = (tonic: string): number => (LETTERS[tonic.charAt(0)] ?? 0) + (tonic.endsWith('#') ? 1 : tonic.endsWith('b') ? -1 : 0);

/** Waits until every page, block and system below `ground` is drawn. Rejects when the fonts of the music are missing or time runs out. */
async function standing(ground: HTMLElement): Promise<void> {
  await document.fonts.ready;
  for (let waited = 0; waited < PATIENCE_MS; waited += LOOK_MS) {
    const failed = ground.querySelector('p.system');
    if (failed !== null) throw new Error(failed.textContent ?? '');
    // What is far from the window waits until something is to be printed.
    window.dispatchEvent(new Event('beforeprint'));
    const systems = [...ground.querySelectorAll('.system, .pencil-list')];
    const blank =
      ground.querySelector('.sheet-block:empty') !== null ||
      systems.some((system) => !(system instanceof SVGElement) && system.querySelector('svg') === null);
    if (ground.querySelector(PAGES) !== null && systems.length > 0 && !blank) return;
    await pause(LOOK_MS);
  }
  throw new Error('the pages of the sheet did not come to stand in time');
}
