import type { Meter } from '../../vocabulary';
import type { Hit } from './chart';
import type { FaultList, Place } from './faults';

/**
 * Reads the band's hits in a bar: `{1 2& 4&~}` is a hit on 1, on the & of 2, and a held one on the & of 4.
 * In 6/8 the eighths are counted 1 to 6 and there is no `&`. `ticks` is the length of the bar. Hits come back in the order of their steps.
 */
export function readHits(place: Place, meter: Meter, ticks: number, faults: FaultList): Hit[] {
  const inner = place.text.slice(1).replace(/\}$/, '');
  const steps = ticks / 240;
  const beats = meter === '6/8' ? steps : steps / 2;
  const expected =
    meter === '6/8'
      ? `eighths 1 to ${beats}, ~ after a held one: {1 4~}`
      : `beats 1 to ${beats}, & for the eighth after, ~ for a held one: {1 2&${beats > 2 ? ' 4&~' : ''}}`;
  const hits = new Map<number, Hit>();
  for (const word of inner.matchAll(/[^\s,]+/g)) {
    const at: Place = { line: place.line, column: place.column + 1 + word.index, text: word[0] };
    const match = /^(\d)(&|\+)?(~)?$/.exec(word[0]);
    const beat = Number(match?.[1] ?? 0);
    if (!match || beat < 1 || beat > beats || (meter === '6/8' && match[2])) {
      faults.add('unknown hit', at, expected);
      continue;
    }
    const step = meter === '6/8' ? beat - 1 : (beat - 1) * 2 + (match[2] ? 1 : 0);
    if (hits.has(step)) faults.add('hit twice', at, 'each hit once');
    hits.set(step, { step, held: match[3] !== undefined });
  }
  if (hits.size === 0 && inner.trim() === '') faults.add('no hits', place, expected);
  return [...hits.values()].sort((a, b) => a.step - b.step);
}

/** How hits are typed: the reverse of `readHits`. */
export function writeHits(hits: readonly Hit[], meter: Meter): string {
  const words = hits.map(({ step, held }) => {
    const count = meter === '6/8' ? `${step + 1}` : `${Math.floor(step / 2) + 1}${step % 2 === 1 ? '&' : ''}`;
    return count + (held ? '~' : '');
  });
  return `{${words.join(' ')}}`;
}
