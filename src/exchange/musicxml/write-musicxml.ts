import type { Fingering } from '../../layout/notation/fingering';
import { notate } from '../../layout/notation/notate';
import type { Notation } from '../../layout/notation/notation';
import type { Score } from '../../music/score';
import { assert } from '../../vocabulary';
import { SCORE_FILE_WORDS } from '../../words/score-file';
import { type FoldableBar, foldPasses } from './fold-passes';
import { bassPart, drumPart, pianoPart, type ScorePart } from './score-part';
import { measureElements } from './write-measures';
import { element, printXml, type Xml } from './xml';

/** What may be chosen about a MusicXML file. */
export interface MusicXmlOptions {
  /** The day it is written, as `2026-11-25`; left out when missing, so that the same score always gives the same file. */
  readonly encodingDate?: string;
  /** How much fingering is written; none when missing. */
  readonly fingering?: Fingering;
  /** Which parts are written beside the piano; all when missing. A part without a stroke is left out anyway. */
  readonly parts?: { readonly bass: boolean; readonly clave: boolean; readonly percussion: boolean };
}

/** The type of the file, for saving it. */
export const MUSICXML_TYPE = 'application/vnd.recordare.musicxml+xml';
/** The name and version that a file says it was written by. */
const SOFTWARE = 'Contratiempo';

/**
 * A score as MusicXML 4.0, partwise: the piano on two staves with chord symbols, then bass, clave and each instrument of the percussion.
 * The form is written as it sounds, once through; passages are folded into repeats and endings only where that says exactly the same
 * (`foldPasses`). What would ring past the last bar ends with it, so no tie is left open. Cut time, 6/8 for the bell; a pickup is measure 0.
 * Throws on an encoding date that is none. Source: MusicXML 4.0, W3C Music Notation Community Group, 2021.
 */
export function writeMusicXml(score: Score, options: MusicXmlOptions = {}): string {
  const { encodingDate } = options;
  assert(
    encodingDate === undefined || /^\d{4}-\d\d-\d\d$/.test(encodingDate),
    `an encoding date must look like 2026-11-25, got ${encodingDate}`,
  );
  const notation = notate(score, { fingering: options.fingering ?? 'none' });
  const parts = partsOf(score, notation, options);
  const measures = foldPasses(foldableBars(score, notation, parts));
  const sidesIn = parts.find(({ name }) => name === 'clave') ?? parts[0];
  return printXml(
    element(
      'score-partwise',
      [
        element('work', [element('work-title', score.title.trim() === '' ? SCORE_FILE_WORDS.untitled : score.title)]),
        identification(score, encodingDate),
        element(
          'part-list',
          parts.map(({ entry }) => entry),
        ),
        ...parts.map((part, index) =>
          element(
            'part',
            measureElements(part, { chords: index === 0, leads: index === 0, sides: part === sidesIn }, score, notation, measures),
            { id: part.id },
          ),
        ),
      ],
      { version: '4.0' },
    ),
    DOCTYPE,
  );
}

/** The public identifier that many programs tell a score by. */
const DOCTYPE =
  '<!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 4.0 Partwise//EN" "http://www.musicxml.org/dtds/partwise.dtd">';

function identification(score: Score, encodingDate: string | undefined): Xml {
  const { direction, kind } = score.clave;
  return element('identification', [
    element('encoding', [
      element('software', SOFTWARE),
      encodingDate === undefined ? undefined : element('encoding-date', encodingDate),
      element('supports', [], { element: 'accidental', type: 'yes' }),
      element('supports', [], { element: 'beam', type: 'yes' }),
      element('supports', [], { element: 'stem', type: 'yes' }),
    ]),
    element('miscellaneous', [
      element('miscellaneous-field', `${direction} ${kind}`, { name: 'clave' }),
      element('miscellaneous-field', score.style, { name: 'style' }),
      element('miscellaneous-field', score.level, { name: 'level' }),
    ]),
  ]);
}

function partsOf(score: Score, notation: Notation, { parts }: MusicXmlOptions): [ScorePart, ...ScorePart[]] {
  const { bass, clave, percussion } = score.parts;
  let number = 1;
  const next = (): string => `P${++number}`;
  const drums = Object.entries(percussion).filter(([, strokes]) => strokes.length > 0);
  return [
    pianoPart('P1', notation),
    ...(bass.length > 0 && (parts?.bass ?? true) ? [bassPart(next(), notation)] : []),
    ...(clave.length > 0 && (parts?.clave ?? true) ? [drumPart(next(), 'clave', clave, score)] : []),
    ...((parts?.percussion ?? true) ? drums.map(([name, strokes]) => drumPart(next(), name, strokes, score)) : []),
  ];
}

/** Every bar with what it is compared by: all that is written in it, signs that only remind left out. */
function foldableBars(score: Score, notation: Notation, parts: readonly ScorePart[]): FoldableBar[] {
  const times = new Map<number, number>();
  for (const { writtenBar } of score.bars) times.set(writtenBar, (times.get(writtenBar) ?? 0) + 1);
  return score.bars.map((bar, index) => {
    const notated = notation.bars[index];
    // A bar that sounds once is compared with no other.
    const again = (times.get(bar.writtenBar) ?? 0) > 1;
    const voices = parts.flatMap((part) =>
      part.voices.map((voice) =>
        (voice.bars[index]?.events ?? []).map((event) => ({
          event: {
            ...event,
            pitches: event.pitches.map((pitch) => (pitch.courtesy ? { ...pitch, accidental: null, courtesy: false } : pitch)),
          },
          heads: event.kind === 'stroke' ? voice.headsOf(event, index) : [],
        })),
      ),
    );
    const chords = bar.chords.map(({ tick, symbol, push }) => [tick - bar.tick, symbol, push]);
    const visit = score.form.visits.find(({ fromBar }) => fromBar === bar.index);
    return {
      writtenBar: bar.writtenBar,
      visit: bar.visit,
      content: again ? JSON.stringify([bar.side, bar.ticks, chords, voices, visit?.onCue ?? false]) : '',
      frame: JSON.stringify([bar.key, notated?.meter, bar.tempo]),
      tiedIn: voices.some((events) => events[0]?.event.tieIn === true),
      once: bar.kind === 'pickup' || bar.restart,
    };
  });
}
