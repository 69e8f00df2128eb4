import { mixWav } from '../exchange/wav/mix-wav';
import { levelsFor, PLAIN_LEVELS, PLAY_ALONGS, type PlayAlong, playAlongOptions, playAlongPerformance } from '../exchange/wav/play-along';
import type { WavRate } from '../exchange/wav/wav-header';
import type { Score } from '../music/score';
import { type HalfNotesPerMinute, halfNotesPerMinute, TEMPO_RANGE } from '../vocabulary';
import type { OptionRow } from './command-line';
import type { OptionReader } from './option-reader';
import { done, later, type Outcome, refused, type World } from './outcome';

/** What may be chosen about a WAV file on the command line. */
export interface WavChoice {
  readonly parts: PlayAlong;
  readonly rate: WavRate;
  readonly tempo: HalfNotesPerMinute | null;
  readonly passes: number;
  readonly countInBars: 0 | 1 | 2;
  /** Seconds for the last notes, or null for a file that loops. */
  readonly tail: number | null;
}

/** The options of a WAV file. */
export const WAV_ROWS: readonly OptionRow[] = ['parts', 'rate', 'tempo', 'passes', 'count-in', 'tail'].map((name) => ({
  name,
  takes: 'value',
}));
/** How they are written, for the list of commands. */
export const WAV_FORM =
  '[--parts full|without-piano|piano-only] [--rate 44100|48000] [--tempo N] [--passes N] [--count-in 0..2] [--tail SECONDS]';

const MOST_PASSES = 64;
const LONGEST_TAIL = 30;

/** Reads the options of a WAV file; what is wrong goes into the reader's faults. */
export function readWavChoice(reader: OptionReader): WavChoice {
  const tempo = reader.whole('tempo', TEMPO_RANGE.from, TEMPO_RANGE.to);
  const countIn = reader.whole('count-in', 0, 2);
  const tail = reader.whole('tail', 0, LONGEST_TAIL);
  return {
    parts: reader.oneOf('parts', PLAY_ALONGS) ?? 'full',
    rate: reader.oneOf('rate', ['44100', '48000']) === '48000' ? 48_000 : 44_100,
    tempo: tempo === undefined ? null : halfNotesPerMinute(tempo),
    passes: reader.whole('passes', 1, MOST_PASSES) ?? 1,
    countInBars: countIn === 1 ? 1 : countIn === 2 ? 2 : 0,
    tail: tail ?? null,
  };
}

/** Writes a score as a WAV file: a loop to the frame, or, where the score is open or a tail is asked for, rung out. */
export function exportWav(score: Score, choice: WavChoice, path: string, world: World): Outcome {
  return later(async () => {
    const sounds = await world.sounds();
    if (!sounds.ok) return refused(sounds.faults);
    const form = score.closed ? 'loop' : 'once';
    const { end } = playAlongOptions(form);
    const { rate, passes, countInBars, tail } = choice;
    const stream = mixWav(
      playAlongPerformance(score, form),
      {
        rate,
        passes,
        countInBars,
        tempo: choice.tempo ?? score.tempo,
        levels: levelsFor(choice.parts, PLAIN_LEVELS),
        end: tail ?? end,
      },
      sounds.value,
    );
    const written = await world.writePieces(path, stream.chunks);
    return written.ok ? done('') : refused(written.faults);
  });
}
