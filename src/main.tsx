import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import './ui/tokens.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { createFileSaver } from './device/file-saver';
import { everyFrame } from './device/frames';
import { browserStorageParts, createStorage } from './device/storage';
import { createWakeLock } from './device/wake-lock';
import { DEMO_BOOK } from './music/chart/demo-book';
import { readChart } from './music/chart/read';
import { arrange } from './music/score';
import { perform } from './performance/perform';
import { createDesk } from './state/desk';
import type { HabitsRoom } from './state/habits/habits';
import { AppFrame } from './ui/app/AppFrame';
import { assert } from './vocabulary';

/** Fetched once the page stands; the first screen does without it. */
const quickLine = () => import('./music/chart/quick-line');

/** A name for a new chart. Made here because `crypto.randomUUID` is missing where the page is served without https. */
const randomId = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(12)), (byte) => byte.toString(16).padStart(2, '0')).join('');

/** The one place that builds engine, device and desk and joins them to the page. */
async function start(page: Document): Promise<void> {
  const storage = createStorage(browserStorageParts());
  const desk = createDesk({
    stages: { readChart, arrange, perform },
    readQuickLine: async (line) => (await quickLine()).readQuickLine(line),
    demos: DEMO_BOOK,
    storage,
    saver: createFileSaver(page),
    midi: async (score, tempo) => (await import('./exchange/midi/write-midi')).writeMidi(score, { tempo }),
    loadPlayer: async () => {
      const { createPlayer } = await import('./audio/player').catch(() => {
        throw new Error('the part of the page that plays could not be fetched');
      });
      return createPlayer();
    },
    everyFrame,
    timer: {
      after: (ms, action) => {
        const timer = setTimeout(action, ms);
        return () => clearTimeout(timer);
      },
    },
    now: Date.now,
    newId: randomId,
  });

  let room: Promise<HabitsRoom> | null = null;
  const habits = (): Promise<HabitsRoom> => {
    room ??= import('./state/habits/habits').then(({ createHabits }) => createHabits(storage));
    return room;
  };
  const root = page.getElementById('page');
  assert(root, 'index.html must hold an element with the id page');
  await desk.restore();
  createRoot(root).render(
    <StrictMode>
      <AppFrame desk={desk} habits={habits} />
    </StrictMode>,
  );

  // What is typed is written when the page is left, hidden or closed, not only when typing pauses.
  window.addEventListener('pagehide', () => void desk.flush());
  page.addEventListener('visibilitychange', () => void desk.flush());

  const wakeLock = createWakeLock(page, navigator.wakeLock);
  desk.playing.subscribe((now, before) => {
    if (now.transport.kind !== before.transport.kind) wakeLock.want(now.transport.kind !== 'stopped');
  });

  // What the first press needs is fetched once the page stands.
  const fetchNext = (): void => {
    void desk.warm();
    void quickLine();
  };
  if ('requestIdleCallback' in window) window.requestIdleCallback(fetchNext, { timeout: 1000 });
  else setTimeout(fetchNext, 200);
}

void start(document);
