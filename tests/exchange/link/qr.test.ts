import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { LONGEST_CODE, qrPath } from '../../../src/exchange/link/qr-path';

/** The dark modules of a path of `Mx yhNv1h-Nz` runs. */
function modulesOf(path: string): Set<string> {
  const dark = new Set<string>();
  for (const [, x, y, run] of path.matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g))
    for (let step = 0; step < Number(run); step += 1) dark.add(`${Number(x) + step},${y}`);
  return dark;
}

describe('A QR code', () => {
  const code = qrPath('https://quay-street.example/#l=1.AAAA');

  it('has its three finder patterns in their corners, and a light border of four modules (ISO/IEC 18004)', () => {
    const { size = 0, path = '' } = code ?? {};
    const dark = modulesOf(path);
    const at = (x: number, y: number) => dark.has(`${x},${y}`);
    const last = size - 5;
    // A finder pattern is seven modules wide: dark, light, three dark, light, dark.
    for (const [x, y] of [
      [4, 4],
      [last - 6, 4],
      [4, last - 6],
    ] as const)
      expect([0, 1, 2, 3, 4, 5, 6].map((step) => at(x + step, y + 3))).toEqual([true, false, true, true, true, false, true]);
    for (const module of dark) {
      const [x = 0, y = 0] = module.split(',').map(Number);
      expect(Math.min(x, y)).toBeGreaterThanOrEqual(4);
      expect(Math.max(x, y)).toBeLessThanOrEqual(last);
    }
  });

  it('is none where it would be too fine to be read', () => {
    expect(qrPath('x'.repeat(LONGEST_CODE + 1))).toBeNull();
  });

  it('is read back by an independent reader where one is installed', ({ skip }) => {
    try {
      execFileSync('zbarimg', ['--version'], { stdio: 'ignore' });
    } catch {
      skip('zbarimg is not installed');
    }
    const { size = 0, path = '' } = code ?? {};
    const dark = modulesOf(path);
    const scale = 6;
    const rows = Array.from({ length: size * scale }, (_, y) =>
      Array.from({ length: size * scale }, (__, x) => (dark.has(`${Math.floor(x / scale)},${Math.floor(y / scale)}`) ? 0 : 255)).join(' '),
    );
    const picture = `P2\n${size * scale} ${size * scale}\n255\n${rows.join('\n')}\n`;
    expect(execFileSync('zbarimg', ['--raw', '-q', 'pgm:-'], { input: picture }).toString().trim()).toBe(
      'https://quay-street.example/#l=1.AAAA',
    );
  });
});
