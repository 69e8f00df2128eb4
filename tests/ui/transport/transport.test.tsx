import { fireEvent, screen, within } from '@testing-library/react';
import type { UserEvent } from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import { Caution } from '../../../src/ui/transport/Caution';
import { Transport } from '../../../src/ui/transport/Transport';
import { show } from '../app/show';

const transport = () => show(<Transport onBalance={() => undefined} onKeys={() => undefined} onStand={() => undefined} />);
const button = (name: string | RegExp) => screen.getByRole('button', { name });
const openMore = async (user: UserEvent) => {
  await user.click(button('More'));
  await screen.findByRole('region', { name: 'More settings' }, { timeout: 8000 });
};
const bar = () => within(document.querySelector<HTMLElement>('.transport-bar') as HTMLElement);

describe('The transport', () => {
  it('has one big button that is called Play, then Stop', async () => {
    const { user, player } = await transport();
    await user.click(button('Play'));
    expect(player.calls).toEqual(['play']);
    await user.click(button('Stop'));
    expect(player.calls).toEqual(['play', 'stop']);
    expect(button('Play')).toBeTruthy();
  });

  it('steps the tempo in half notes and shows the goal in the player’s unit', async () => {
    const { user, state, desk } = await transport();
    await user.click(button('Faster'));
    expect(state().settings.tempo).toBe(65);
    expect(bar().getByText('half notes · goal 92')).toBeTruthy();
    desk.run({ kind: 'prefer', preferences: { tempoUnit: 'quarter' } });
    expect(await bar().findByText('quarter notes · goal 184')).toBeTruthy();
    expect(bar().getByText('130')).toBeTruthy();
  });

  it('opens the goal from the tempo itself, and closes it on Escape', async () => {
    const { user, state } = await transport();
    await user.click(button('64 half notes · goal 92'));
    await user.click(await screen.findByRole('button', { name: 'Higher goal' }));
    expect(state().settings.goalTempo).toBe(93);
    await user.keyboard('{Escape}');
    expect(screen.queryByRole('button', { name: 'Higher goal' })).toBeNull();
  });

  it('plays another figure with one touch', async () => {
    const { user, state } = await transport();
    const before = state().music?.score.parts.rightHand;
    await user.click(button('Another one'));
    expect(state().music?.score.parts.rightHand).not.toEqual(before);
  });

  it('exchanges the two panels with one press', async () => {
    const { user, state } = await transport();
    const names = () => [...document.querySelectorAll('.transport-bar .panel-name:first-child')].map((panel) => panel.textContent);
    expect(names()).toEqual(['2-side', '3-side']);
    await user.click(button('Direction 2-3. Exchange the sides'));
    expect(names()).toEqual(['3-side', '2-side']);
    expect(state().music?.score.clave.direction).toBe('3-2');
  });

  it('names levels in their own words', async () => {
    const { user } = await transport();
    expect(bar().getByText('standard')).toBeTruthy();
    await user.click(button('Busier'));
    expect(bar().getByText('moving line')).toBeTruthy();
  });

  it('switches hands clearly on and off', async () => {
    const { user, player } = await transport();
    await user.click(button('Left on'));
    expect(button('Left off').getAttribute('aria-pressed')).toBe('false');
    expect(player.mix?.parts['piano left'].muted).toBe(true);
    expect(player.mix?.parts['piano right'].muted).toBe(false);
  });

  it('loops a cycle and grows it by a bar', async () => {
    const { user, state, desk } = await transport();
    desk.run({ kind: 'start at bar', bar: 4 });
    await user.click(button('Loop off'));
    expect(button('Loop 5–6').getAttribute('aria-pressed')).toBe('true');
    await user.click(button('1 bar before'));
    expect(button('Loop 4–7')).toBeTruthy();
    await user.click(button('Loop 4–7'));
    expect(state().settings.loop).toBeNull();
  });

  it('says a change once, politely, with the bar where it is heard', async () => {
    const { user } = await transport();
    await user.click(button('Play'));
    await user.click(button(/Exchange the sides/));
    expect(document.querySelector('.announcer[role=status]')?.textContent).toBe('3-2 from bar 3');
  });

  it('shows the caution after the first stop and never again once it is understood', async () => {
    const { user, state } = await show(
      <>
        <Caution shown />
        <Transport onBalance={() => undefined} onKeys={() => undefined} onStand={() => undefined} />
      </>,
    );
    expect(screen.queryByText(/stop when it hurts/i)).toBeNull();
    await user.click(button('Play'));
    expect(screen.queryByText(/stop when it hurts/i)).toBeNull();
    await user.click(button('Stop'));
    await user.click(button('Understood'));
    expect(screen.queryByText(/stop when it hurts/i)).toBeNull();
    expect(state().preferences.cautionSeen).toBe(true);
  });
});

describe('The sheet of settings', () => {
  it('opens with the focus in it, closes on Escape and gives the focus back', async () => {
    const { user } = await transport();
    await openMore(user);
    expect(document.activeElement?.getAttribute('aria-label')).toBe('More settings');
    await user.keyboard('{Escape}');
    expect(screen.queryByRole('region', { name: 'More settings' })).toBeNull();
    expect(document.activeElement).toBe(button('More'));
  });

  it('has the four plain mixes, each with one touch', async () => {
    const { user, state } = await transport();
    await openMore(user);
    await user.click(button('clave only'));
    const sounding = Object.entries(state().settings.balance).flatMap(([part, { muted }]) => (muted ? [] : [part]));
    expect(sounding).toEqual(['clave']);
  });

  it('sets clave, count-in, colour, devices, hands, key, form and level', async () => {
    const { user, state } = await transport();
    await openMore(user);
    for (const name of ['rumba', '2 bars', 'jazz', 'G', 'once, with an ending', '1 · sparse', 'all four'])
      await user.click(screen.getByRole('radio', { name }));
    await user.click(button('octaves only'));
    await user.selectOptions(screen.getByRole('combobox', { name: 'Hands' }), 'tenths');
    await user.click(button('Another one'));
    expect(state().settings).toMatchObject({
      kind: 'rumba',
      countInBars: 2,
      colour: 'jazz',
      transpose: 5,
      round: 'once, then end',
      level: 1,
      pulse: 'quarters',
      devices: ['octaves-only'],
      hands: 'tenths',
      seed: 1,
    });
  });

  it.each(['0', '-5', '9999', 'fast', ''])('refuses a tempo of “%s” with one sentence and leaves it in the field', async (typed) => {
    const { user, state } = await transport();
    await openMore(user);
    const field = screen.getByRole('textbox', { name: 'half notes' });
    await user.clear(field);
    if (typed) await user.type(field, typed);
    await user.keyboard('{Enter}');
    expect(screen.getByRole('alert').textContent).toBe('A tempo is a number from 25 to 140 half notes a minute.');
    expect((field as HTMLInputElement).value).toBe(typed);
    expect(state().settings.tempo).toBe(64);
  });

  it('takes a typed tempo and a tapped one', async () => {
    const { user, state } = await transport();
    await openMore(user);
    const field = screen.getByRole('textbox', { name: 'half notes' });
    await user.clear(field);
    await user.type(field, '70{Enter}');
    expect(state().settings.tempo).toBe(70);
    const tap = button('Tap');
    for (const timeStamp of [1000, 1600, 2200]) {
      const event = new Event('pointerdown', { bubbles: true });
      Object.defineProperty(event, 'timeStamp', { value: timeStamp });
      fireEvent(tap, event);
    }
    expect(state().settings.tempo).toBe(100);
  });

  it('moves the ends of a loop by whole cycles', async () => {
    const { user, state } = await transport();
    await openMore(user);
    await user.click(button('Loop this cycle'));
    await user.click(button('Loop ends later'));
    expect(state().settings.loop).toEqual({ fromBar: 0, toBar: 4 });
    await user.click(button('Loop begins later'));
    expect(state().settings.loop).toEqual({ fromBar: 2, toBar: 4 });
  });
});
