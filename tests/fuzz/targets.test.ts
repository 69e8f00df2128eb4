import { describe, expect, it } from 'vitest';
import { TARGETS } from './targets';

describe('What others wrote neither crashes nor hangs a reader, nor costs an item', () => {
  it.each(TARGETS)('$name', ({ run }) => {
    const report = run({ seed: 7, count: 1500 });
    expect(report.failures).toEqual([]);
    expect(report.read, 'inputs that get past the first check').toBeGreaterThan(50);
    expect(report.inputs - report.read, 'inputs that are refused').toBeGreaterThan(50);
  });
});
