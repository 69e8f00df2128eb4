import { useRef } from 'react';
import type { BoardDrill } from '../../state/drills/board-drill';
import type { DrillsRoom } from '../../state/drills/drills';
import { DRILLS } from '../../words/drills';
import { useDesk, usePlaying } from '../app/desk-context';
import { useTakesRoom } from '../app/use-takes-room';
import { useDrill, useDrills } from './use-drills';
import './drills.css';

/** The line over the board while a drill runs: what it asks for now, how it goes, and the way out. */
export function DrillBar() {
  const room = useDrills();
  return room && <Running room={room} />;
}

function Running({ room }: { readonly room: DrillsRoom }) {
  const running = useDrill(room, (state) => state.running);
  return running && <Line room={room} running={running} />;
}

function Line({ room, running }: { readonly room: DrillsRoom; readonly running: BoardDrill }) {
  const bar = useRef<HTMLElement>(null);
  useTakesRoom(bar);
  const passes = useDrill(room, (state) => state.passes);
  const clean = useDrill(room, (state) => state.clean);
  const behindMs = useDrill(room, (state) => state.behindMs);
  const done = useDrill(room, (state) => state.done);
  const key = useDesk((state) => state.music?.score.key.tonic ?? null);
  const direction = useDesk((state) => state.settings.direction);
  const kind = useDesk((state) => state.settings.kind);
  const stopped = usePlaying((state) => state.transport.kind === 'stopped');
  return (
    <section className="drill-bar" ref={bar} aria-label={DRILLS.barName}>
      <h2>{DRILLS.names[running.name]}</h2>
      <p role="status">
        {done ? DRILLS.done : lineOf(running, { key, direction, kind })} <span className="drill-tally">{DRILLS.passes(clean, passes)}</span>{' '}
        {DRILLS.drifts(behindMs)}
      </p>
      <fieldset className="drill-rate">
        <legend className="visually-hidden">{DRILLS.rate.name}</legend>
        <button type="button" className="key" disabled={stopped && passes === 0} onClick={() => room.rate(true)}>
          {DRILLS.rate.clean}
        </button>
        <button type="button" className="key" disabled={stopped && passes === 0} onClick={() => room.rate(false)}>
          {DRILLS.rate.notClean}
        </button>
      </fieldset>
      <button type="button" className="key" onClick={room.end}>
        {DRILLS.end}
      </button>
    </section>
  );
}

function lineOf(drill: BoardDrill, now: { readonly key: string | null; readonly direction: string; readonly kind: string }): string {
  switch (drill.name) {
    case 'clap the clave':
      return DRILLS.clave(now.direction, now.kind, drill.clean);
    case 'hands apart':
      return DRILLS.hand(drill.hand, drill.clean);
    case 'tempo ladder':
      return DRILLS.ladder(drill.ladder.tempo, drill.ladder.goal, drill.ladder.recent.filter(Boolean).length, drill.ladder.burst);
    case 'gap':
      return DRILLS.gapLine(drill.gap.onBars, drill.gap.offBars);
    case 'twelve keys':
      return DRILLS.keyLine(drill.keys.now === null ? null : now.key, drill.keys.done.length);
    default:
      return '';
  }
}
