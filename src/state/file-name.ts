import { plainName } from '../exchange/plain-name';

/** A safe file name for chart text: `Last Ferry` gives `last-ferry.chart.txt`, a title with nothing to keep gives `chart.chart.txt`. */
export function chartFileName(title: string): string {
  return `${plainName(title) || 'chart'}.chart.txt`;
}
