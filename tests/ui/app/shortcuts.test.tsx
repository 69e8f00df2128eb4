import { screen } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import type { Desk } from '../../../src/state/desk';
import type { Panels } from '../../../src/ui/app/shortcut-keys';
import { placeOf } from '../../../src/ui/app/use-place';
import { useShortcuts } from '../../../src/ui/app/use-shortcuts';
import { Transport } from '../../../src/ui/transport/Transport';
import { show } from './show';

function Keyed(props: { readonly desk: Desk; readonly panels: Panels }) {
  useShortcuts(props.desk, props.panels);
  return (
    <>
      <Transport onBalance={() => undefined} onKeys={() => undefined} onStand={() => undefined} />
      <input aria-label="words" />
    </>
  );
}
let lists = 0;
const panels: Panels = {
  keys: () => {
    lists += 1;
  },
  balance: () => undefined,
  stand: () => undefined,
};
const page = () => show(({ desk }) => <Keyed desk={desk} panels={panels} />);

describe('Keys', () => {
  it('play and stop with Space, once for each press', async () => {
    const { user, player } = await page();
    await user.keyboard(' ');
    await user.keyboard(' ');
    expect(player.calls).toEqual(['play', 'stop']);
  });

  it('play and stop with Space after a button was clicked, without pressing that button again', async () => {
    const { user, player, state } = await page();
    await user.click(screen.getByRole('button', { name: 'Faster' }));
    await user.keyboard(' ');
    expect(player.calls).toEqual(['tempo 65', 'play']);
    expect(state().settings.tempo).toBe(65);
  });

  it('leave Space to a button that was reached with Tab, Play included, which is pressed once', async () => {
    const { user, player, state } = await page();
    await user.tab();
    expect(document.activeElement?.textContent).toBe('Play');
    await user.keyboard(' ');
    expect(player.calls).toEqual(['play']);
    await user.tab();
    await user.keyboard(' ');
    expect(state().settings.tempo).toBe(63);
    expect(player.calls).toEqual(['play', 'tempo 63']);
  });

  it('are not taken from a text field', async () => {
    const { user, player, state } = await page();
    await user.click(screen.getByRole('textbox', { name: 'words' }));
    await user.keyboard('d a3 ');
    expect(player.calls).toEqual([]);
    expect(state().settings).toMatchObject({ direction: '2-3', level: 2, seed: 0 });
  });

  it('set direction, level, tempo, hands, loop and another figure', async () => {
    const { user, state } = await page();
    await user.keyboard('d3+aj');
    await user.keyboard('l[[]');
    const { direction, level, tempo, seed, balance, loop } = state().settings;
    expect({ direction, level, tempo, seed, loop }).toEqual({
      direction: '3-2',
      level: 3,
      tempo: 65,
      seed: 1,
      loop: { fromBar: 0, toBar: 4 },
    });
    expect(balance['piano right'].muted).toBe(true);
  });

  it('can be switched off, but for Space and the pedals', async () => {
    const { user, state, desk, player } = await page();
    desk.run({ kind: 'prefer', preferences: { shortcuts: false } });
    await user.keyboard('d3{PageDown} ');
    expect(state().settings).toMatchObject({ direction: '2-3', level: 2 });
    expect(desk.playing.getState().startBar).toBe(2);
    expect(player.calls).toEqual(['play']);
  });

  it('open their own list with a question mark, and leave the browser’s keys alone', async () => {
    const { user, state } = await page();
    lists = 0;
    await user.keyboard('?');
    await user.keyboard('{Control>}d{/Control}');
    expect(lists).toBe(1);
    expect(state().settings.direction).toBe('2-3');
  });
});

describe('Places', () => {
  it('are named by the address, Practise where the address names none', () => {
    expect(['', '#/chart', '#/sheet', '#/nowhere', '#practise'].map(placeOf)).toEqual([
      'practise',
      'chart',
      'sheet',
      'practise',
      'practise',
    ]);
  });
});
