import { render } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { type ReactNode, StrictMode } from 'react';
import { DeskContext } from '../../../src/ui/app/desk-context';
import { type DeskBench, deskBench } from '../../state/desk-fixture';

/** Shows a part of the page over a desk with a silent player, under StrictMode. */
export async function show(part: ReactNode | ((bench: DeskBench) => ReactNode), bench = deskBench()) {
  await bench.desk.restore();
  await bench.desk.warm();
  const user = userEvent.setup();
  const page = render(
    <StrictMode>
      <DeskContext value={bench.desk}>{typeof part === 'function' ? part(bench) : part}</DeskContext>
    </StrictMode>,
  );
  return { ...bench, user, page, state: () => bench.desk.desk.getState() };
}
