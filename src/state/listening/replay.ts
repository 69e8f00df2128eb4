import type { Performance, PerformedEvent } from '../../performance/performance';
import { tickAt } from '../../performance/tempo';
import type { Take } from '../../practice/take';
import { TICKS_PER_STEP } from '../../vocabulary';

/** What sounds with the player's own notes. */
export type ReplayWith = 'clave' | 'band';

/** Sounding length of a note that was never let go, in ticks. */
const HELD_TICKS = TICKS_PER_STEP;
/** A clap sounds as a woodblock click would: the high pulse. */
const CLAP_DRUM = 'pulse high';

/**
 * The take as music: the player's notes where they were struck (nothing straightened), with the clave alone or with the rest of the
 * band, going round. `shiftTicks` moves the notes against the band; one bar puts them on the other side of the clave.
 */
export function replayOf(take: Take, withWhat: ReplayWith, shiftTicks = 0): Performance {
  const { performance, startTick, fromPlay } = take.music;
  const { fromTick, toTick, bars } = performance;
  const length = toTick - fromTick;
  const start = fromTick + mod(startTick - fromTick + take.fromPlayTick - fromPlay, length);
  const end = start + take.toPlayTick - take.fromPlayTick;
  const inside = (tick: number) => tick >= start && tick < end;
  const band = performance.events.filter(
    ({ part, tick }) => inside(tick) && (withWhat === 'clave' ? part === 'clave' : !part.startsWith('piano') && !take.parts.includes(part)),
  );
  const span = end - start;
  const own = take.notes.flatMap((note, index): PerformedEvent[] => {
    const played = tickAt(take.tempo, note.at) - take.fromPlayTick;
    // What came a little before the stretch belongs to its first stroke.
    if (played < -TICKS_PER_STEP / 2 || played >= span - TICKS_PER_STEP / 2) return [];
    const place = mod(played + shiftTicks, span);
    const tick = Math.min(start + span - 1, start + Math.round(place));
    const until = note.until === null ? null : tickAt(take.tempo, note.until) - take.fromPlayTick;
    return [
      {
        id: 1_000_000 + index,
        part: note.midi === null ? 'pulse' : 'piano right',
        tick,
        offsetTicks: 0,
        soundingTicks: Math.max(30, until === null ? HELD_TICKS : Math.round(until - played)),
        midi: note.midi,
        drum: note.midi === null ? CLAP_DRUM : null,
        velocity: note.velocity,
        firstPassOnly: false,
      },
    ];
  });
  return {
    events: [...band, ...own].sort((a, b) => a.tick + a.offsetTicks - (b.tick + b.offsetTicks) || a.id - b.id),
    fromTick: start,
    toTick: end,
    closed: true,
    cycleStarts: performance.cycleStarts.filter(inside),
    bars: bars.filter(({ tick }) => inside(tick)),
    clave: performance.clave,
    tempo: performance.tempo,
  };
}

/** Ticks (from the start of the stretch) of clave strokes that meet a note within a third of a step: what is lit when the take is moved. */
export function claveMet(replay: Performance): readonly number[] {
  const own = replay.events.filter(({ id }) => id >= 1_000_000).map(({ tick }) => tick);
  const length = replay.toTick - replay.fromTick;
  const near = (a: number, b: number) => {
    const apart = mod(a - b, length);
    return Math.min(apart, length - apart) <= TICKS_PER_STEP / 3;
  };
  return replay.events.filter(({ part, tick }) => part === 'clave' && own.some((each) => near(each, tick))).map(({ tick }) => tick);
}

const mod = (value: number, by: number): number => ((value % by) + by) % by;
