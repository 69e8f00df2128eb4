import { act, fireEvent, screen } from '@testing-library/react';
import { useEffect, useRef } from 'react';
import { describe, expect, it } from 'vitest';
import type { Desk } from '../../../src/state/desk';
import { createHabits, type HabitsRoom } from '../../../src/state/habits/habits';
import { HintLine } from '../../../src/ui/app/HintLine';
import { PedalTable } from '../../../src/ui/app/PedalTable';
import { usePedals } from '../../../src/ui/app/use-pedals';
import { DeviceStorage } from '../../state/desk-fixture';
import { show } from './show';

function Pedalled({ desk, room }: { readonly desk: Desk; readonly room: HabitsRoom }) {
  usePedals(desk, room);
  return <input aria-label="words" />;
}

/** A cell of the grid, without the board around it. */
function Note() {
  const cell = useRef<HTMLParagraphElement>(null);
  useEffect(() => cell.current?.setAttribute('role', 'gridcell'), []);
  return <p ref={cell}>note</p>;
}

describe('Pedals', () => {
  it('are taught by pressing them, and forgotten again', async () => {
    const room = await createHabits(new DeviceStorage().tab());
    const { user } = await show(<PedalTable room={room} />);
    await user.click(screen.getByRole('button', { name: 'Teach: play or stop' }));
    expect(screen.getByText('Press the pedal…')).toBeTruthy();
    await user.keyboard('m');
    expect(room.habits.getState().pedals['play or stop']).toBe('m');
    await user.click(screen.getByRole('button', { name: 'Forget: play or stop' }));
    expect(room.habits.getState().pedals['play or stop']).toBeNull();
  });

  it('do what they were taught, single keys off or on, and never in a text field', async () => {
    const room = await createHabits(new DeviceStorage().tab());
    const { user, player, desk } = await show(({ desk: each }) => <Pedalled desk={each} room={room} />);
    act(() => desk.run({ kind: 'prefer', preferences: { shortcuts: false } }));
    room.mapPedal('play or stop', 'm');
    await user.keyboard('m');
    expect(player.calls).toEqual(['play']);
    await user.click(screen.getByRole('textbox'));
    await user.keyboard('m');
    expect(player.calls).toEqual(['play']);
  });

  it('turn pages under the key they send', async () => {
    const room = await createHabits(new DeviceStorage().tab());
    const { desk } = await show(({ desk: each }) => <Pedalled desk={each} room={room} />);
    room.mapPedal('forward', 'ArrowRight');
    fireEvent.keyDown(document.body, { key: 'ArrowRight' });
    expect(desk.playing.getState().startBar).toBe(2);
  });
});

describe('The hints of the first minutes', () => {
  it('come one at a time, are silent while the music runs, and are gone for good once done', async () => {
    const storage = new DeviceStorage().tab();
    const room = await createHabits(storage);
    const { desk } = await show(
      <>
        <HintLine room={room} />
        <Note />
      </>,
    );
    act(() => desk.run({ kind: 'prefer', preferences: { cautionSeen: true } }));
    expect(screen.queryByRole('complementary')).toBeNull();
    fireEvent.click(document.body);
    expect(screen.getByText(/Press Play/)).toBeTruthy();
    act(() => desk.run({ kind: 'play or stop' }));
    expect(screen.queryByRole('complementary')).toBeNull();
    act(() => desk.run({ kind: 'play or stop' }));
    expect(screen.getByText(/Touch a note/)).toBeTruthy();
    fireEvent.click(screen.getByText('note'));
    expect(screen.getByText(/exchanges the sides/)).toBeTruthy();
    act(() => desk.run({ kind: 'exchange sides' }));
    expect(screen.queryByRole('complementary')).toBeNull();
    expect((await createHabits(storage)).habits.getState().seen).toHaveLength(3);
  });

  it('do not take another chart in another direction for a touch on the switch', async () => {
    const room = await createHabits(new DeviceStorage().tab());
    room.change({ seen: ['press play', 'touch a note'] });
    const { desk } = await show(<HintLine room={room} />);
    act(() => desk.run({ kind: 'prefer', preferences: { cautionSeen: true } }));
    await act(async () => desk.run({ kind: 'open', chartId: 'demo-rain-on-the-slipway' }));
    fireEvent.click(document.body);
    expect(screen.getByText(/exchanges the sides/)).toBeTruthy();
  });

  it('are waved away with one press', async () => {
    const room = await createHabits(new DeviceStorage().tab());
    const { user } = await show(<HintLine room={room} />);
    fireEvent.click(document.body);
    await user.click(screen.getByRole('button', { name: 'Got it' }));
    expect(room.habits.getState().seen).toEqual(['press play']);
  });
});
