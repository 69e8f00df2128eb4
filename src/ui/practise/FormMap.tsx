import { type KeyboardEvent, memo, useEffect, useRef } from 'react';
import type { MapSection, StepGrid } from '../../layout/grid/cards';
import { FORM_WORDS } from '../../words/form-map';
import { GRID_WORDS } from '../../words/grid';
import { printedChord } from '../../words/spoken';
import type { BarRun } from './board-props';
import { useLoopHandles } from './use-loop-handles';

/** What the map of the form is given. */
export interface FormMapProps {
  readonly grid: StepGrid;
  /** Card that sounds, or that the music would start on. */
  readonly card: number;
  readonly loop: BarRun | null;
  readonly onStartAt: (bar: number) => void;
  readonly onLoop: (fromBar: number, toBar: number) => void;
}

/** The form from left to right: its sections with their bars, each card a block to be touched, the loop between two handles. */
export const FormMap = memo(function FormMap({ grid, card, loop, onStartAt, onLoop }: FormMapProps) {
  const map = useRef<HTMLElement>(null);
  const { run, handle } = useLoopHandles(grid, loop, onLoop);
  useEffect(() => {
    const row = map.current;
    const block = row?.querySelector(`[data-card="${card}"]`);
    // A third of the row in, so that what comes next is in sight as well.
    if (row && block) row.scrollLeft += block.getBoundingClientRect().left - row.getBoundingClientRect().left - row.clientWidth / 3;
  }, [card]);
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    const steps: Record<string, number> = { ArrowRight: 1, ArrowLeft: -1, Home: Number.NEGATIVE_INFINITY, End: Number.POSITIVE_INFINITY };
    const step = steps[event.key];
    const blocks = [...event.currentTarget.querySelectorAll<HTMLElement>('button[data-card]')];
    const here = blocks.indexOf(document.activeElement as HTMLElement);
    if (step === undefined || here < 0) return;
    blocks[Math.min(blocks.length - 1, Math.max(0, here + step))]?.focus();
    event.preventDefault();
  };
  const first = run.fromBar;
  const last = run.toBar - 1;
  const tabBlock = grid.sections.flatMap((section) => section.blocks).find((block) => block.card === card);
  return (
    <nav className="form-map" aria-label={FORM_WORDS.mapName} ref={map} onKeyDown={onKeyDown}>
      {grid.sections.map((section) => (
        <div key={section.fromBar} className="map-section" data-odd={section.odd || undefined} data-other={section.otherSide || undefined}>
          <div className="map-name">
            <b>{section.name}</b> {section.onCue && <RepeatSign />}
            <span className={isPlain(section) ? 'visually-hidden' : undefined}>{aboutSection(section)}</span>
          </div>
          <div className="map-blocks">
            {section.blocks.map((block) => (
              <div
                key={block.fromBar}
                className="map-block"
                data-card={block.card}
                data-from={block.fromBar}
                data-to={block.toBar}
                data-bars={block.toBar - block.fromBar}
              >
                {first >= block.fromBar && first < block.toBar && <span className="loop-handle from" {...handle('from')} />}
                <button
                  type="button"
                  data-card={block.card}
                  data-here={block.card === card || undefined}
                  data-loop={(block.fromBar < run.toBar && block.toBar > run.fromBar) || undefined}
                  tabIndex={block === tabBlock ? 0 : -1}
                  aria-current={block.card === card || undefined}
                  aria-label={FORM_WORDS.card(GRID_WORDS.bars(block.fromBar, block.toBar), chordsOf(grid, block))}
                  onClick={() => onStartAt(block.fromBar)}
                >
                  {block.fromBar + 1}
                </button>
                {last >= block.fromBar && last < block.toBar && <span className="loop-handle to" {...handle('to')} />}
              </div>
            ))}
          </div>
        </div>
      ))}
    </nav>
  );
});

/** A section that says nothing but how many bars it has, which its blocks show. */
const isPlain = (section: MapSection): boolean => !section.odd && !section.onCue && !section.otherSide && !section.levels;

function aboutSection(section: MapSection): string {
  const words: string[] = [FORM_WORDS.count(section.toBar - section.fromBar)];
  if (section.onCue) words.push(FORM_WORDS.onCue);
  if (section.otherSide) words.push(GRID_WORDS.fromSide(section.side));
  if (section.levels) words.push(FORM_WORDS.level(...section.levels));
  return words.join(', ');
}

/** The sign that closes a repeat, for a vamp that goes round until it is cued; `on cue` says it in words. */
function RepeatSign() {
  return (
    <svg className="repeat-sign" viewBox="0 0 16 20" aria-hidden="true">
      <circle cx={2.5} cy={7} r={2} />
      <circle cx={2.5} cy={13} r={2} />
      <path d="M7 1h2v18H7zM12 1h4v18h-4z" />
    </svg>
  );
}

function chordsOf(grid: StepGrid, block: MapSection['blocks'][number]): string {
  const panels = grid.cards[block.card]?.panels.filter((panel) => panel.bar.index >= block.fromBar && panel.bar.index < block.toBar) ?? [];
  return [...new Set(panels.flatMap((panel) => panel.bar.chords.map((chord) => printedChord(chord.symbol))))].join(', ');
}
