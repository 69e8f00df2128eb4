import type { NotatedBar, Notation } from '../../layout/notation/notation';
import type { SoundingBar } from '../../music/chart/chart';
import type { Score } from '../../music/score';
import { assert } from '../../vocabulary';
import { SCORE_FILE_WORDS } from '../../words/score-file';
import type { WrittenMeasure } from './fold-passes';
import type { ScorePart } from './score-part';
import { harmonyElement } from './write-harmony';
import { noteElements, TICKS_PER_DIVISION } from './write-notes';
import { element, type Xml } from './xml';

/** What is written over the notes of a part: chord symbols, what leads the whole band (sections, tempo, clave), the side of every bar. */
export interface PartHeading {
  readonly chords: boolean;
  readonly leads: boolean;
  readonly sides: boolean;
}

/** Divisions to the quarter note. */
const DIVISIONS = 480 / TICKS_PER_DIVISION;

/** The measures of one part, each made when it is asked for: a long score never stands in memory as elements. */
export function* measureElements(
  part: ScorePart,
  heading: PartHeading,
  score: Score,
  notation: Notation,
  measures: readonly WrittenMeasure[],
): Generator<Xml> {
  const pickup = score.bars[0]?.kind === 'pickup';
  for (const [index, measure] of measures.entries()) {
    const bar = score.bars[measure.bar];
    const notated = notation.bars[measure.bar];
    assert(bar && notated, `there is no bar ${measure.bar} to write`);
    const previous = measures[index - 1]?.bar;
    const before = previous === undefined ? null : { bar: score.bars[previous], notated: notation.bars[previous] };
    const number = pickup ? index : index + 1;
    yield element(
      'measure',
      [
        leftBarline(measure),
        attributes(part, bar, notated, before),
        ...(heading.leads ? leadDirections(score, bar, notated, before?.bar) : []),
        ...(heading.sides ? [words(SCORE_FILE_WORDS.side(bar.side))] : []),
        ...voices(part, heading, bar, measure.bar),
        rightBarline(measure, measures[index + 1], notation),
      ],
      { number, ...(bar.kind === 'pickup' ? { implicit: 'yes' } : {}) },
    );
  }
}

interface Before {
  readonly bar: SoundingBar | undefined;
  readonly notated: NotatedBar | undefined;
}

function attributes(part: ScorePart, bar: SoundingBar, notated: NotatedBar, before: Before | null): Xml | undefined {
  const meter = JSON.stringify(notated.meter);
  const newKey = before?.notated?.fifths !== notated.fifths || before.bar?.key.mode !== bar.key.mode;
  const newMeter = JSON.stringify(before?.notated?.meter) !== meter;
  if (before && !newKey && !newMeter) return undefined;
  return element('attributes', [
    before ? undefined : element('divisions', DIVISIONS),
    newKey ? element('key', [element('fifths', notated.fifths), element('mode', bar.key.mode)]) : undefined,
    newMeter ? time(notated) : undefined,
    ...(before ? [] : part.setup),
  ]);
}

function time({ meter }: NotatedBar): Xml {
  const [beats, unit] = meter.kind === 'cut' ? [2, 2] : [meter.beats, meter.unit];
  return element('time', [element('beats', beats), element('beat-type', unit)], meter.kind === 'cut' ? { symbol: 'cut' } : {});
}

/** Section mark, clave, tempo and cue, where each begins. */
function leadDirections(score: Score, bar: SoundingBar, notated: NotatedBar, before: SoundingBar | undefined): Xml[] {
  const visit = score.form.visits.find(({ fromBar }) => fromBar === bar.index);
  const section = notated.sectionStart ?? (before ? null : bar.section);
  return [
    ...(section === null ? [] : [direction(element('rehearsal', section))]),
    ...(before ? [] : [words(SCORE_FILE_WORDS.clave(score.clave))]),
    ...(before && bar.restart ? [words(SCORE_FILE_WORDS.restart(bar.side))] : []),
    ...(before?.tempo === bar.tempo ? [] : [tempo(score, bar.tempo)]),
    ...(visit?.onCue ? [words(SCORE_FILE_WORDS.onCue)] : []),
    ...(bar.chords.some(({ push }) => push) ? [words(SCORE_FILE_WORDS.push)] : []),
  ];
}

const direction = (content: Xml, sound?: Xml): Xml =>
  element('direction', [element('direction-type', [content]), sound], { placement: 'above' });
const words = (text: string): Xml => direction(element('words', text));

/** The tempo by half notes, in 6/8 by dotted quarters; for programs that play also in quarter notes a minute. */
function tempo(score: Score, halfNotes: number): Xml {
  const compound = score.meter === '6/8';
  const beat = compound ? [element('beat-unit', 'quarter'), element('beat-unit-dot')] : [element('beat-unit', 'half')];
  const perMinute = compound ? Math.round((halfNotes * 400) / 3) / 100 : halfNotes;
  return direction(element('metronome', [...beat, element('per-minute', perMinute)]), element('sound', [], { tempo: halfNotes * 2 }));
}

/** The voices of a measure one after another, each from the measure's start. */
function voices(part: ScorePart, heading: PartHeading, bar: SoundingBar, index: number): Xml[] {
  return part.voices.flatMap((voice, v) => {
    const staff = voice.bars[index] ?? { events: [], beams: [] };
    const groups = noteElements(staff, (event) => voice.headsOf(event, index), voice);
    const chords = heading.chords && v === 0 ? chordsOf(bar) : [];
    const notes = groups.flatMap(({ tick, notes: written }, g) => {
      const next = groups[g + 1]?.tick ?? bar.ticks;
      const here = chords.filter((chord) => chord.tick - bar.tick >= tick && chord.tick - bar.tick < next);
      return [...here.map((chord) => harmonyElement(chord, (chord.tick - bar.tick - tick) / TICKS_PER_DIVISION)), ...written];
    });
    const back = v === 0 ? [] : [element('backup', [element('duration', bar.ticks / TICKS_PER_DIVISION)])];
    return [...back, ...notes];
  });
}

/** The chords of a bar; a stop or a rest says that there is none, or the chord before would go on. */
function chordsOf(bar: SoundingBar): readonly Pick<SoundingBar['chords'][number], 'tick' | 'chord' | 'symbol'>[] {
  return bar.chords.length === 0 && bar.playing !== 'band' ? [{ tick: bar.tick, chord: null, symbol: 'N.C.' }] : bar.chords;
}

function leftBarline(measure: WrittenMeasure): Xml | undefined {
  if (!measure.repeatStart && !measure.endingStart) return undefined;
  return element(
    'barline',
    [
      measure.repeatStart ? element('bar-style', 'heavy-light') : undefined,
      measure.endingStart ? ending(measure, 'start') : undefined,
      measure.repeatStart ? element('repeat', [], { direction: 'forward' }) : undefined,
    ],
    { location: 'left' },
  );
}

/** The sign after a measure: a repeat, the end, or a double line before the next section. */
function rightBarline(measure: WrittenMeasure, next: WrittenMeasure | undefined, notation: Notation): Xml | undefined {
  const { repeatEnd, endingStop } = measure;
  const style =
    repeatEnd !== null || !next ? 'light-heavy' : (notation.bars[next.bar]?.sectionStart ?? null) === null ? null : 'light-light';
  if (style === null && endingStop === null) return undefined;
  return element(
    'barline',
    [
      style === null ? undefined : element('bar-style', style),
      endingStop === null ? undefined : ending(measure, endingStop),
      repeatEnd === null ? undefined : element('repeat', [], { direction: 'backward', times: repeatEnd === 2 ? undefined : repeatEnd }),
    ],
    { location: 'right' },
  );
}

function ending(measure: WrittenMeasure, type: 'start' | 'stop' | 'discontinue'): Xml {
  const numbers = (measure.ending ?? []).join(', ');
  return element('ending', type === 'start' ? `${(measure.ending ?? []).join('., ')}.` : '', { number: numbers, type });
}
