import { lazy, memo, Suspense, useCallback, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { PARTS } from '../../state/parts';
import type { Music } from '../../state/pipeline';
import type { Settings } from '../../state/settings';
import type { Stroke } from '../../vocabulary';
import { SCREEN } from '../../words/screen';
import { drillsBegun } from '../drills/drills-context';
import type { PanelOver, SelectedCell } from '../practise/board-props';
import { PractiseBoard } from '../practise/PractiseBoard';
import { AnotherButton } from '../transport/AnotherButton';
import { useDesk, useDeskItself, usePlaying } from './desk-context';
import { useHabit, useHabitsRoom } from './habits-context';
import { QuickLine } from './QuickLine';
import { Shield } from './Shield';
import { useMediaQuery } from './use-media-query';
import { useWhy } from './use-why';

const DrillBar = lazy(() => import('../drills/DrillBar').then((module) => ({ default: module.DrillBar })));
const PlayAlong = lazy(() => import('../listening/PlayAlong').then((module) => ({ default: module.PlayAlong })));
const StrokeEditing = lazy(() => import('./StrokeEditing').then((module) => ({ default: module.StrokeEditing })));
const StaffView = lazy(() => import('../staff/StaffView').then((module) => ({ default: module.StaffView })));

const ExerciseBanner = lazy(() => import('./ExerciseBanner').then((module) => ({ default: module.ExerciseBanner })));
const BANNER = (
  <Suspense fallback={null}>
    <ExerciseBanner />
  </Suspense>
);

/** An empty cell is a place for a new stroke; `onSelect` has it already. */
const ignore = (): void => undefined;

/** Title and quick line, and the board with the cycle that sounds. Drawn again when the music or the start changes, not as it plays. */
export const PractiseStand = memo(function PractiseStand({
  music,
  loop,
  edits,
}: { readonly music: Music } & Pick<Settings, 'loop' | 'edits'>) {
  const { run, heard, scoreOf } = useDeskItself();
  const view = useDesk((state) => state.settings.view);
  const balance = useDesk((state) => state.settings.balance);
  const playing = usePlaying((state) => state.transport.kind !== 'stopped');
  const startBar = usePlaying((state) => state.startBar);
  const [place, setPlace] = useState<SelectedCell | null>(null);
  const drilling = useStore(drillsBegun);
  const [along, setAlong] = useState(false);
  const [over, setOver] = useState<PanelOver | null>(null);
  const putOver = useCallback((next: PanelOver | null) => setOver(() => next), []);
  const vamp = usePlaying((state) => state.vamp);
  // Rows for the percussion only where the whole next card still fits under them.
  const tall = useMediaQuery('(min-height: 1000px)');
  const habits = useHabitsRoom();
  const rows = useHabit(habits, (state) => state.percussionRows, 'where there is room');
  const strip = useHabit(habits, (state) => state.strip, true);
  const exercise = useDesk(({ settings }) => settings.crossed || settings.solo !== null);
  const silent = useMemo(() => PARTS.filter((part) => balance[part].muted), [balance]);
  const { bars } = music.whole;
  const whyStroke = useWhy();
  // Stopped, the editor says it.
  const editing = !playing && view === 'grid';
  const why = useCallback((stroke: Stroke) => (editing ? '' : whyStroke(stroke, bars)), [bars, editing, whyStroke]);
  const startAt = useCallback((bar: number) => run({ kind: 'start at bar', bar }), [run]);
  const sound = useCallback((stroke: Stroke) => run({ kind: 'sound', midi: stroke.midi, velocity: stroke.velocity }), [run]);
  const loopBars = useCallback((fromBar: number, toBar: number) => run({ kind: 'loop bars', loop: { fromBar, toBar } }), [run]);

  const { score } = music;
  const staff = useCallback(
    (fromBar: number, toBar: number) => (
      <Suspense fallback={<p className="caption">{SCREEN.loading}</p>}>
        <StaffView score={score} bars={{ fromBar, toBar }} heard={heard} playing={playing} onStartAt={startAt} />
      </Suspense>
    ),
    [score, heard, playing, startAt],
  );

  return (
    <Shield>
      <Suspense fallback={null}>{drilling && <DrillBar />}</Suspense>
      <Suspense fallback={null}>{along && <PlayAlong onOver={putOver} onClose={() => setAlong(false)} />}</Suspense>
      <PractiseBoard
        score={score}
        whole={music.whole}
        scoreOf={scoreOf}
        heard={heard}
        playing={playing}
        cursorBar={startBar}
        loop={loop}
        silent={silent}
        showPercussion={rows !== 'never' && !balance.percussion.muted && (rows === 'always' ? 'always' : tall)}
        strip={strip}
        edits={edits}
        vamp={vamp}
        banner={exercise && BANNER}
        why={why}
        onStartAt={startAt}
        onStroke={sound}
        onLoop={loopBars}
        onSelect={setPlace}
        onEmptyCell={ignore}
        over={over}
        {...(view === 'staff' ? { staff } : {})}
      >
        <div className="tune">
          <h1>{score.title}</h1>
          <QuickLine />
          <button type="button" className="key play-along-open" aria-expanded={along} onClick={() => setAlong(!along)}>
            {SCREEN.playAlong}
          </button>
          <AnotherButton />
        </div>
      </PractiseBoard>
      <Suspense fallback={null}>{place && editing && <StrokeEditing place={place} onClose={() => setPlace(null)} />}</Suspense>
    </Shield>
  );
});
