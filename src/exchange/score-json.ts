import type { ChartNotice, SoundingBar } from '../music/chart/chart';
import { keyName } from '../music/pitch/key';
import type { Score } from '../music/score';
import { type BassRole, type DrumStroke, type PianoRole, type Stroke, TICKS_PER_QUARTER, TICKS_PER_STEP } from '../vocabulary';
import { alignmentSentence } from '../words/alignment-sentence';
import { NOTICES } from '../words/notice';
import { whyStroke } from '../words/why';

/** Name and version of the format, in every file. */
const SCORE_FORMAT = 'contratiempo-score/1';

/** A stroke as other programs read it: as in the score, with its reasons in words. */
export interface StrokeJson extends Omit<Stroke, 'reason'> {
  readonly why: readonly string[];
}

/** A bar as other programs read it. `chords` and `hits` carry absolute ticks. */
export interface BarJson
  extends Pick<
    SoundingBar,
    'index' | 'writtenBar' | 'pass' | 'section' | 'role' | 'kind' | 'tick' | 'ticks' | 'cycleStep' | 'side' | 'restart'
  > {
  readonly level: number;
  readonly chords: readonly { readonly tick: number; readonly symbol: string; readonly push: boolean }[];
  readonly hits: readonly { readonly tick: number; readonly step: number; readonly held: boolean }[];
}

/** The arrangement as plain data for other programs. Ticks count from the first bar of the form; indexes start at 0. */
export interface ScoreJson {
  readonly format: typeof SCORE_FORMAT;
  readonly ticksPerQuarter: number;
  readonly title: string;
  readonly key: string;
  readonly meter: string;
  readonly style: string;
  readonly closed: boolean;
  readonly clave: { readonly kind: string; readonly direction: string };
  readonly tempo: { readonly halfNotesPerMinute: number };
  readonly level: number;
  readonly devices: readonly string[];
  readonly bars: readonly BarJson[];
  readonly parts: {
    readonly rightHand: readonly StrokeJson[];
    readonly leftHand: readonly StrokeJson[];
    readonly bass: readonly StrokeJson[];
    readonly clave: readonly { readonly tick: number }[];
    readonly percussion: Readonly<Record<string, readonly DrumStroke[]>>;
  };
  readonly alignment: { readonly verdict: string | null; readonly states: string; readonly score: number; readonly reason: string };
  readonly notices: readonly { readonly code: string; readonly bar: number | null; readonly text: string }[];
}

/** The score in the shape that other programs read; `JSON.stringify` makes the file. */
export function scoreJson(score: Score): ScoreJson {
  const { rightHand, leftHand, bass, clave, percussion } = score.parts;
  const strokes = (part: readonly Stroke<PianoRole | BassRole>[]): readonly StrokeJson[] =>
    part.map((stroke) => strokeJson(stroke, score.bars));
  return {
    format: SCORE_FORMAT,
    ticksPerQuarter: TICKS_PER_QUARTER,
    title: score.title,
    key: keyName(score.key),
    meter: score.meter,
    style: score.style,
    closed: score.closed,
    clave: { kind: score.clave.kind, direction: score.clave.direction },
    tempo: { halfNotesPerMinute: score.tempo },
    level: score.level,
    devices: score.devices,
    bars: score.bars.map((bar, index) => barJson(bar, score.levels[index] ?? score.level)),
    parts: {
      rightHand: strokes(rightHand),
      leftHand: strokes(leftHand),
      bass: strokes(bass),
      clave: clave.map(({ tick }) => ({ tick })),
      percussion: Object.fromEntries(
        Object.entries(percussion).map(([name, part]) => [name, part.map(({ tick, stroke }) => ({ tick, stroke }))]),
      ),
    },
    alignment: {
      verdict: score.alignment.verdict,
      states: score.alignment.states,
      score: score.alignment.score,
      reason: alignmentSentence(score.alignment),
    },
    notices: score.notices.map(noticeJson),
  };
}

function barJson(bar: SoundingBar, level: number): BarJson {
  const { index, writtenBar, pass, section, role, kind, tick, ticks, cycleStep, side, restart } = bar;
  return {
    index,
    writtenBar,
    pass,
    section,
    role,
    level,
    kind,
    tick,
    ticks,
    cycleStep,
    side,
    restart,
    chords: bar.chords.map(({ tick: at, symbol, push }) => ({ tick: at, symbol, push })),
    hits: bar.hits.map(({ step, held }) => ({ tick: tick + step * TICKS_PER_STEP, step, held })),
  };
}

function strokeJson(stroke: Stroke, bars: readonly SoundingBar[]): StrokeJson {
  const { tick, durationTicks, soundingTicks, midi, names, velocity, role, chord, degrees, leadTicks, lift, line, device, firstPassOnly } =
    stroke;
  const why = [whyStroke(stroke, bars)];
  return {
    tick,
    durationTicks,
    soundingTicks,
    midi,
    names,
    velocity,
    role,
    chord,
    degrees,
    leadTicks,
    lift,
    line,
    device,
    firstPassOnly,
    why,
  };
}

const noticeJson = (notice: ChartNotice) => ({ code: notice.code, bar: notice.bar, text: NOTICES.sentence(notice) });
