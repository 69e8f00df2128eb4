import { assert } from '../../vocabulary';
import { type Bytes, endOfTrack, trackChunkHead, variableLength } from './bytes';

/** Something that happens in a track, at a tick from the track's start. */
export interface TrackEvent {
  readonly tick: number;
  readonly bytes: Bytes;
}

/**
 * A whole track chunk. Events are written by tick, and at one tick in the order given, so the caller puts ends of notes before
 * beginnings; the end of the track stands at `endTick`. Throws when an event lies outside 0 to `endTick`.
 */
export function trackChunk(events: readonly TrackEvent[], endTick: number): Uint8Array {
  const body: number[] = [];
  let now = 0;
  for (const event of events.toSorted((a, b) => a.tick - b.tick)) {
    assert(event.tick >= 0 && event.tick <= endTick, `a MIDI event must lie between tick 0 and ${endTick}, got ${event.tick}`);
    body.push(...variableLength(event.tick - now), ...event.bytes);
    now = event.tick;
  }
  body.push(...variableLength(endTick - now), ...endOfTrack);
  return Uint8Array.from([...trackChunkHead(body.length)].concat(body));
}
