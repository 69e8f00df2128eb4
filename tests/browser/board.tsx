/** The board by itself on a typed score, for looking at: `?night`, `?playing=TICK` (a moment held), `?run` (moving), `?at=BAR`, `?flip`, `?odd`, `?short`, `?demo=N`, `?text=CHART`, `?percussion`, `?pulse`, `?vamp=STATE`, `?banner=TEXT`, `?devices=A,B`, `?staff`, `?edit`. */
import '@fontsource-variable/atkinson-hyperlegible-next';
import { useMemo, useState } from 'react';
import { createRoot } from 'react-dom/client';
import type { Heard } from '../../src/state/ports';
import type { Device, Hands, Level } from '../../src/vocabulary';
import '../../src/ui/tokens.css';
import { DEMO_BOOK } from '../../src/music/chart/demo-book';
import { readChart } from '../../src/music/chart/read';
import { arrange } from '../../src/music/score';
import type { BarRun, VampState } from '../../src/ui/practise/board-props';
import { PractiseBoard } from '../../src/ui/practise/PractiseBoard';
import { StaffView } from '../../src/ui/staff/StaffView';
import { FERRY, ferryScore, ODD_FERRY, SHORT_FERRY } from '../layout/ferry-score';

const query = new URLSearchParams(location.search);
document.documentElement.dataset.theme = query.has('night') ? 'night' : 'paper';

/** A chart of the demo book, arranged, or the score typed for the tests. */
function drawnScore(direction: '2-3' | '3-2') {
  const demo = DEMO_BOOK[Number(query.get('demo') ?? -1)];
  const text = query.get('text') ?? demo?.text;
  const chart = text ? readChart(text.replaceAll('\\n', '\n')) : undefined;
  const level = Number(query.get('level') ?? 2) as Level;
  const devices = query.has('devices') ? { devices: (query.get('devices') ?? '').split(',') as Device[] } : {};
  if (chart?.ok)
    return arrange(chart.value, {
      ...(query.get('level') === 'roles' ? {} : { level }),
      ...devices,
      ...(query.has('hands') ? { hands: query.get('hands') as Hands } : {}),
    });
  return ferryScore(query.has('odd') ? ODD_FERRY : query.has('short') ? SHORT_FERRY : FERRY, direction);
}

function Page() {
  const [cursor, setCursor] = useState(Number(query.get('at') ?? 0));
  const [loop, setLoop] = useState<BarRun | null>(query.has('loop') ? { fromBar: 0, toBar: 4 } : null);
  const [direction, setDirection] = useState<'2-3' | '3-2'>(query.has('flip') ? '3-2' : '2-3');
  const score = useMemo(() => drawnScore(direction), [direction]);
  const playing = query.has('playing') || query.has('run');
  const start = performance.now();
  const heard = (): Heard | null => {
    if (!playing) return null;
    const tick = query.has('run') ? ((performance.now() - start) * 1.6) % score.toTick : Number(query.get('playing'));
    return { tick, pass: 1, countIn: query.has('count') ? 3 : null, performance: {} as Heard['performance'] };
  };
  Object.assign(window, { flip: () => setDirection((before) => (before === '2-3' ? '3-2' : '2-3')) });
  return (
    <PractiseBoard
      score={score}
      heard={heard}
      playing={playing}
      cursorBar={cursor}
      loop={loop}
      why={(stroke) =>
        `${stroke.names.join(' and ')} of ${stroke.chord}: the third of A7. It falls a half step from D, the seventh of Em7, and it is struck on the & of 4, an eighth before the chord is written.`
      }
      silent={query.has('pulse') ? [] : ['pulse']}
      showPercussion={query.has('percussion') ? (query.get('percussion') === 'always' ? 'always' : true) : false}
      vamp={query.get('vamp') as VampState}
      banner={query.get('banner')}
      {...(query.has('edit')
        ? { onEmptyCell: (...cell) => console.log('empty', ...cell), onSelect: (cell) => console.log('select', cell) }
        : {})}
      {...(query.has('staff')
        ? {
            staff: (fromBar: number, toBar: number) => (
              <StaffView score={score} bars={{ fromBar, toBar }} heard={heard} playing={playing} onStartAt={setCursor} />
            ),
          }
        : {})}
      onStartAt={setCursor}
      onStroke={() => undefined}
      onLoop={(fromBar, toBar) => setLoop({ fromBar, toBar })}
    >
      <h1>{score.title}</h1>
    </PractiseBoard>
  );
}

const root = document.getElementById('root');
if (root) createRoot(root).render(<Page />);
