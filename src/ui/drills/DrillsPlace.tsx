import { useEffect, useState } from 'react';
import { BOARD_DRILLS } from '../../state/drills/board-drill';
import { DRILLS } from '../../words/drills';
import { AtSight } from './AtSight';
import { beginDrill } from './begin-drill';
import { DrillCard } from './DrillCard';
import { drillWanted, type OwnDrill } from './drills-context';
import { LostAndFound } from './LostAndFound';
import { useDrills } from './use-drills';
import { WhichSideDrill } from './WhichSideDrill';
import './drills.css';

/** The Drills place: what there is to practise, one line each; most run on the practice board, two here. */
export function DrillsPlace() {
  const room = useDrills();
  const [wanted] = useState(() => drillWanted.getState());
  const [open, setOpen] = useState<OwnDrill | null>(wanted?.name ?? null);
  const seed = wanted?.seed ?? null;
  useEffect(() => drillWanted.setState(null, true), []);
  if (room && open === 'which side') return <WhichSideDrill room={room} seed={seed} onLeave={() => setOpen(null)} />;
  if (room && open === 'at sight') return <AtSight room={room} seed={seed} onLeave={() => setOpen(null)} />;
  if (room && open === 'lost and found') return <LostAndFound room={room} seed={seed} onLeave={() => setOpen(null)} />;
  return (
    <div className="drills-place">
      <p>{DRILLS.intro}</p>
      <ul className="drill-list">
        <DrillCard name="which side" onBegin={() => setOpen('which side')} />
        {BOARD_DRILLS.map((name) => (
          <DrillCard key={name} name={name} disabled={room === null} onBegin={() => room && beginDrill(room, name, null)} />
        ))}
        <DrillCard name="lost and found" onBegin={() => setOpen('lost and found')} />
        <DrillCard name="at sight" onBegin={() => setOpen('at sight')} />
      </ul>
      <p className="caption">{DRILLS.caution}</p>
    </div>
  );
}
