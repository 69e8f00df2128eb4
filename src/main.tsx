import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import './ui/tokens.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { createFileSaver } from './device/file-saver';
import { afterFrame, everyFrame } from './device/frames';
import { browserStorageParts, createStorage } from './device/storage';
import { timer } from './device/timer';
import { once } from './main/once';
import { randomId } from './main/random-id';
import { FIRST_DEMO } from './music/chart/first-demo';
import { readChart } from './music/chart/read';
import { arrange } from './music/score';
import { perform } from './performance/perform';
import { createDesk, type Desk } from './state/desk';
import type { Player } from './state/ports';
import { AppFrame } from './ui/app/AppFrame';
import { DrillsContext } from './ui/drills/drills-context';
import { ListeningContext } from './ui/listening/listening-context';
import { SheetsContext } from './ui/sheet/sheets-context';
import { assert } from './vocabulary';
import { languageOf } from './words/language';
import { speak, spokenLanguage } from './words/speak';
import { nameNotes } from './words/spoken';

/** Fetched once the page stands; the first screen does without it. */
const quickLine = () => import('./music/chart/quick-line');

/** The one place that builds engine, device and desk and joins them to the page. */
async function start(page: Document): Promise<void> {
  let player: Player | null = null;
  const storage = createStorage(browserStorageParts());
  const saver = createFileSaver(page);
  const desk: Desk = createDesk({
    stages: { readChart, arrange, perform },
    readQuickLine: async (line) => (await quickLine()).readQuickLine(line),
    demos: [FIRST_DEMO],
    demoBook: async () => (await import('./music/chart/demo-book')).DEMO_BOOK,
    storage,
    saver,
    rooms: {
      takeAlong: once(async () => (await import('./main/take-along')).takeAlongOn(desk, sheets)),
      library: once(async () => (await import('./main/open-library')).openLibrary(desk, storage, saver, randomId)),
      safety: once(async () => (await import('./main/open-safety')).openSafety(desk, storage, saver, randomId)),
      link: once(async () => (await import('./main/open-link')).openLink(desk)),
      journal: once(async () => (await import('./main/open-journal')).openJournal(desk, storage, saver, randomId)),
      offline: once(async () => (await import('./main/open-offline')).openOffline(desk, storage)),
    },
    midi: async (score, tempo) => (await import('./exchange/midi/write-midi')).writeMidi(score, { tempo }),
    loadPlayer: async () => {
      const { createPlayer } = await import('./audio/player').catch(() => {
        throw new Error('the part of the page that plays could not be fetched');
      });
      player = createPlayer();
      return player;
    },
    everyFrame,
    afterFrame,
    timer,
    now: Date.now,
    newId: randomId,
  });

  const habits = once(async () => (await import('./state/habits/habits')).createHabits(storage));
  const listening = once(async () => (await import('./main/open-listening')).openListening(desk, () => player, storage, page));
  const sheets = once(async () => (await import('./state/sheet/sheet-desk')).createSheetDesk({ desk, arrange, storage }));
  const drills = once(async () => (await import('./main/open-drills')).openDrills(desk, await listening()));
  const root = page.getElementById('page');
  assert(root, 'index.html must hold an element with the id page');
  // For programs that drive the page, as the command line does for its sheets.
  Object.assign(root, { desk });
  await desk.restore();
  if (import.meta.env.DEV && window.location.hash === '#/parts') return (await import('./ui/parts/show-parts')).showParts(root, desk);
  const drawn = createRoot(root);
  /** Draws the whole page, anew when its words have changed. */
  const draw = async (): Promise<void> => {
    const { language, noteNames } = desk.desk.getState().preferences;
    nameNotes(noteNames);
    // A language that cannot be fetched now leaves the page as it speaks.
    await speak(language ?? languageOf(navigator.languages)).catch(() => undefined);
    page.documentElement.lang = spokenLanguage();
    drawn.render(
      <StrictMode key={`${spokenLanguage()} ${noteNames}`}>
        <ListeningContext value={listening}>
          <SheetsContext value={sheets}>
            <DrillsContext value={drills}>
              <AppFrame desk={desk} habits={habits} />
            </DrillsContext>
          </SheetsContext>
        </ListeningContext>
      </StrictMode>,
    );
  };
  await draw();
  desk.desk.subscribe(({ preferences }, before) => {
    if (preferences.language !== before.preferences.language || preferences.noteNames !== before.preferences.noteNames) void draw();
  });

  // What is typed is written when the page is left, hidden or closed, not only when typing pauses.
  window.addEventListener('pagehide', () => void desk.flush());
  page.addEventListener('visibilitychange', () => void desk.flush());

  // What the first press needs is fetched once the page stands.
  const fetchNext = (): void => {
    void desk.warm();
    void quickLine();
    void import('./main/later').then(({ afterFirstScreen }) => afterFirstScreen(page, desk));
  };
  if ('requestIdleCallback' in window) window.requestIdleCallback(fetchNext, { timeout: 1000 });
  else setTimeout(fetchNext, 200);
}

void start(document);
