import { fireEvent, screen } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { BalancePanel } from '../../../src/ui/balance/BalancePanel';
import { show } from '../app/show';

const slider = (name: string) => screen.getByRole('slider', { name });
const panel = () => show(<BalancePanel onClose={() => undefined} />);

describe('The balance', () => {
  it('mutes and levels every part, heard at once', async () => {
    const { user, player } = await panel();
    await user.click(screen.getByRole('button', { name: 'bass sounds' }));
    expect(player.mix?.parts.bass.muted).toBe(true);
    fireEvent.change(slider('clave'), { target: { value: '25' } });
    expect(player.mix?.parts.clave).toEqual({ level: 0.25, muted: false });
    expect(screen.getAllByRole('slider')).toHaveLength(8);
  });

  it('has four mixes with one touch', async () => {
    const { user, player } = await panel();
    await user.click(screen.getByRole('button', { name: 'without piano' }));
    expect([player.mix?.parts['piano right'].muted, player.mix?.parts['piano left'].muted, player.mix?.parts.bass.muted]).toEqual([
      true,
      true,
      false,
    ]);
  });

  it('sets ceiling and tuning for every chart, the tuning in cents and hertz', async () => {
    const { player } = await panel();
    fireEvent.change(slider('Overall loudness'), { target: { value: '40' } });
    fireEvent.change(slider('Tuning'), { target: { value: '8' } });
    expect(player.mix).toMatchObject({ ceiling: 0.4, tuningCents: 8 });
    // 440 × 2^(8/1200) = 442.04 Hz, by hand.
    expect(screen.getByText('+8 cents, A = 442.0 Hz')).toBeTruthy();
  });

  it('begins moderately loud', async () => {
    const { player } = await panel();
    expect(player.mix?.ceiling).toBeLessThanOrEqual(0.7);
  });
});
