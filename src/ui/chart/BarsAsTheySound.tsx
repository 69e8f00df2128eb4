import { memo } from 'react';
import type { Form, SectionVisit, SoundingBar } from '../../music/chart/chart';
import { CHART_SCREEN } from '../../words/chart-screen';
import { GRID_WORDS } from '../../words/grid';
import { PENCIL_WORDS } from '../../words/pencil-list';
import { printedChord } from '../../words/spoken';
import { Word } from '../glossary/Word';

/** A long form is drawn up to here; typing stays quick. */
const DRAWN = 400;

/** The form as it sounds: every section with its bars, every bar with its side, sections on the other side flagged. */
export const BarsAsTheySound = memo(function BarsAsTheySound(props: {
  readonly form: Form;
  readonly cursor: number;
  readonly onStartAt: (bar: number) => void;
}) {
  const { form } = props;
  const visits = form.visits.filter((visit) => visit.fromBar < DRAWN);
  return (
    <section className="sounding" aria-label={CHART_SCREEN.asItSounds}>
      {visits.map((visit) => (
        <VisitRows key={visit.fromBar} {...props} visit={visit} />
      ))}
      {form.bars.length > DRAWN && <p className="caption">{CHART_SCREEN.moreBars(form.bars.length - DRAWN)}</p>}
    </section>
  );
});

function VisitRows(props: {
  readonly form: Form;
  readonly visit: SectionVisit;
  readonly cursor: number;
  readonly onStartAt: (bar: number) => void;
}) {
  const { form, visit, cursor, onStartAt } = props;
  const bars = form.bars.slice(visit.fromBar, Math.min(visit.toBar, DRAWN));
  const count = visit.toBar - visit.fromBar;
  const odd = count % 2 === 1;
  return (
    <div className={odd || visit.otherSide ? 'visit visit-turn' : 'visit'}>
      <h3>
        {visit.section} <span className="caption">{CHART_SCREEN.section({ bars: count, side: visit.side })}</span>
        {odd && (
          <span className="flag">
            <Word of="direction">{CHART_SCREEN.oddSection}</Word>
          </span>
        )}
        {visit.otherSide && (
          <span className="flag">
            <Word of="direction">{CHART_SCREEN.otherSide(visit.side)}</Word>
          </span>
        )}
      </h3>
      <ol className="bars">
        {bars.map((bar) => (
          <li key={bar.index}>
            <button
              type="button"
              className={`bar-cell ${bar.side === 2 ? 'panel-two' : 'panel-three'}`}
              aria-current={bar.index === cursor || undefined}
              onClick={() => onStartAt(bar.index)}
            >
              <span className="visually-hidden">{`${CHART_SCREEN.bar(bar.index)}, ${GRID_WORDS.sideName(bar.side)}, ${barWords(bar)}${bar.hits.length > 0 ? `, ${hitWords(bar)}` : ''}`}</span>
              <span className="bar-chords" aria-hidden="true">
                {barWords(bar)}
              </span>
              {bar.hits.length > 0 && (
                <span className="bar-hits" aria-hidden="true">
                  {hitWords(bar)}
                </span>
              )}
              <span className="bar-side" aria-hidden="true">
                {bar.index + 1} · {GRID_WORDS.sideName(bar.side)}
              </span>
            </button>
          </li>
        ))}
      </ol>
    </div>
  );
}

/** What the whole band strikes in the bar, in counts. */
const hitWords = ({ hits }: SoundingBar): string => PENCIL_WORDS.hitsOn(hits.map(({ step }) => step));

function barWords(bar: SoundingBar): string {
  if (bar.playing === 'nobody') return GRID_WORDS.stop;
  const words = bar.chords.map((chord) => (chord.push ? '>' : '') + printedChord(chord.symbol)).join(' ');
  return words === '' ? '—' : words;
}
