import type { PassRecord } from '../../practice/journal';
import type { ListeningState, PassReport, SelfRating } from '../listening/listening-state';
import { barAt } from '../loop';
import type { JournalDesk } from './journal-state';

/** Passes longer than eight bars are judged in pieces; this joins those of one pass to one record. */
export interface PassRecords {
  /** The record of the pass that this report ends, or null while there is more of it to come, and where it does not count. */
  readonly ofReport: (report: PassReport, state: ListeningState, at: number) => PassRecord | null;
}

type Where = Pick<JournalDesk, 'desk'>;

/** Makes records for the chart that lies on the desk. */
export function createPassRecords(desk: Where): PassRecords {
  let pieces: readonly PassReport[] = [];
  return {
    ofReport(report, { source }, at) {
      pieces = report.interrupted === null ? joined(pieces, report) : [];
      const whole = report.wholePass || lengthOf(pieces) >= passTicks(report);
      if (!whole || source === null || pieces.length === 0) return null;
      const all = pieces;
      pieces = [];
      return recordOf(all, source, desk, at);
    },
  };
}

const passTicks = ({ take }: PassReport): number => take.music.performance.toTick - take.music.performance.fromTick;
const lengthOf = (pieces: readonly PassReport[]): number => pieces.reduce((sum, { take }) => sum + take.toPlayTick - take.fromPlayTick, 0);

/** The pieces with one more, where it goes on from them; else it alone, where it begins a pass; else none. */
function joined(pieces: readonly PassReport[], report: PassReport): readonly PassReport[] {
  const last = pieces.at(-1)?.take;
  const { music, fromPlayTick } = report.take;
  if (last && last.music.performance === music.performance && last.toPlayTick === fromPlayTick) return [...pieces, report];
  const travelled = music.startTick - music.performance.fromTick + fromPlayTick - music.fromPlay;
  return travelled % passTicks(report) === 0 ? [report] : [];
}

function recordOf(pieces: readonly PassReport[], source: PassRecord['source'], desk: Where, at: number): PassRecord | null {
  const place = placeOf(desk);
  const take = pieces[0]?.take;
  // A pass of another chart, opened while this one was judged, is nobody's.
  if (!place || !take?.score || take.score.title !== place.title) return null;
  const { bars } = take.score.form;
  const { fromTick, toTick } = take.music.performance;
  const asked = pieces.map(({ assessment }) => assessment.steps.reduce((sum, step) => sum + step.asked, 0));
  const timed = pieces.filter(({ assessment }) => assessment.timing !== null);
  return {
    ...place,
    at,
    fromBar: barAt(bars, fromTick),
    toBar: barAt(bars, toTick - 1) + 1,
    clean: pieces.every(({ assessment }) => assessment.clean),
    shareRight: mean(
      pieces.map(({ assessment }) => assessment.shareRight),
      asked,
    ),
    // A constant offset is the player's own only where the delay of the device was measured.
    offsetMs: pieces.every((piece) => piece.take.timing === 'calibrated')
      ? mean(
          pieces.map(({ matched }) => matched.offsetMs),
          asked,
        )
      : null,
    spreadMs: mean(
      timed.flatMap(({ matched }) => matched.spreadMs ?? []),
      null,
    ),
    stepsMs: stepsOf(timed),
    findings: [...new Set(pieces.flatMap(({ assessment }) => assessment.findings.map(({ facts }) => facts.kind)))],
    source,
  };
}

/** Mean place of each step over the pieces; empty when timing was not judged. */
function stepsOf(pieces: readonly PassReport[]): readonly (number | null)[] {
  const steps = pieces[0]?.assessment.steps ?? [];
  return steps.map(({ cycleStep }) => {
    const here = pieces.flatMap(({ assessment }) => {
      const step = assessment.steps.find((each) => each.cycleStep === cycleStep);
      return step?.meanMs == null ? [] : [{ ms: step.meanMs, played: Math.max(1, step.played) }];
    });
    return mean(
      here.map(({ ms }) => ms),
      here.map(({ played }) => played),
    );
  });
}

function mean(values: readonly number[], weights: readonly number[] | null): number | null {
  const weight = (index: number): number => weights?.[index] ?? 1;
  const sum = values.reduce((total, _, index) => total + weight(index), 0);
  if (values.length === 0) return null;
  return sum === 0 ? (values[0] ?? null) : values.reduce((total, value, index) => total + value * weight(index), 0) / sum;
}

/** A pass that the player rated: what lies on the desk, with nothing measured. */
export function ratedPass(desk: Where, rating: SelfRating, at: number): PassRecord | null {
  const place = placeOf(desk);
  const { music } = desk.desk.getState();
  if (!place || !music) return null;
  const { fromBar, toBar } = music.loop ?? { fromBar: 0, toBar: music.whole.form.bars.length };
  return {
    ...place,
    at,
    fromBar,
    toBar,
    clean: rating === 'clean',
    shareRight: null,
    offsetMs: null,
    spreadMs: null,
    stepsMs: [],
    findings: rating === 'nearly' ? ['nearly'] : [],
    source: 'own rating',
  };
}

function placeOf({ desk }: Where) {
  const { chartId, music, settings } = desk.getState();
  if (!music) return null;
  const { level, tempo, direction } = settings;
  return {
    kind: 'pass' as const,
    chart: chartId,
    title: music.score.title,
    tempo,
    direction,
    level: level === 'by section' ? (music.score.levels[0] ?? music.score.level) : level,
  };
}
