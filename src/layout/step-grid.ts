/**
 * From a score to the cards of the Practise place: one clave cycle to a card, one bar to a panel, one step to a cell.
 * Only places and names are worked out here, in steps; `grid/panel-boxes.ts` turns a panel into boxes.
 */
import type { Form, SoundingBar } from '../music/chart/chart';
import type { Score } from '../music/score';
import { type BassStroke, type DrumStroke, type Level, type PianoStroke, type Side, TICKS_PER_STEP } from '../vocabulary';
import { GRID_WORDS } from '../words/grid';
import type { Card, Cell, CountMark, MapSection, NoteMark, Panel, StepGrid } from './grid/cards';
import { type ChordChange, chordChanges, chordMarks } from './grid/chord-marks';
import { outerRange } from './grid/contour';
import { between, marksBetween, type Rings, ringing } from './grid/ringing';
import { homeSide, isOdd, splitForm, stepsOfSide } from './grid/split';
import { turnsOf } from './grid/turns';

/** Everything that is placed on the cards, whichever score it comes from. */
interface Material {
  readonly changes: readonly ChordChange[];
  readonly right: Rings<PianoStroke>;
  readonly left: Rings<PianoStroke>;
  readonly bass: Rings<BassStroke>;
  readonly clave: readonly DrumStroke[];
  readonly percussion: Readonly<Record<string, readonly DrumStroke[]>>;
  /** True when the left hand plays the bass line: it is drawn once, in the bass lane. */
  readonly doubled: boolean;
}

/**
 * All cards of the form. `score` fills the bars it arranges; `whole` (the arrangement of the whole form) fills the others when
 * the score is a loop; bars that neither arranges show their chords, counts and sides alone.
 */
export function stepGrid(score: Score, whole: Score = score): StepGrid {
  const form = score.form;
  const inLoop = materialOf(score);
  const around = whole === score ? inLoop : materialOf(whole);
  const first = score.bars[0]?.index ?? 0;
  const end = first + score.bars.length;
  const cards = splitForm(form).map((group, index): Card => {
    const bars = form.bars.slice(group.fromBar, group.toBar);
    const panels = bars.map((bar) => panelOf(form, bar, bar.index >= first && bar.index < end ? inLoop : around));
    const head = present(bars[0]);
    const tail = present(bars.at(-1));
    return {
      index,
      fromBar: group.fromBar,
      toBar: group.toBar,
      tick: head.tick,
      toTick: tail.tick + tail.ticks,
      panels,
      side: head.side,
      section: head.section,
      notes: panels.some((panel) => panel.right.some(isOut)) ? [...group.notes, 'half step out'] : group.notes,
    };
  });
  const panels = cards.flatMap((card) => card.panels);
  const cardOfBar = cards.flatMap((card) => card.panels.map(() => card.index));
  return {
    cards,
    panels,
    outerRange: outerRange(panels),
    sections: sectionsOf(whole, cards, cardOfBar),
    cardOfBar,
    turns: turnsOf(form, whole.closed),
    instruments: Object.keys(whole.parts.percussion),
    fromTick: score.fromTick,
    toTick: score.toTick,
    closed: score.closed,
  };
}

/** True for a stroke that a device has put a half step outside, struck in this panel. */
const isOut = (mark: NoteMark<PianoStroke>): boolean => mark.stroke.device === 'half-step-out' && !mark.ringsIn;

function materialOf(score: Score): Material {
  const { parts } = score;
  const piano = [...parts.rightHand, ...parts.leftHand].sort((one, other) => one.tick - other.tick);
  return {
    changes: chordChanges(score.bars, piano, score.closed),
    doubled: score.hands === 'tumbao',
    right: ringing(parts.rightHand, (stroke) => stroke.soundingTicks, score),
    left: ringing(parts.leftHand, (stroke) => stroke.soundingTicks, score),
    bass: ringing(parts.bass, (stroke) => stroke.durationTicks, score),
    clave: parts.clave,
    percussion: parts.percussion,
  };
}

function panelOf(form: Form, bar: SoundingBar, from: Material): Panel {
  const fullSteps = stepsOfSide(form.meter);
  const steps = bar.ticks / TICKS_PER_STEP;
  const end = bar.tick + bar.ticks;
  const visit = form.visits[bar.visit];
  const place = { bar, side: bar.side, steps, fullSteps };
  const struck = <Kind extends { readonly tick: number }>(strokes: readonly Kind[]) =>
    between(strokes, (stroke) => stroke.tick, bar.tick, end);
  const music = {
    chords: chordMarks(from.changes, bar),
    counts: countsOf(bar, steps, fullSteps),
    claveSteps: struck(from.clave).map((stroke) => (stroke.tick - bar.tick) / TICKS_PER_STEP),
    right: marksBetween(from.right, bar.tick, end),
    left: from.doubled ? [] : marksBetween(from.left, bar.tick, end),
    bass: marksBetween(from.bass, bar.tick, end),
    percussion: Object.entries(from.percussion)
      .map(([name, strokes]) => ({
        name,
        strokes: struck(strokes).map(({ tick, stroke }) => ({ step: (tick - bar.tick) / TICKS_PER_STEP, stroke })),
      }))
      .filter((row) => row.strokes.length > 0),
    hits: bar.hits,
  };
  return {
    ...place,
    ...music,
    doubled: from.doubled,
    sides: sidesOf(form, bar, steps, fullSteps),
    sectionBar: bar.index - (visit?.fromBar ?? bar.index) + 1,
    sectionBars: visit ? visit.toBar - visit.fromBar : 1,
    cells: cellsOf(bar, steps, from.doubled ? { ...music, left: marksBetween(from.left, bar.tick, end) } : music),
  };
}

/** The side of each step, run together: one run in an ordinary bar, two where the clave lies across it. */
function sidesOf(form: Form, bar: SoundingBar, steps: number, fullSteps: number): Panel['sides'] {
  const within = bar.cycleStep % fullSteps;
  const across = Math.min(steps, fullSteps - within);
  const other: Side = bar.side === 2 ? 3 : 2;
  if (bar.kind === 'pickup') return [{ from: 0, to: steps, side: homeSide(form) === 2 ? 3 : 2 }];
  return across < steps
    ? [
        { from: 0, to: across, side: bar.side },
        { from: across, to: steps, side: other },
      ]
    : [{ from: 0, to: steps, side: bar.side }];
}

/** `1 & 2 & …` in 4/4, `1` to `6` in 6/8 with the two beats strong. A pickup counts towards the barline. */
function countsOf(bar: SoundingBar, steps: number, fullSteps: number): readonly CountMark[] {
  const skipped = bar.kind === 'pickup' ? fullSteps - steps : 0;
  return Array.from({ length: steps }, (_, step) => {
    const at = step + skipped;
    if (fullSteps === 6) return { step, text: String(at + 1), strong: at % 3 === 0 };
    return { step, text: at % 2 === 0 ? String(at / 2 + 1) : '&', strong: at % 2 === 0 };
  });
}

type Music = Pick<Panel, 'chords' | 'counts' | 'claveSteps' | 'right' | 'left' | 'bass' | 'percussion' | 'hits'>;

function cellsOf(bar: SoundingBar, steps: number, music: Music): readonly Cell[] {
  return Array.from({ length: steps }, (_, step) => {
    const right = strokeIn(music.right, step);
    const left = strokeIn(music.left, step);
    const bass = strokeIn(music.bass, step);
    const strokes = { right, left, bass };
    const later = [...laterIn(music.right, step), ...laterIn(music.left, step)];
    const tick = bar.tick + step * TICKS_PER_STEP;
    // Said only when it is asked for: a long form has thousands of cells.
    return {
      step,
      tick,
      ...strokes,
      later,
      get label() {
        const marks = [...new Set([right, left, ...later].flatMap((stroke) => (stroke?.device ? [stroke.device] : [])))];
        const added = later.map(
          (stroke) => ({ hand: music.right.some((mark) => mark.stroke === stroke) ? 'right' : 'left', names: stroke.names }) as const,
        );
        return GRID_WORDS.cell({ ...strikesIn(music, step), bar: bar.index + 1, side: bar.side, ...namesOf(strokes), later: added, marks });
      },
    };
  });
}

function namesOf(strokes: { readonly right: PianoStroke | null; readonly left: PianoStroke | null; readonly bass: BassStroke | null }) {
  return { right: strokes.right?.names ?? [], left: strokes.left?.names ?? [], bass: strokes.bass?.names ?? [] };
}

/** What a step's name says besides its notes. */
function strikesIn(music: Music, step: number) {
  const chord = music.chords.find((mark) => mark.kind === 'played' && inStep(mark.step, step));
  const count = music.counts[step]?.text ?? '';
  return {
    count,
    beat: count === '&' ? (music.counts[step - 1]?.text ?? '') : count,
    chord: chord ? { symbol: chord.symbol, early: chord.tieTo !== null } : null,
    clave: music.claveSteps.some((at) => inStep(at, step)),
    hit: music.hits.some((hit) => hit.step === step),
    percussion: music.percussion.flatMap((row) =>
      row.strokes.filter((stroke) => inStep(stroke.step, step)).map(({ stroke }) => ({ instrument: row.name, stroke })),
    ),
  };
}

const inStep = (at: number, step: number): boolean => Math.floor(at) === step;

function strokeIn<Kind extends PianoStroke | BassStroke>(marks: readonly NoteMark<Kind>[], step: number): Kind | null {
  return marks.find((mark) => !mark.ringsIn && inStep(mark.step, step))?.stroke ?? null;
}

/** Strokes after the first of a step. */
function laterIn(marks: readonly NoteMark<PianoStroke>[], step: number): readonly PianoStroke[] {
  return marks
    .filter((mark) => !mark.ringsIn && inStep(mark.step, step))
    .slice(1)
    .map((mark) => mark.stroke);
}

function sectionsOf(whole: Score, cards: readonly Card[], cardOfBar: readonly number[]): readonly MapSection[] {
  const { form, levels } = whole;
  const home = homeSide(form);
  const first = whole.bars[0]?.index ?? 0;
  const one = levels.every((level) => level === levels[0]);
  return form.visits.map((visit) => ({
    name: visit.section,
    fromBar: visit.fromBar,
    toBar: visit.toBar,
    side: visit.side,
    odd: isOdd(visit),
    otherSide: visit.side !== home,
    onCue: visit.onCue,
    levels: one ? null : rangeOf(levels.slice(Math.max(0, visit.fromBar - first), Math.max(0, visit.toBar - first))),
    blocks: [...new Set(cardOfBar.slice(visit.fromBar, visit.toBar))].map((index) => ({
      card: index,
      fromBar: Math.max(cards[index]?.fromBar ?? 0, visit.fromBar),
      toBar: Math.min(cards[index]?.toBar ?? 0, visit.toBar),
    })),
  }));
}

const rangeOf = (levels: readonly Level[]): readonly [Level, Level] | null =>
  levels.length === 0 ? null : [Math.min(...levels) as Level, Math.max(...levels) as Level];

function present<Value>(value: Value | undefined): Value {
  if (value === undefined) throw new Error('a card without bars');
  return value;
}
