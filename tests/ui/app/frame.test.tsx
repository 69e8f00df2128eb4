import { act, fireEvent, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { StrictMode } from 'react';
import { beforeEach, describe, expect, it } from 'vitest';
import { AppFrame } from '../../../src/ui/app/AppFrame';
import { Notices } from '../../../src/ui/app/Notices';
import { QuickLine } from '../../../src/ui/app/QuickLine';
import { Shield } from '../../../src/ui/app/Shield';
import { chartText, DeviceStorage, deskBench, turns } from '../../state/desk-fixture';
import { show } from './show';

async function frame() {
  const bench = deskBench();
  await bench.desk.restore();
  await bench.desk.warm();
  render(
    <StrictMode>
      <AppFrame desk={bench.desk} />
    </StrictMode>,
  );
  return { ...bench, user: userEvent.setup() };
}

beforeEach(() => {
  window.location.hash = '';
});

describe('The page', () => {
  it('opens on Practise with Last Ferry ready to play', async () => {
    await frame();
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Last Ferry');
    expect(screen.getByRole('link', { name: 'Practise' }).getAttribute('aria-current')).toBe('page');
    expect(screen.getByRole('button', { name: 'Play' })).toBeTruthy();
  });

  it('goes to the places that exist, by their address', async () => {
    const { user } = await frame();
    expect(screen.getAllByRole('link').map((link) => link.textContent)).toEqual(
      expect.arrayContaining(['Practise', 'Chart', 'Sheet', 'Drills', 'Journal']),
    );
    await user.click(screen.getByRole('link', { name: 'Chart' }));
    await act(async () => {
      window.location.hash = '#/chart';
      window.dispatchEvent(new Event('hashchange'));
    });
    expect(await screen.findByRole('textbox', { name: 'Chart text' }, { timeout: 8000 })).toBeTruthy();
  });

  it('changes the theme on its root', async () => {
    const { user } = await frame();
    await user.click(screen.getByRole('button', { name: 'Night' }));
    expect(document.documentElement.dataset.theme).toBe('night');
    await user.click(screen.getByRole('button', { name: 'Paper' }));
    expect(document.documentElement.dataset.theme).toBe('paper');
  });

  it('lists the keys and lets them be switched off', async () => {
    const { user, desk } = await frame();
    await user.keyboard('?');
    await user.click(await screen.findByRole('checkbox', { name: 'Single keys work as shortcuts', hidden: true }, { timeout: 8000 }));
    expect(desk.desk.getState().preferences.shortcuts).toBe(false);
  });
});

describe('The quick line', () => {
  it('plays four chords at once', async () => {
    const { user, state, player } = await show(<QuickLine />);
    await user.type(screen.getByRole('textbox'), 'Gm7 C7 F6 D7{Enter}');
    await act(turns);
    expect(state().chartId).toBe('quick');
    expect(player.calls).toContain('play');
  });

  it('keeps a faulty line, says what is wrong and offers the nearest chord', async () => {
    const { user, state } = await show(<QuickLine />);
    const field = screen.getByRole('textbox') as HTMLInputElement;
    await user.type(field, 'Gm7 H7{Enter}');
    expect((await screen.findByRole('alert')).textContent).toContain('H7');
    expect(field.value).toBe('Gm7 H7');
    expect(state().chartId).toBe('demo-last-ferry');
    await user.click(screen.getByRole('button', { name: 'Write B7' }));
    expect(field.value).toBe('Gm7 B7');
    expect(screen.queryByRole('alert')).toBeNull();
  });
});

/** A part of the page that cannot be drawn. */
function Broken(): never {
  throw new Error('broken');
}

describe('What the page has to say', () => {
  it('offers both texts when another tab changed the chart', async () => {
    const device = new DeviceStorage();
    const first = deskBench({ device });
    await first.desk.restore();
    first.desk.run({ kind: 'type', text: chartText('Low Tide') });
    await first.settle();
    const { user, settle, state } = await show(<Notices />, deskBench({ device, ids: 'b' }));
    first.desk.run({ kind: 'type', text: chartText('Low Tide', '| Am7 | D7 |') });
    await act(async () => {
      await first.settle();
      await settle();
    });
    expect(screen.getByText(/changed in another tab/)).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Show the other one' }));
    await act(settle);
    expect(state().text).toContain('Am7');
  });

  it('puts one sentence and a way forward in place of a part that fails', () => {
    const quiet = (event: ErrorEvent): void => event.preventDefault();
    window.addEventListener('error', quiet);
    const spoken = console.error;
    console.error = () => undefined;
    render(
      <Shield>
        <Broken />
      </Shield>,
    );
    console.error = spoken;
    window.removeEventListener('error', quiet);
    expect(screen.getByRole('alert').textContent).toContain('could not be shown');
    fireEvent.focus(screen.getByRole('button', { name: 'Load the page again' }));
  });
});
