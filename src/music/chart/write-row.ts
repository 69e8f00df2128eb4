import { fullBarTicks, type Meter } from '../../vocabulary';
import type { WrittenBar } from './chart';
import { halfBar } from './read-bar';
import { writeHits } from './read-hits';

/** Writes bars in one row: `|: Gm7 C7 | Fmaj7 :|`. */
export function writeRow(bars: readonly WrittenBar[], meter: Meter): string {
  let text = '';
  bars.forEach((bar, index) => {
    text += `${barlineBetween(bars[index - 1], bar)} ${writeBar(bar, meter)} `;
  });
  return text + closing(bars.at(-1));
}

function barlineBetween(before: WrittenBar | undefined, bar: WrittenBar): string {
  const opening = `${bar.repeatStart ? '|:' : '|'}${bar.ending ? `${bar.ending.join(',')}.` : ''}`;
  const closed = before && before.repeatEnd === null && !before.doubleBar ? '' : before && closing(before);
  if (!closed) return opening;
  if (opening === '|') return closed;
  if (closed === ':|' && !bar.repeatStart) return `:${opening}`;
  return `${closed} ${opening}`;
}

function closing(bar: WrittenBar | undefined): string {
  const double = bar?.doubleBar ? '||' : '|';
  if (!bar || bar.repeatEnd === null) return double;
  return bar.repeatEnd === 2 ? `:${double}` : `:${double} x${bar.repeatEnd}`;
}

function writeBar(bar: WrittenBar, meter: Meter): string {
  const parts: string[] = [];
  const atStart = bar.marks.findIndex((mark) => mark !== 'segno' && mark !== 'coda');
  const before = atStart < 0 ? bar.marks.length : atStart;
  const marks = bar.marks.map((mark) => `<${mark}>`);
  parts.push(...marks.slice(0, before));
  if (bar.pickup) parts.push('(pickup)');
  if (bar.ticks < fullBarTicks(meter) && bar.content.kind !== 'repeat') parts.push(halfBar(meter));
  if (bar.source !== '') parts.push(bar.source);
  if (bar.hits.length > 0) parts.push(writeHits(bar.hits, meter));
  parts.push(...marks.slice(before));
  return parts.join(' ');
}
