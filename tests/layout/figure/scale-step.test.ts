import { describe, expect, it } from 'vitest';
import { scaleStep } from '../../../src/layout/figure/scale-step';

// Scales by their signatures: D major has F sharp and C sharp, E flat major has B, E and A flat (any rudiments of music).
describe('a step of the scale', () => {
  it('goes to the next note of the key, up or down', () => {
    const d = { tonic: 'D', mode: 'major' } as const;
    expect(scaleStep(73, d, 1)).toEqual({ semitones: 1, name: 'D' });
    expect(scaleStep(73, d, -1)).toEqual({ semitones: -2, name: 'B' });
    expect(scaleStep(74, d, 1)).toEqual({ semitones: 2, name: 'E' });
  });

  it('from a note outside the key finds the nearest inside, spelled in the key', () => {
    const eFlat = { tonic: 'Eb', mode: 'major' } as const;
    expect(scaleStep(73, eFlat, -1)).toEqual({ semitones: -1, name: 'C' });
    expect(scaleStep(74, eFlat, 1)).toEqual({ semitones: 1, name: 'Eb' });
  });
});
