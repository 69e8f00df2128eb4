import type { Ink } from '../../layout/sheet/page-drawing';

/** The ink of a computed CSS colour (`rgb(…)`, or `rgba(…)` laid on white), or null where nothing is drawn. */
export function inkOf(colour: string): Ink | null {
  const [red, green, blue, alpha = 1] = (colour.match(/[\d.]+/g) ?? []).map(Number);
  if (!colour.startsWith('rgb') || red === undefined || green === undefined || blue === undefined || alpha === 0) return null;
  const onWhite = (value: number): number => 1 - alpha * (1 - value / 255);
  return [onWhite(red), onWhite(green), onWhite(blue)];
}
