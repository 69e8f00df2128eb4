import { lazy, Suspense, startTransition, useMemo, useRef, useState } from 'react';
import type { Desk } from '../../state/desk';
import type { HabitsRoom } from '../../state/habits/habits';
import { SCREEN } from '../../words/screen';
import { Transport } from '../transport/Transport';
import { DeskContext } from './desk-context';
import { Header } from './Header';
import { HabitsContext } from './habits-context';
import { PractisePlace } from './PractisePlace';
import { Shield } from './Shield';
import { usePlace } from './use-place';
import { useShortcuts } from './use-shortcuts';
import { useThemeOnPage } from './use-theme';
import './app.css';

const Afterwards = lazy(() => import('./Afterwards').then((module) => ({ default: module.Afterwards })));
const BalancePanel = lazy(() => import('../balance/BalancePanel').then((module) => ({ default: module.BalancePanel })));
const ChartPlace = lazy(() => import('../chart/ChartPlace').then((module) => ({ default: module.ChartPlace })));
const DrillsPlace = lazy(() => import('../drills/DrillsPlace').then((module) => ({ default: module.DrillsPlace })));
const JournalPlace = lazy(() => import('../journal/JournalPlace').then((module) => ({ default: module.JournalPlace })));
const KeyList = lazy(() => import('./KeyList').then((module) => ({ default: module.KeyList })));
const Notices = lazy(() => import('./Notices').then((module) => ({ default: module.Notices })));
const SheetPlace = lazy(() => import('../sheet/SheetPlace').then((module) => ({ default: module.SheetPlace })));
const ViewPanel = lazy(() => import('./ViewPanel').then((module) => ({ default: module.ViewPanel })));

/** The whole page around one desk. `habits` fetches what was settled once on this device. */
export function AppFrame({ desk, habits = null }: { readonly desk: Desk; readonly habits?: (() => Promise<HabitsRoom>) | null }) {
  return (
    <DeskContext value={desk}>
      <HabitsContext value={habits}>
        <Page desk={desk} />
      </HabitsContext>
    </DeskContext>
  );
}

function Page({ desk }: { readonly desk: Desk }) {
  const place = usePlace();
  const [open, setOpen] = useState<'balance' | 'keys' | 'view' | null>(null);
  const [stand, setStand] = useState(false);
  const leaving = useRef<(() => void) | null>(null);
  // A transition keeps the page in sight while a panel is fetched.
  const panels = useMemo(
    () => ({
      balance: () => startTransition(() => setOpen((now) => (now === 'balance' ? null : 'balance'))),
      keys: () => startTransition(() => setOpen('keys')),
      view: () => startTransition(() => setOpen((now) => (now === 'view' ? null : 'view'))),
      stand: () => {
        if (leaving.current) leaving.current();
        else
          void import('./stand-view').then(async ({ enterStand }) => {
            leaving.current = await enterStand(document, () => {
              leaving.current = null;
              setStand(false);
            });
            setStand(true);
          });
      },
    }),
    [],
  );
  const close = (): void => setOpen(null);
  useThemeOnPage();
  useShortcuts(desk, panels);
  return (
    <>
      <Header place={place} open={open} panels={panels} />
      {stand && (
        <button type="button" className="key leave-stand" onClick={panels.stand}>
          {SCREEN.leaveFullScreen}
        </button>
      )}
      <Suspense fallback={null}>
        {open === 'balance' && <BalancePanel onClose={close} />}
        {open === 'keys' && <KeyList onClose={close} />}
        {open === 'view' && <ViewPanel onClose={close} onBalance={panels.balance} onKeys={panels.keys} onStand={panels.stand} />}
      </Suspense>
      <Suspense fallback={null}>
        <Notices />
      </Suspense>
      <main id="music" className={`place place-${place}`} tabIndex={-1}>
        {place !== 'practise' && <h1 className="visually-hidden">{SCREEN.places[place]}</h1>}
        <Shield key={place}>
          <Suspense fallback={<p className="empty">{SCREEN.loading}</p>}>
            {place === 'practise' && <PractisePlace />}
            {place === 'chart' && <ChartPlace />}
            {place === 'sheet' && <SheetPlace />}
            {place === 'drills' && <DrillsPlace />}
            {place === 'journal' && <JournalPlace />}
          </Suspense>
        </Shield>
      </main>
      <Suspense fallback={null}>
        <Afterwards lines={place === 'practise' && !stand} />
      </Suspense>
      <Transport onBalance={panels.balance} onKeys={panels.keys} onStand={panels.stand} />
    </>
  );
}
