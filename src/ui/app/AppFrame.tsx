import { lazy, Suspense, startTransition, useMemo, useState } from 'react';
import type { Desk } from '../../state/desk';
import { SCREEN } from '../../words/screen';
import { Transport } from '../transport/Transport';
import { DeskContext } from './desk-context';
import { Header } from './Header';
import { PractisePage } from './PractisePage';
import { Shield } from './Shield';
import { usePlace } from './use-place';
import { useShortcuts } from './use-shortcuts';
import { useThemeOnPage } from './use-theme';
import './app.css';

const BalancePanel = lazy(() => import('../balance/BalancePanel').then((module) => ({ default: module.BalancePanel })));
const ChartPage = lazy(() => import('../chart/ChartPage').then((module) => ({ default: module.ChartPage })));
const KeyList = lazy(() => import('./KeyList').then((module) => ({ default: module.KeyList })));
const Notices = lazy(() => import('./Notices').then((module) => ({ default: module.Notices })));
const SheetPlace = lazy(() => import('./SheetPlace').then((module) => ({ default: module.SheetPlace })));

/** The whole page around one desk. */
export function AppFrame({ desk }: { readonly desk: Desk }) {
  return (
    <DeskContext value={desk}>
      <Page desk={desk} />
    </DeskContext>
  );
}

function Page({ desk }: { readonly desk: Desk }) {
  const place = usePlace();
  const [open, setOpen] = useState<'balance' | 'keys' | null>(null);
  // A transition keeps the page in sight while a panel is fetched.
  const panels = useMemo(
    () => ({
      balance: () => startTransition(() => setOpen((now) => (now === 'balance' ? null : 'balance'))),
      keys: () => startTransition(() => setOpen('keys')),
    }),
    [],
  );
  const close = (): void => setOpen(null);
  useThemeOnPage();
  useShortcuts(desk, panels.keys);
  return (
    <>
      <Header place={place} balanceOpen={open === 'balance'} onBalance={panels.balance} onKeys={panels.keys} />
      <Suspense fallback={null}>
        {open === 'balance' && <BalancePanel onClose={close} />}
        {open === 'keys' && <KeyList onClose={close} />}
      </Suspense>
      <Suspense fallback={null}>
        <Notices />
      </Suspense>
      <main id="music" className={`place place-${place}`} tabIndex={-1}>
        <Shield key={place}>
          <Suspense fallback={<p className="empty">{SCREEN.loading}</p>}>
            {place === 'practise' && <PractisePage />}
            {place === 'chart' && <ChartPage />}
            {place === 'sheet' && <SheetPlace />}
          </Suspense>
        </Shield>
      </main>
      <Transport onBalance={panels.balance} onKeys={panels.keys} />
    </>
  );
}
