import { toAscii } from '../exchange/ascii';

/** A safe file name for chart text: `Last Ferry` gives `last-ferry.chart.txt`, a title with nothing to keep gives `chart.chart.txt`. */
export function chartFileName(title: string): string {
  const plain = toAscii(title)
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 60)
    .replace(/^-+|-+$/g, '');
  return `${plain || 'chart'}.chart.txt`;
}
