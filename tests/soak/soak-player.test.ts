import { expect, it } from 'vitest';
import { soakPlayer } from './soak-player';

it('three minutes of random live changes: every onset once, none twice, none late', () => {
  const { onsets, expected, twice, late, misplaced, changes } = soakPlayer(3, 4);
  expect({ twice, late, misplaced }).toEqual({ twice: 0, late: 0, misplaced: 0 });
  expect(Math.abs(onsets - expected)).toBeLessThanOrEqual(1);
  expect(changes).toBeGreaterThan(200);
});
