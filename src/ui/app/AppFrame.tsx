import { lazy, Suspense, useEffect, useMemo, useState } from 'react';
import type { Desk } from '../../state/desk';
import { SCREEN } from '../../words/screen';
import { BalancePanel } from '../balance/BalancePanel';
import { ChartPage } from '../chart/ChartPage';
import { Transport } from '../transport/Transport';
import { DeskContext, useDesk } from './desk-context';
import { Header } from './Header';
import { KeyList } from './KeyList';
import { PractisePage } from './PractisePage';
import { Shield } from './Shield';
import { usePlace } from './use-place';
import { useShortcuts } from './use-shortcuts';
import './app.css';

const SheetPlace = lazy(() => import('./SheetPlace').then(({ SheetPlace }) => ({ default: SheetPlace })));

/** The whole page around one desk. */
export function AppFrame({ desk }: { readonly desk: Desk }) {
  const place = usePlace();
  const [balance, setBalance] = useState(false);
  const [keys, setKeys] = useState(false);
  const targets = useMemo(() => ({ openList: () => setKeys(true) }), []);
  useShortcuts(desk, targets);
  return (
    <DeskContext value={desk}>
      <Theme />
      <Header balanceOpen={balance} onBalance={() => setBalance(!balance)} onKeys={() => setKeys(true)} />
      {balance && <BalancePanel onClose={() => setBalance(false)} />}
      {keys && <KeyList onClose={() => setKeys(false)} />}
      <main id="music" className={`place place-${place}`} tabIndex={-1}>
        <Shield key={place}>
          {place === 'practise' && <PractisePage />}
          {place === 'chart' && <ChartPage />}
          {place === 'sheet' && (
            <Suspense fallback={<p className="empty">{SCREEN.loading}</p>}>
              <SheetPlace />
            </Suspense>
          )}
        </Shield>
      </main>
      <Transport />
    </DeskContext>
  );
}

/** Sets the theme on the page's root, where the tokens look for it. */
function Theme() {
  const theme = useDesk((state) => state.preferences.theme);
  useEffect(() => {
    if (theme === 'device') delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = theme;
  }, [theme]);
  return null;
}
