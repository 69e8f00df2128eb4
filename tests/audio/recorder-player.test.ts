import { describe, expect, test } from 'vitest';
import { createRecorderPlayer } from '../../src/audio/recorder-player';
import { PLAYER_CONTRACT } from './player-contract';

describe('the silent recorder', () => {
  test.each(PLAYER_CONTRACT)('$title', async ({ check }) => {
    const player = createRecorderPlayer();
    await check({ player, wait: async (seconds) => player.pass(seconds), sounds: player.recorded });
  });

  test('writes down touched chords and the mix', () => {
    const player = createRecorderPlayer();
    player.sound([60, 64], 90);
    expect(player.touched()).toEqual([[60, 64]]);
    expect(player.mix()).toBeNull();
  });
});
