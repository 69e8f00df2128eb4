import type { SoundingBar } from '../../../src/music/chart/chart';
import { type PercussionChoice, percussionParts } from '../../../src/music/percussion/percussion';
import type { Direction, DrumStroke } from '../../../src/vocabulary';
import { formOf } from '../chart/chart-of';

/** Percussion by instrument. */
export type Parts = Record<string, DrumStroke[]>;
/** The style written on a bar. */
export const styleOf = (bar: SoundingBar): string => bar.style;

/** The bars of a chart text and the percussion over them. */
export function parts(
  text: string,
  options: { direction?: Direction; choice?: PercussionChoice; closed?: boolean; pickup?: boolean } = {},
) {
  const { direction, choice, closed, pickup } = options;
  const form = formOf(text, { ...(direction ? { direction } : {}), pickup: pickup ?? false });
  const percussion: Parts = percussionParts(form.bars, form.clave.kind, {
    styleOf,
    ...(choice ? { choice } : {}),
    closed: closed ?? false,
  });
  return { bars: form.bars, percussion };
}

/** Strokes of a part in a bar, as `step stroke`. */
export const inBar = (part: readonly DrumStroke[] | undefined, bar: SoundingBar | undefined): string[] =>
  bar === undefined
    ? []
    : (part ?? [])
        .filter(({ tick }) => tick >= bar.tick && tick < bar.tick + bar.ticks)
        .map(({ tick, stroke }) => `${(tick - bar.tick) / 240} ${stroke}`);
/** Steps of a bar struck by a part. */
export const stepsIn = (part: readonly DrumStroke[] | undefined, bar: SoundingBar | undefined): string =>
  inBar(part, bar)
    .map((text) => text.split(' ')[0])
    .join(' ');

/** A verse of four bars that leads into a coro; `last` is the bar before it. */
export const VERSE_CORO = (direction: Direction, last = '| G |') =>
  `clave: ${direction} son\n[A, role: verse]\n| C | G | C ${last}\n[Coro, role: coro]\n| C | G | C | G |`;
