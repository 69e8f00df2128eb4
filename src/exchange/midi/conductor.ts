import { keyFifths } from '../../layout/notation/key-fifths';
import type { SoundingBar } from '../../music/chart/chart';
import type { Score } from '../../music/score';
import { fullBarTicks, TICKS_PER_QUARTER } from '../../vocabulary';
import { toAscii } from '../ascii';
import { type Bytes, keySignature, marker, setTempo, timeSignature, trackName } from './bytes';
import type { TrackEvent } from './track';

/** The longest name or marker in a file; longer ones are cut (needs of other programs, common practice). */
const LONGEST_NAME = 32;

/** `text` as a name that every program reads: ASCII, at most `LONGEST_NAME` characters; `fallback` when nothing is left. */
export function midiName(text: string, fallback: string): string {
  const name = toAscii(text).slice(0, LONGEST_NAME).trim();
  return name === '' ? fallback : name;
}

/**
 * The events of track 0: title, meter, key and tempo wherever they change, and a marker for every bar's side; the first bar of each
 * section is marked with its name too (`Coro, 3-side`). `tempoFactor` scales every tempo.
 */
export function conductorEvents(score: Score, tempoFactor: number): TrackEvent[] {
  const events: TrackEvent[] = [{ tick: 0, bytes: trackName(midiName(score.title, 'Montuno')) }];
  const visitStarts = new Map(score.form.visits.map((visit) => [visit.fromBar, visit.section]));
  const written = new Map<string, string>();
  const change = (tick: number, what: string, bytes: Bytes): void => {
    const now = bytes.join();
    if (written.get(what) === now) return;
    written.set(what, now);
    events.push({ tick, bytes });
  };
  score.bars.forEach((bar, i) => {
    const tick = bar.tick - score.fromTick;
    change(tick, 'meter', barMeter(score, bar));
    change(tick, 'key', keySignature(keyFifths(bar.key), bar.key.mode));
    change(tick, 'tempo', setTempo(bar.tempo * 2 * tempoFactor));
    const section = visitStarts.get(bar.index) ?? (i === 0 ? bar.section : null);
    const side = `${bar.side}-side`;
    events.push({ tick, bytes: marker(section === null ? side : `${midiName(section, 'Section').slice(0, LONGEST_NAME - 8)}, ${side}`) });
  });
  return events;
}

/** Cut time for full 4/4 bars (a click on the half note), 6/8 with a click on the dotted quarter, quarters or eighths for shorter bars. */
function barMeter(score: Score, bar: SoundingBar): Bytes {
  const full = fullBarTicks(score.meter);
  if (bar.ticks === full) return score.meter === '6/8' ? timeSignature(6, 8, 36) : timeSignature(2, 2, 48);
  const quarters = bar.ticks / TICKS_PER_QUARTER;
  if (Number.isInteger(quarters)) return timeSignature(quarters, 4, 24);
  return timeSignature(Math.max(1, Math.round(quarters * 2)), 8, 12);
}
